import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outcome, ProjectView } from "../contract.ts";
import { motor } from "./motor.ts";
import type { MotorOutputs, MotorRow } from "./output-schema.ts";

const empty: ProjectView = { documents: {}, rasters: {} };
const context = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("nothing else is at hand");
  },
};
const ask = (inputs: unknown): Outcome<MotorOutputs> => motor.run(empty, motor.inputs.parse(inputs), context);
const answered = (inputs: unknown): MotorOutputs => {
  const outcome = ask(inputs);
  if (!outcome.outputs) throw new Error(outcome.problem?.message);
  return outcome.outputs;
};
const first = (inputs: unknown): MotorRow => {
  const [row] = answered(inputs).rows;
  if (!row) throw new Error("no row");
  return row;
};
const kinds = (inputs: unknown) => (ask(inputs).warnings ?? []).map(({ kind }) => kind);

/** A number of a row that is there. */
const there = (value: number | null | undefined): number => {
  if (value === null || value === undefined) throw new Error("not there");
  return value;
};

const bare = { speedConstant: 18, resistance: 0.06, noLoadCurrent: 1.2 };
const full = {
  ...bare,
  controller: { constantLoss: 4, proportionalLoss: 0.03, dutyMaximum: 0.98 },
  gear: [
    { ratio: 3, constantLoss: 10, proportionalLoss: 0.02 },
    { ratio: 2, constantLoss: 5, proportionalLoss: 0.01 },
  ],
};
const thermal = { heatCapacity: 120, thermalResistance: 0.6, temperatureMaximum: 383.15 };
const propeller = { rotationRate: 600, torque: 1 };

describe("a motor's point", () => {
  it("loses what it takes and does not give, in every mode, through controller and gear", () => {
    const point = fc.oneof(
      fc.record({ current: fc.double({ min: -30, max: 60, noNaN: true }), throttle: fc.double({ min: 0.2, max: 1, noNaN: true }) }),
      fc.record({ rotationRate: fc.double({ min: 10, max: 140, noNaN: true }), torque: fc.double({ min: -3, max: 6, noNaN: true }) }),
      fc.record({ torque: fc.double({ min: -3, max: 6, noNaN: true }) }),
    );
    let modes = new Set<string>();
    fc.assert(
      fc.property(point, (given) => {
        const row = first({ motor: full, voltage: 50, points: [given] });
        if (row.problem !== null) return;
        const losses = there(row.copperLoss) + there(row.noLoadLoss) + there(row.controllerLoss) + there(row.gearLoss);
        expect(there(row.electricPower)).toBeCloseTo(there(row.shaftPower) + losses, 6);
        for (const loss of [row.copperLoss, row.noLoadLoss, row.controllerLoss, row.gearLoss])
          expect(there(loss)).toBeGreaterThanOrEqual(-1e-9);
        modes = modes.add(row.mode ?? "");
      }),
      { seed: 3, numRuns: 300 },
    );
    expect(modes).toEqual(new Set(["motor", "generator", "brake"]));
  });

  it("is the same by current, by torque, by rate, and by rate with torque or power", () => {
    const byCurrent = first({ motor: full, voltage: 50, points: [{ current: 25 }] });
    const again = [
      { torque: byCurrent.torque },
      { rotationRate: byCurrent.rotationRate },
      { rotationRate: byCurrent.rotationRate, torque: byCurrent.torque },
      { rotationRate: byCurrent.rotationRate, shaftPower: byCurrent.shaftPower },
    ];
    for (const row of answered({ motor: full, voltage: 50, points: again }).rows) {
      expect(row.current).toBeCloseTo(25, 6);
      expect(row.electricPower).toBeCloseTo(there(byCurrent.electricPower), 5);
      expect(row.duty).toBeCloseTo(0.98, 8);
    }
  });

  it("falls in rate by K R for each ampere, and grows in torque by 1/K", () => {
    const rows = answered({ motor: bare, voltage: 50, points: [{ current: 10 }, { current: 11 }] }).rows;
    const [a, b] = [rows[0], rows[1]];
    expect(there(a?.rotationRate) - there(b?.rotationRate)).toBeCloseTo(18 * 0.06, 9);
    expect(there(b?.torque) - there(a?.torque)).toBeCloseTo(1 / 18, 12);
  });

  it("is stiff without resistance and lossless without loss", () => {
    const ideal = { speedConstant: 18, resistance: 1e-5, noLoadCurrent: 0 };
    const row = first({ motor: ideal, voltage: 50, points: [{ current: 40 }] });
    expect(there(row.rotationRate) / 900).toBeCloseTo(1, 4);
    expect(row.efficiency).toBeCloseTo(1, 4);
  });

  it("takes more to turn where its no-load current grows with the rate, by coefficients or by a table", () => {
    const coefficients = { ...bare, noLoadCurrent: { constant: 0.6, perRate: 0.001 } };
    const rows = [0, 500, 1000].map((rotationRate) => ({ rotationRate, noLoadCurrent: 0.6 + 0.001 * rotationRate }));
    const at = (noLoadCurrent: unknown) => first({ motor: { ...bare, noLoadCurrent }, voltage: 50, points: [{ current: 20 }] });
    const [one, other] = [at(coefficients.noLoadCurrent), at(rows)];
    expect(other.noLoadLoss).toBeCloseTo(there(one.noLoadLoss), 9);
    expect(one.noLoadLoss).toBeCloseTo((0.6 + 0.001 * there(one.motorRotationRate)) * (there(one.motorRotationRate) / 18), 9);
    expect(kinds({ motor: { ...bare, noLoadCurrent: rows.slice(0, 2) }, voltage: 50, points: [{ current: 20 }] })).toContain(
      "beyond-table",
    );
  });

  it("says in words what does not exist", () => {
    const says = (point: unknown, more: object = {}) => first({ motor: full, voltage: 50, points: [point], ...more }).problem;
    expect(says({ current: 2000 })).toContain("stands still");
    expect(says({ rotationRate: 400, torque: 1 })).toContain("the controller can give 49.00 V");
    expect(says({ torque: 500 })).toContain("No equilibrium");
    expect(says({}, { load: { rotationRate: 100, torque: 5000, exponent: 0 } })).toContain("No equilibrium");
    for (const rotationRate of [0, 5e-324]) expect(says({ rotationRate, shaftPower: 5 })).toContain("at rest");
    expect(motor.inputs.safeParse({ motor: full, voltage: 50, points: [{ throttle: 0.5 }] }).success).toBe(false);
    expect(motor.inputs.safeParse({ motor: full, voltage: 50, points: [{ current: 5, torque: 1 }] }).success).toBe(false);
  });
});

describe("a motor and its load", () => {
  it("meet where both ask for the same torque", () => {
    for (const throttle of [0.3, 0.7, 1]) {
      const row = first({ motor: bare, voltage: 50, load: propeller, points: [{ throttle }] });
      expect(row.torque).toBeCloseTo((there(row.rotationRate) / 600) ** 2, 7);
    }
  });

  it("meet at every crossing of a load with a hump, the fastest steady one counting", () => {
    const hump = [
      [0, 0],
      [200, 30],
      [400, 60],
      [600, 5],
      [1000, 6],
    ].map(([rotationRate, torque]) => ({ rotationRate, torque }));
    const row = first({ motor: bare, voltage: 50, load: { rows: hump }, points: [{}] });
    expect(row.otherStates).toHaveLength(2);
    const all = [{ ...row, stable: true }, ...row.otherStates];
    for (const state of all) {
      const rate = there(state.rotationRate);
      const own = (50 - rate / 18) / 0.06 - 1.2;
      expect(there(state.torque)).toBeCloseTo(own / 18, 6);
    }
    expect(row.otherStates.map(({ stable }) => stable)).toEqual([false, true]);
    expect(row.otherStates.every(({ rotationRate }) => rotationRate < there(row.rotationRate))).toBe(true);
  });
});

describe("a winding", () => {
  const heated = (more: object, point: object = { current: 32 }, inputs: object = {}) =>
    first({ motor: { ...bare, thermal: { ...thermal, ...more } }, voltage: 50, points: [point], ...inputs });

  it("settles where heat in is heat out, with the resistance that it has there", () => {
    const row = heated({});
    const steady = there(row.steadyTemperature);
    const growth = (1 + 0.00393 * (steady - 293.15)) / (1 + 0.00393 * 5);
    const rate = 18 * (50 - 32 * 0.06 * growth);
    expect(steady).toBeCloseTo(298.15 + 0.6 * (32 ** 2 * 0.06 * growth + (1.2 * rate) / 18), 6);
    expect(row.steady?.rotationRate).toBeCloseTo(rate, 6);
  });

  it("reaches its limit after the time of the closed form where resistance does not change", () => {
    const steel = { ...bare, temperatureCoefficient: 0, thermal };
    const row = first({ motor: steel, voltage: 50, points: [{ current: 45 }] });
    const rise = 0.6 * (there(row.copperLoss) + there(row.noLoadLoss));
    expect(rise).toBeGreaterThan(85);
    expect(there(row.timeToLimit) / (120 * 0.6 * -Math.log(1 - 85 / rise))).toBeCloseTo(1, 4);
    expect(row.steadyTemperature).toBeCloseTo(298.15 + rise, 6);
  });

  it("with growing resistance reaches it after the time of the closed form of a linear law, and sooner", () => {
    const row = first({ motor: { ...bare, thermal }, voltage: 50, points: [{ rotationRate: 800, torque: 2.5 }] });
    const current = there(row.current);
    const slope = (current ** 2 * 0.06 * 0.00393) / (1 + 0.00393 * 5);
    const [supply, loss] = [there(row.copperLoss) + there(row.noLoadLoss), 1 / 0.6 - slope];
    expect(there(row.timeToLimit) / ((-120 / loss) * Math.log(1 - (85 * loss) / supply))).toBeCloseTo(1, 5);
  });

  it("may run away, which is an answer with its reason", () => {
    const row = first({
      motor: { ...bare, thermal: { ...thermal, thermalResistance: 6 } },
      voltage: 50,
      points: [{ rotationRate: 600, torque: 2 }],
    });
    expect(row.steadyTemperature).toBeNull();
    expect(row.heating).toContain("Runs away");
    expect(row.timeToLimit).toBeGreaterThan(0);
  });

  it("never reaches its limit with little load, and is at it from the start when it starts too hot", () => {
    const cool = heated({}, { current: 5 });
    expect(cool.timeToLimit).toBeNull();
    expect(cool.heating).toContain("below its limit");
    const hot = heated({}, { current: 5 }, { startTemperature: 400 });
    expect(hot.timeToLimit).toBe(0);
  });

  it("with a housing conserves heat in the long run, and behaves as one mass where the housing is cold and endless", () => {
    const housing = { heatCapacity: 300, thermalResistance: 0.4 };
    const row = first({
      motor: { ...bare, temperatureCoefficient: 0, thermal: { ...thermal, housing } },
      voltage: 50,
      points: [{ current: 20 }],
    });
    const [copper, idle] = [there(row.copperLoss), there(row.noLoadLoss)];
    expect(row.steadyTemperature).toBeCloseTo(298.15 + 0.4 * (copper + idle) + 0.6 * copper, 6);
    const endless = heated({ housing: { heatCapacity: 1e7, thermalResistance: 1e-4 } }, { current: 60 });
    const single = first({ motor: { ...bare, noLoadCurrent: 0, thermal }, voltage: 50, points: [{ current: 60 }] });
    expect(there(endless.timeToLimit) / there(single.timeToLimit)).toBeCloseTo(1, 3);
  });

  it("bears its continuous power for ever and its short-time power for the time asked, and no more", () => {
    const inputs = { motor: { ...bare, thermal }, voltage: 50, shortTime: 90 };
    const { continuous, shortTime, continuousPower, shortTimePower, largestShaftPower } = answered(inputs);
    expect(there(continuousPower)).toBeLessThan(there(shortTimePower));
    expect(there(shortTimePower)).toBeLessThanOrEqual(there(largestShaftPower) + 1e-6);
    const at = (current: number) => first({ ...inputs, points: [{ current }] });
    expect(at(there(continuous?.current) * 0.999).timeToLimit).toBeNull();
    expect(at(there(continuous?.current) * 1.01).timeToLimit).toBeGreaterThan(0);
    expect(there(at(there(shortTime?.current)).timeToLimit) / 90).toBeCloseTo(1, 3);
  });
});

describe("what a motor can do at full throttle", () => {
  it("is best where the closed form says, with controller and gear somewhere else and lower", () => {
    const { bestEfficiency } = answered({ motor: bare, voltage: 50 });
    expect(bestEfficiency?.current).toBeCloseTo(Math.sqrt((50 * 1.2) / 0.06), 3);
    expect(bestEfficiency?.efficiency).toBeCloseTo((1 - Math.sqrt((1.2 * 0.06) / 50)) ** 2, 9);
    expect(answered({ motor: full, voltage: 50 }).bestEfficiency?.efficiency).toBeLessThan(there(bestEfficiency?.efficiency));
  });

  it("gives half the power of a lossless stall at half the stall current", () => {
    const { largestShaftPower, stallCurrent } = answered({ motor: { ...bare, noLoadCurrent: 0 }, voltage: 50 });
    expect(stallCurrent).toBeCloseTo(50 / 0.06, 9);
    expect(largestShaftPower).toBeCloseTo(50 ** 2 / (4 * 0.06), 4);
  });

  it("has an answer, limits and figures that agree with its outputs", () => {
    const given = { motor: { ...full, currentMaximum: 30, thermal }, voltage: 50, points: [{ current: 10 }, { current: 40 }] };
    const inputs = motor.inputs.parse(given);
    const outputs = answered(given);
    expect(motor.answer(outputs, inputs).brief.length).toBeLessThanOrEqual(40);
    const limits = motor.limits(outputs, inputs);
    expect(limits.map(({ name }) => name)).toEqual(["voltage", "motor current", "winding temperature"]);
    expect(limits[1]).toMatchObject({ share: 40 / 30, where: "at point 2" });
    expect(limits.filter(({ binding }) => binding)).toHaveLength(1);
    expect(kinds(given)).toEqual(expect.arrayContaining(["current"]));
    expect(motor.figures(outputs, inputs).map(({ id }) => id)).toEqual(
      expect.arrayContaining(["efficiency", "power", "rate", "torque", "heating", "losses", "points", "ratings"]),
    );
  });
});
