import { describe, expect, it } from "vitest";
import type { Outcome, ProjectView } from "../contract.ts";
import { battery } from "./battery.ts";
import type { BatteryOutputs } from "./output-schema.ts";

const empty: ProjectView = { documents: {}, rasters: {} };
const context = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("nothing else is at hand");
  },
};
const ask = (inputs: unknown, view = empty): Outcome<BatteryOutputs> => battery.run(view, battery.inputs.parse(inputs), context);
const answered = (inputs: unknown, view = empty): BatteryOutputs => {
  const outcome = ask(inputs, view);
  if (!outcome.outputs) throw new Error(outcome.problem?.message);
  return outcome.outputs;
};
const refusal = (inputs: unknown) =>
  battery.inputs
    .safeParse(inputs)
    .error?.issues.map(({ message }) => message)
    .join("; ") ?? "";
const problem = (inputs: unknown) => ask(inputs).problem?.message ?? "";
const sentence = (outputs: BatteryOutputs) =>
  battery
    .answer(outputs, {} as never)
    .sentence.map((token) => ("text" in token ? token.text : String(token.value)))
    .join("");

const pack = { series: 14, blocks: 13, wiringResistance: 0.004, isolatorResistance: 0.002, timeStep: 10 };
const rows = (more: (stateOfCharge: number) => object = () => ({})) =>
  [0, 0.2, 0.6, 1].map((stateOfCharge) => ({
    stateOfCharge,
    openCircuitVoltage: 3.2 + stateOfCharge,
    ohmicResistance: 0.03,
    ...more(stateOfCharge),
  }));

describe("what may be asked of a battery", () => {
  it("takes exactly one kind of load, and says which were given", () => {
    expect(refusal({ load: {} })).toContain("none of them");
    expect(refusal({ load: { power: 5, current: 1 } })).toContain("power + current");
    expect(refusal({ load: { power: 0 } })).toContain("lasts for ever");
    expect(refusal({ load: { steps: [{ duration: 5, power: 1, current: 1 }] } })).toContain("not both");
    expect(refusal({ load: { power: 5, repeats: 3 } })).toContain("repeats goes with");
    expect(refusal({ load: { power: 5 }, limits: { continuousCurrent: 9, shortTimeCurrent: 5 } })).toContain("below the continuous");
  });

  it("names a block that is not there, a pack without any, and rows that are wrong, with their place", () => {
    expect(problem({ load: { power: 5 }, isolatedBlocks: [2] })).toBe("Block 2 is named, but the pack has 1 block.");
    expect(problem({ load: { power: 5 }, blocks: 2, isolatedBlocks: [1, 2] })).toContain("nothing is left");
    expect(problem({ load: { points: [{ time: 5, power: 1 }, { time: 9 }] } })).toContain("row 1: the first time is 5 s");
    expect(problem({ load: { points: [{ time: 0, power: 1 }, { time: 0 }] } })).toContain("row 2: time 0 s does not come after 0 s");
    expect(problem({ load: { power: 5 }, timeStep: 0.01, capacity: 3.6e6 })).toContain("broken off");
  });

  it("says what a table of a cell lacks", () => {
    const table = (given: readonly object[], more: object = {}) =>
      problem({ cell: { table: given, ...more }, capacity: 10_000, load: { power: 5 } });
    expect(problem({ cell: { table: rows() }, load: { power: 5 } })).toContain("needs capacity");
    expect(table([...rows(), ...rows()])).toContain("row 5: a second row at state of charge 0");
    expect(table(rows((at) => (at > 0.5 ? { temperature: 298 } : {})))).toContain("some rows have a temperature and some have none");
    expect(table([...rows(() => ({ temperature: 298.15 })), { ...rows()[0], temperature: 273.15 }])).toContain(
      "no row at state of charge 0.2 and 0.00 °C",
    );
    expect(table(rows((at) => (at > 0.5 ? { openCircuitVoltage: 3 } : {})))).toContain("must not fall");
    expect(table(rows((at) => (at > 0.5 ? { fastResistance: 0.01, fastTimeConstant: 2 } : {})))).toContain("in every row, or in none");
    expect(
      table([...rows(() => ({ temperature: 298.15 })), ...rows(() => ({ temperature: 273.15 }))], { resistanceActivation: 100 }),
    ).toContain("for tables at one temperature");
  });
});

describe("the battery analysis", () => {
  it("gives every limit a time or a reason, and one of them ends the run", () => {
    const outputs = answered({
      ...pack,
      ambientTemperature: 263.15,
      load: { power: 1300 },
      limits: { lowestStateOfCharge: 0.2, continuousCurrent: 2, shortTimeCurrent: 20, shortTime: 30 },
    });
    expect(outputs.endedBy).toBe("cut-off voltage");
    expect(outputs.timeToLimits.filter(({ endsRun }) => endsRun).map(({ name, time }) => [name, time])).toEqual([
      ["cut-off voltage", outputs.duration],
    ]);
    const passed = Object.fromEntries(outputs.timeToLimits.map(({ name, time }) => [name, time]));
    expect(passed["lowest state of charge"]).toBeLessThan(outputs.duration);
    expect(passed["continuous current"]).toBeLessThan(outputs.duration);
    expect(passed["short-time current"]).toBeNull();
    expect(outputs.timeToLimits.every(({ reason }) => reason.length > 10)).toBe(true);
    expect(Math.abs(outputs.energyBalance)).toBeLessThan(1e-10);
    expect(sentence(outputs)).toContain("until the cut-off voltage");
    expect(sentence(outputs)).toContain("The limit");
  });

  it("has a row at the start, at every step and at the end, block currents that add up, and power that is asked", () => {
    const { rows: found, duration } = answered({ ...pack, blocks: 4, isolatedBlocks: [3], load: { power: 400, duration: 95 } });
    expect(found.map(({ time }) => time)).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95]);
    expect(duration).toBe(95);
    for (const row of found) {
      expect(row.blockCurrents).toHaveLength(4);
      expect(row.blockCurrents[2]).toBe(0);
      expect(row.blockCurrents.reduce((sum, each) => sum + each, 0)).toBeCloseTo(row.current, 9);
      expect(row.power).toBeCloseTo(400, 9);
      expect(row.largestPower).toBeGreaterThan(400);
    }
  });

  it("names the blocks that are off the bus in the answer", () => {
    const load = { power: 300, duration: 60 };
    const told = (isolatedBlocks: readonly number[]) => sentence(answered({ ...pack, isolatedBlocks, load }));
    expect(told([])).toMatch(/^The pack gives /);
    expect(told([2])).toMatch(/^With block 2 off the bus, the pack gives /);
    expect(told([2, 5, 7])).toMatch(/^With blocks 2, 5 and 7 off the bus, the pack gives /);
    expect(told([1, 2, 3, 4, 5])).toMatch(/^With 5 of 13 blocks off the bus, /);
  });

  it("says that nothing more can be drawn from empty blocks, not how much of nothing", () => {
    const said = sentence(answered({ ...pack, ambientTemperature: 298.15, load: { power: 1300 } }));
    expect(said).toContain("until an empty block");
    expect(said).toContain("From there nothing more can be drawn (empty block).");
  });

  it("asked too much, says what can be had, at once and for how long", () => {
    const outputs = answered({
      load: {
        steps: [
          { duration: 60, power: 10 },
          { duration: 60, power: 200 },
        ],
      },
    });
    const { notDeliverable } = outputs;
    expect(notDeliverable).toMatchObject({ time: 60, askedPower: 200, askedCurrent: null, askedHeld: 0, because: "cut-off voltage" });
    const powers = [notDeliverable?.largestPower ?? 0, ...(notDeliverable?.sustained ?? []).map(({ power }) => power)];
    expect(powers[0]).toBeLessThan(200);
    expect([...powers].sort((a, b) => b - a)).toEqual(powers);
    const again = (power: number) =>
      answered({
        load: {
          steps: [
            { duration: 60, power: 10 },
            { duration: 10, power },
          ],
        },
      }).endedBy;
    expect(again(0.999 * (powers[1] ?? 0))).toBe("end of the load");
    expect(again(1.01 * (powers[1] ?? 0))).toBe("cut-off voltage");
    expect(answered({ load: { power: 500 } })).toMatchObject({ duration: 0, energyOut: 0, notDeliverable: { time: 0, askedPower: 500 } });
    expect(sentence(answered({ load: { power: 500 } }))).toContain("Not deliverable at the start");
  });

  it("takes one cell by name, by a table of it, and by points over temperature, alike", () => {
    const table = rows(() => ({ fastResistance: 0.01, fastTimeConstant: 3, slowResistance: 0.02, slowTimeConstant: 40 }));
    const asked = { capacity: 10_000, load: { power: 12 }, startTemperature: 298.15, cooling: { thermalResistance: 1e-3 }, timeStep: 5 };
    const one = answered({ ...asked, cell: { table } });
    const two = answered({
      ...asked,
      cell: { table: [273.15, 298.15].flatMap((temperature) => table.map((row) => ({ ...row, temperature }))) },
    });
    expect(two.duration).toBeCloseTo(one.duration, 6);
    expect(two.energyOut).toBeCloseTo(one.energyOut, 3);
    expect(one.endedBy).toBe("empty block");
  });

  it("scales a built-in cell to its size: two of half the size side by side are one", () => {
    const half = answered({ capacity: 5220, parallel: 2, load: { power: 20 }, timeStep: 5 });
    const whole = answered({ load: { power: 20 }, cooling: { thermalResistance: 11 }, timeStep: 5 });
    expect(half.duration).toBeCloseTo(whole.duration, 6);
  });

  it("shows two thirds of the demo cell's resistance at once and all of it once the voltage has settled", () => {
    const { rows: found } = answered({
      cell: "demo",
      startStateOfCharge: 0.6,
      cooling: { thermalResistance: 1e-3 },
      load: { current: 1, duration: 350 },
      timeStep: 5,
    });
    const resistance = (row: (typeof found)[number] | undefined) => (row ? row.openCircuitVoltage - row.voltage : 0);
    expect(resistance(found[0])).toBeCloseTo(0.028, 9);
    expect(resistance(found[7])).toBeCloseTo(0.028 + 0.014 * (1 - Math.exp(-1)), 4);
    expect(resistance(found[found.length - 1])).toBeCloseTo(0.042, 4);
  });

  it("reads steps with repeats and a list over time as the same load", () => {
    const steps = {
      steps: [
        { duration: 30, power: 15 },
        { duration: 60, current: 1 },
      ],
      repeats: 3,
    };
    const points = {
      points: [0, 90, 180]
        .flatMap((time) => [
          { time, power: 15 },
          { time: time + 30, current: 1 },
        ])
        .concat([{ time: 270, current: 0 }]),
    };
    const [one, two] = [answered({ load: steps }), answered({ load: points })];
    expect(one.duration).toBe(270);
    expect(two.stateOfChargeAtEnd).toBeCloseTo(one.stateOfChargeAtEnd, 12);
  });

  it("warns of a table that is left, of heat, and of blocks that feed each other", () => {
    const kinds = (inputs: unknown) => (ask(inputs).warnings ?? []).map(({ kind }) => kind);
    const table = [273.15, 298.15].flatMap((temperature) => rows(() => ({ temperature })));
    expect(kinds({ cell: { table }, capacity: 10_000, load: { power: 5 }, ambientTemperature: 260 })).toContain("cell-table-left");
    expect(kinds({ cell: { table: rows() }, capacity: 10_000, load: { power: 5 }, ambientTemperature: 260 })).toContain(
      "temperature-unknown",
    );
    expect(kinds({ load: { power: 28 }, ambientTemperature: 320 })).toContain("hot-cells");
    expect(kinds({ blocks: 2, differingBlocks: [{ block: 2, startStateOfCharge: 0.5 }], load: { current: 0, duration: 60 } })).toContain(
      "circulating-current",
    );
  });

  it("shows a cold dip in the answer, and draws every panel from the rows", () => {
    const outputs = answered({ load: { current: 5 }, ambientTemperature: 243.15, startStateOfCharge: 0.9, timeStep: 5 });
    expect(outputs.dip?.recovery).toBeGreaterThan(0.02);
    expect(sentence(outputs)).toContain("as the cells warm themselves");
    const figures = battery.figures(outputs, { cell: "reference-nca" } as never);
    expect(figures.map(({ id }) => id)).toEqual(["over-time", "over-charge", "limits", "energy", "blocks", "still-deliverable"]);
    const charge = figures.find(({ id }) => id === "over-charge");
    expect(charge?.kind === "lines" && charge.series.some(({ meaning }) => meaning === "measured")).toBe(true);
    const [, other] = battery.figures(outputs, { cell: "demo" } as never);
    expect(other?.kind === "lines" && other.series.some(({ meaning }) => meaning === "measured")).toBe(false);
  });
});
