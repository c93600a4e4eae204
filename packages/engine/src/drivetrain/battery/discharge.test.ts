import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BatteryPack, batteryPack, dischargeStep, enduranceAt } from "./index.ts";

const points = (...pairs: readonly (readonly [number, number])[]) => pairs.map(([stateOfCharge, value]) => ({ stateOfCharge, value }));

/** One cell whose rest voltage and resistance are straight lines: nothing hides the order of a step. */
function plainPack(change: { readonly resistance?: number; readonly cutoffVoltage?: number } = {}): BatteryPack {
  return batteryPack(
    {
      capacity: 3600,
      openCircuitVoltage: points([0, 3], [1, 4]),
      resistance: change.resistance ?? 0.2,
      resistanceFactor: points([0, 2], [1, 1]),
      resistanceActivation: 0,
      capacityFactor: [{ temperature: 298.15, value: 1 }],
      cutoffVoltage: change.cutoffVoltage ?? 2,
    },
    { seriesCells: 1, parallelCells: 1, blocks: 1, wiringResistance: 0 },
    { temperature: 298.15, capacityFactor: 1, resistanceFactor: 1 },
  );
}

/** What the terminals show under a power: a step of no length. */
const terminalState = (pack: BatteryPack, stateOfCharge: number, power: number) => dischargeStep(pack, stateOfCharge, power, 0);

/** State of charge after 1 000 s at a constant power in so many equal steps. */
function chargeAfter(pack: BatteryPack, power: number, steps: number): number {
  let stateOfCharge = 1;
  for (let i = 0; i < steps; i++) {
    const outcome = dischargeStep(pack, stateOfCharge, power, 1000 / steps);
    if (outcome.kind !== "stepped") throw new Error(`not deliverable at ${stateOfCharge}`);
    stateOfCharge = outcome.stateOfCharge;
  }
  return stateOfCharge;
}

describe("the terminals under a power", () => {
  it("obey P = U I and U = U₀ − I R, on the side of the smaller current", () => {
    const pack = plainPack();
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1, noNaN: true }), fc.double({ min: 0, max: 8, noNaN: true }), (stateOfCharge, power) => {
        const state = terminalState(pack, stateOfCharge, power);
        if (state.kind !== "stepped") return;
        expect(state.current * state.voltage).toBeCloseTo(power, 10);
        expect(state.voltage).toBeCloseTo(pack.openCircuitVoltage(stateOfCharge) - state.current * pack.resistance(stateOfCharge), 10);
        expect(state.voltage).toBeGreaterThanOrEqual(pack.openCircuitVoltage(stateOfCharge) / 2);
      }),
      { seed: 11 },
    );
  });

  it.each([
    // Full, 4 V and 0.2 Ω: at 3.5 V 2.5 A flow, 8.75 W; matched, 2 V and 10 A, 20 W.
    { cutoffVoltage: 3.5, because: "cut-off voltage", largestPower: 8.75 },
    { cutoffVoltage: 1.5, because: "internal resistance", largestPower: 20 },
  ] as const)(
    "refuse beyond $largestPower W because of the $because, and give what is just below",
    ({ cutoffVoltage, because, largestPower }) => {
      const pack = plainPack({ cutoffVoltage });
      const refused = terminalState(pack, 1, largestPower * 1.5);
      expect(refused).toEqual({ kind: "not-deliverable", largestPower: expect.closeTo(largestPower, 10), because });
      expect(terminalState(pack, 1, largestPower * (1 - 1e-9)).kind).toBe("stepped");
      expect(terminalState(pack, 1, largestPower * (1 + 1e-9)).kind).toBe("not-deliverable");
    },
  );

  it("give nothing when the rest voltage itself is below cut-off", () => {
    expect(terminalState(plainPack({ cutoffVoltage: 3.5 }), 0.2, 0.001)).toMatchObject({ kind: "not-deliverable", largestPower: 0 });
  });
});

describe("a discharge", () => {
  it("is of second order: halving the step quarters the error", () => {
    const pack = plainPack();
    const exact = chargeAfter(pack, 3, 4096);
    const errors = [4, 8, 16].map((steps) => Math.abs(chargeAfter(pack, 3, steps) - exact));
    for (const [coarse, fine] of [[errors[0], errors[1]] as const, [errors[1], errors[2]] as const]) {
      const ratio = (coarse as number) / (fine as number);
      expect(ratio).toBeGreaterThan(3.6);
      expect(ratio).toBeLessThan(4.4);
    }
  });

  it("closes its energy: what the cells give at rest voltage is what the terminals give plus I²R heat", () => {
    const pack = plainPack();
    const power = 3;
    const step = 1;
    let stateOfCharge = 1;
    let heat = 0;
    let seconds = 0;
    const heating = (charge: number) => {
      const state = terminalState(pack, charge, power);
      return state.kind === "stepped" ? state.current ** 2 * pack.resistance(charge) : Number.NaN;
    };
    while (stateOfCharge > 0.3) {
      const outcome = dischargeStep(pack, stateOfCharge, power, step);
      if (outcome.kind !== "stepped") throw new Error("not deliverable");
      heat += ((heating(stateOfCharge) + heating(outcome.stateOfCharge)) / 2) * step;
      stateOfCharge = outcome.stateOfCharge;
      seconds += step;
    }
    // ∫ U₀ dQ for U₀ = 3 V + z · 1 V.
    const given = 3600 * (3 * (1 - stateOfCharge) + (1 - stateOfCharge ** 2) / 2);
    expect(heat / given).toBeGreaterThan(0.02);
    expect((power * seconds + heat) / given).toBeCloseTo(1, 6);
  });

  it("refuses a step whose middle is not deliverable, so that nothing is flown on a voltage below cut-off", () => {
    const pack = plainPack({ cutoffVoltage: 3.4 });
    let stateOfCharge = 1;
    let last = dischargeStep(pack, stateOfCharge, 1, 5);
    while (last.kind === "stepped") {
      expect(last.voltage).toBeGreaterThanOrEqual(3.4);
      stateOfCharge = last.stateOfCharge;
      last = dischargeStep(pack, stateOfCharge, 1, 5);
    }
    expect(last).toMatchObject({ because: "cut-off voltage" });
    expect(last.largestPower).toBeLessThan(1.02);
  });
});

describe("endurance", () => {
  it("without resistance is the energy of the charge over the power, exactly", () => {
    // 3 600 C · ∫ (3 + z) dz from 0.2 to 1 = 3 600 · (2.4 + 0.48) J.
    const { duration, energy, ends } = enduranceAt(plainPack({ resistance: 0 }), 5, 0.2);
    expect(ends).toBe("reserve");
    expect(duration / ((3600 * 2.88) / 5)).toBeCloseTo(1, 6);
    expect(energy).toBe(5 * duration);
  });

  it("with resistance equals the fine integral of Q dz/I", () => {
    const pack = plainPack();
    const power = 4;
    const pieces = 40_000;
    let integral = 0;
    for (let i = 0; i < pieces; i++) {
      const stateOfCharge = 0.2 + (0.8 * (i + 0.5)) / pieces;
      const rest = pack.openCircuitVoltage(stateOfCharge);
      const resistance = pack.resistance(stateOfCharge);
      integral += (pack.capacity * 0.8) / pieces / ((rest - Math.sqrt(rest ** 2 - 4 * resistance * power)) / (2 * resistance));
    }
    expect(enduranceAt(pack, power, 0.2).duration / integral).toBeCloseTo(1, 6);
  });

  it("ends where the power is no longer deliverable when that comes before the reserve", () => {
    const pack = plainPack({ cutoffVoltage: 3.4 });
    const { ends, stateOfCharge, duration } = enduranceAt(pack, 1, 0.05);
    expect(ends).toBe("not-deliverable");
    expect(stateOfCharge).toBeGreaterThan(0.4);
    expect(terminalState(pack, stateOfCharge - 0.001, 1).kind).toBe("not-deliverable");
    expect(duration).toBeGreaterThan(0);
    expect(enduranceAt(pack, 100, 0.05)).toMatchObject({ ends: "not-deliverable", duration: 0 });
  });

  it("falls as power rises, and a start from half full lasts less than one from full", () => {
    const pack = plainPack();
    const durations = [1, 2, 3, 4].map((power) => enduranceAt(pack, power, 0.2).duration);
    expect([...durations].sort((a, b) => b - a)).toEqual(durations);
    expect(enduranceAt(pack, 2, 0.2, 0.5).duration).toBeLessThan(durations[1] as number);
  });

  it("refuses a power that is not positive", () => {
    expect(() => enduranceAt(plainPack(), 0, 0.2)).toThrow(RangeError);
    expect(() => enduranceAt(plainPack(), Number.NaN, 0.2)).toThrow(RangeError);
  });
});
