import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CellDefinition, preparedPack, type RunRecord, rowGroup, rowHead } from "./index.ts";
import { current, fresh, last, pack, power, reference, run } from "./sample-pack.ts";

const lost = ({ energies }: RunRecord) => energies.slice(1).reduce((sum, part) => sum + part, 0);

const block = fc.record({
  capacityFactor: fc.double({ min: 0.7, max: 1, noNaN: true }),
  resistanceFactor: fc.double({ min: 1, max: 2.5, noNaN: true }),
  stateOfCharge: fc.double({ min: 0.6, max: 1, noNaN: true }),
  temperature: fc.double({ min: 250, max: 320, noNaN: true }),
});
const stage = fc.oneof(
  fc.tuple(fc.double({ min: 0, max: 600, noNaN: true }), fc.double({ min: 1, max: 300, noNaN: true })).map(([p, t]) => power(p, t)),
  fc.tuple(fc.double({ min: 0, max: 12, noNaN: true }), fc.double({ min: 1, max: 300, noNaN: true })).map(([i, t]) => current(i, t)),
);
const question = fc.tuple(fc.array(block, { minLength: 1, maxLength: 4 }), fc.array(stage, { minLength: 1, maxLength: 6 }));

/** Rounding of the energy that a block holds, half a megajoule [J]. */
const roundOff = 1e-8;

describe("balances of a run over any blocks and loads", () => {
  it("energy out and lost is what the cells gave, to round-off", () => {
    fc.assert(
      fc.property(question, ([blocks, stages]) => {
        const record = run(pack(blocks), { stages, timeStep: 10 });
        const through = (record.energies[0] ?? 0) + record.circulated * 60;
        expect(Math.abs(record.energyOut + lost(record) - (record.energies[0] ?? 0))).toBeLessThanOrEqual(1e-11 * through + roundOff);
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it("what the cells gave is the area under their rest voltage, whatever the path", () => {
    fc.assert(
      fc.property(question, ([blocks, stages]) => {
        const of = pack(blocks);
        const record = run(of, { stages, timeStep: 10 });
        const { groupOf, start } = preparedPack(of);
        const given = blocks.reduce((sum, own, index) => {
          const at = 5 * (groupOf[index] ?? 0);
          const area = restArea(start[at] ?? 0) - restArea(record.stepper.state[at] ?? 0);
          return sum + area * reference.capacity * own.capacityFactor * of.series;
        }, 0);
        expect(Math.abs(given - (record.energies[0] ?? 0))).toBeLessThanOrEqual(
          1e-9 * (Math.abs(given) + record.circulated * 60) + roundOff,
        );
      }),
      { seed: 6, numRuns: 40 },
    );
  });

  it("charge out is what the blocks lost", () => {
    fc.assert(
      fc.property(question, ([blocks, stages]) => {
        const of = pack(blocks);
        const record = run(of, { stages, timeStep: 10 });
        const { groupOf, start } = preparedPack(of);
        const drawn = blocks.reduce((sum, own, index) => {
          const at = 5 * (groupOf[index] ?? 0);
          return sum + ((start[at] ?? 0) - (record.stepper.state[at] ?? 0)) * reference.capacity * own.capacityFactor;
        }, 0);
        expect(Math.abs(drawn - record.chargeOut)).toBeLessThanOrEqual(1e-9 * (record.chargeOut + record.circulated + 1));
      }),
      { seed: 7, numRuns: 40 },
    );
  });
});

/** Area under the rest voltage of the reference cell from empty [V], by its own straight pieces. */
function restArea(upTo: number): number {
  const [voltages = []] = reference.openCircuitVoltage;
  return reference.statesOfCharge.reduce((sum, high, i) => {
    const low = reference.statesOfCharge[i - 1] ?? high;
    const end = Math.min(high, upTo);
    if (end <= low) return sum;
    const a = voltages[i - 1] ?? 0;
    const b = voltages[i] ?? 0;
    const atEnd = a + ((b - a) * (end - low)) / (high - low);
    return sum + ((a + atEnd) / 2) * (end - low);
  }, 0);
}

describe("blocks in parallel", () => {
  it("share equally when alike, and as one block would with all of them in parallel cells", () => {
    const three = run(pack([fresh, fresh, fresh], { isolatorResistance: 0 }), { stages: [power(300)] });
    const wide = run(pack([fresh], { parallel: 3, isolatorResistance: 0, thermalResistance: 1.6 / 3 }), { stages: [power(300)] });
    expect(three.duration).toBeCloseTo(wide.duration, 6);
    expect(last(three, rowHead)).toBeCloseTo(last(wide, rowHead), 9);
  });

  it("that are isolated change nothing: bit for bit a smaller pack", () => {
    const isolated = run(pack([fresh, null, { ...fresh, resistanceFactor: 1.4 }, null]), { stages: [power(250)] });
    const smaller = run(pack([fresh, { ...fresh, resistanceFactor: 1.4 }]), { stages: [power(250)] });
    expect(isolated.rows).toEqual(smaller.rows);
    expect(isolated.duration).toBe(smaller.duration);
  });

  it("never shorten the run when there is one more", () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 3 }), fc.double({ min: 40, max: 400, noNaN: true }), (blocks, load) => {
        const fewer = run(pack(blocks), { stages: [power(load)], timeStep: 20 });
        const more = run(pack([...blocks, { ...fresh, stateOfCharge: 0.9 }]), { stages: [power(load)], timeStep: 20 });
        if (fewer.end === "empty block" || more.end === "empty block") return;
        expect(more.duration).toBeGreaterThanOrEqual(fewer.duration * (1 - 1e-6));
      }),
      { seed: 8, numRuns: 25 },
    );
  });

  it("of differing charge feed each other without load until their voltages meet, and keep their charge", () => {
    const of = pack([fresh, { ...fresh, stateOfCharge: 0.5 }], { isolatorResistance: 0.05 });
    const record = run(of, { stages: [current(0, 40_000)], timeStep: 20 });
    const [a = 0, b = 0] = [record.stepper.state[0], record.stepper.state[5]];
    expect(record.rows[rowHead] ?? 0).toBeGreaterThan(1);
    expect(record.watch.largestCharging).toBeCloseTo(record.rows[rowHead] ?? 0, 6);
    expect((a + b) / 2).toBeCloseTo(0.75, 9);
    expect(Math.abs(a - b)).toBeLessThan(5e-3);
    expect(record.energyOut).toBeCloseTo(0, 6);
    expect(lost(record)).toBeCloseTo(record.energies[0] ?? 0, 6);
  });

  it("with more resistance or age give less current, and the order of the blocks does not matter", () => {
    const old = { ...fresh, resistanceFactor: 2, capacityFactor: 0.8 };
    const one = run(pack([fresh, old]), { stages: [power(300, 600)] });
    const other = run(pack([old, fresh]), { stages: [power(300, 600)] });
    expect(one.rows[rowHead] ?? 0).toBeGreaterThan(1.5 * (one.rows[rowHead + rowGroup] ?? 0));
    expect(other.rows[rowHead + rowGroup]).toBeCloseTo(one.rows[rowHead] ?? 0, 9);
    expect(last(other, 3)).toBeCloseTo(last(one, 3), 10);
  });
});

/** Resistances of a cell without charge or temperature in them. */
const plain = {
  ohmicResistance: [[0.03, 0.03]],
  ohmicActivation: 0,
  pairs: [
    { resistance: [[0.02, 0.02]], timeConstant: [[4, 4]], activation: 0 },
    { resistance: [[0.03, 0.03]], timeConstant: [[50, 50]], activation: 0 },
  ],
};

describe("steps of a run", () => {
  it("converge with second order under a power", () => {
    const cell: CellDefinition = { ...reference, statesOfCharge: [0, 1], openCircuitVoltage: [[3, 4.2]], ...plain };
    const at = (timeStep: number) => last(run(pack([fresh], { cell }), { stages: [power(60, 960)], timeStep }), 3);
    const exact = at(0.5);
    const errors = [32, 16, 8].map((step) => Math.abs(at(step) - exact));
    expect((errors[0] ?? 0) / (errors[1] ?? 1)).toBeGreaterThan(3);
    expect((errors[1] ?? 0) / (errors[2] ?? 1)).toBeGreaterThan(3);
  });

  it("may be as the question likes: a stage cut in pieces, and a fine step, give the same end", () => {
    const whole = run(pack([fresh]), { stages: [power(150, 600), power(60, 900)], timeStep: 10 });
    const pieces = run(pack([fresh]), { stages: [...Array(60).fill(power(150, 10)), ...Array(30).fill(power(60, 30))], timeStep: 10 });
    const fine = run(pack([fresh]), { stages: [power(150, 600), power(60, 900)], timeStep: 0.5 });
    expect(last(pieces, 3)).toBeCloseTo(last(whole, 3), 8);
    expect(last(fine, 3)).toBeCloseTo(last(whole, 3), 5);
    expect(last(fine, 1)).toBeCloseTo(last(whole, 1), 2);
  });

  it("find the end of a discharge inside a step, not at its end", () => {
    const ends = [1, 7, 30].map((timeStep) => run(pack([fresh]), { stages: [power(180)], timeStep }));
    for (const record of ends) {
      expect(record.end).toBe("cut-off voltage");
      expect(last(record, 1)).toBeCloseTo(35, 6);
      expect(record.duration).toBeCloseTo(ends[0]?.duration ?? 0, 0);
    }
  });

  it("ask the same through power and through current: each run's own power, given back, repeats it", () => {
    const first = run(pack([fresh]), { stages: [current(2.5, 1200)], timeStep: 2 });
    const powers = Array.from({ length: first.rows.length / first.width - 1 }, (_, i) => {
      const value = (row: number) => (first.rows[row * first.width + 1] ?? 0) * (first.rows[row * first.width + 2] ?? 0);
      return power((value(i) + value(i + 1)) / 2, 2);
    });
    const second = run(pack([fresh]), { stages: powers, timeStep: 2 });
    expect(last(second, 3)).toBeCloseTo(last(first, 3), 5);
    expect(last(second, 1)).toBeCloseTo(last(first, 1), 2);
  });
});
