import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MomentumPropeller, propellerState } from "./index.ts";

/** The invented propeller of the demo. */
const propeller: MomentumPropeller = {
  diameter: 0.48,
  inducedFactor: 1.2,
  profileEfficiency: 0.8,
  reverseFigureOfMerit: 0.38,
  thrustCoefficient: 0.095,
  zeroThrustAdvanceRatio: 1.05,
  reverseThrustCoefficient: 0.06,
};
const density = 1.225;
const area = Math.PI * 0.24 ** 2;
const at = (airspeed: number, thrust: number) => propellerState(propeller, { density, airspeed }, thrust);

const airspeeds = fc.double({ min: 0, max: 45, noNaN: true });
const thrusts = fc.double({ min: 0.01, max: 60, noNaN: true });

describe("a propeller that pulls", () => {
  it("moves the air that its thrust needs: T = 2 ρ A (V + v) v with the v that its power speaks of", () => {
    fc.assert(
      fc.property(airspeeds, thrusts, (airspeed, thrust) => {
        const induced = ((at(airspeed, thrust).shaftPower * 0.8) / thrust - airspeed) / 1.2;
        expect((2 * density * area * (airspeed + induced) * induced) / thrust).toBeCloseTo(1, 6);
      }),
      { seed: 21 },
    );
  });

  it("turns at the rate of its thrust law: T = c ρ n² D⁴ (1 − J/J₀)", () => {
    fc.assert(
      fc.property(airspeeds, thrusts, (airspeed, thrust) => {
        const turns = at(airspeed, thrust).rotationRate / (2 * Math.PI);
        const advanceRatio = airspeed / (turns * 0.48);
        expect((0.095 * density * turns ** 2 * 0.48 ** 4 * (1 - advanceRatio / 1.05)) / thrust).toBeCloseTo(1, 9);
      }),
      { seed: 22 },
    );
  });

  it("standing has a figure of merit of 0.80/1.2 = 0.667 at any thrust", () => {
    for (const thrust of [1, 10, 40])
      expect(thrust ** 1.5 / Math.sqrt(2 * density * area) / at(0, thrust).shaftPower).toBeCloseTo(0.8 / 1.2, 12);
  });

  it("nears its profile efficiency as thrust vanishes at speed", () => {
    expect((1e-6 * 30) / at(30, 1e-6).shaftPower).toBeCloseTo(0.8, 6);
  });

  it("never gives more than it takes: thrust times airspeed stays below the shaft's power", () => {
    fc.assert(
      fc.property(airspeeds, thrusts, (airspeed, thrust) => {
        expect(thrust * airspeed).toBeLessThan(0.8 * at(airspeed, thrust).shaftPower);
      }),
      { seed: 23 },
    );
  });
});

describe("a propeller that pushes back", () => {
  // The drag of a disc that windmills, half of ½ ρ V² A.
  const free = (airspeed: number) => 0.25 * density * airspeed ** 2 * area;

  it("costs nothing up to the drag of a windmilling propeller, and from there rises without a jump", () => {
    for (const airspeed of [5, 15, 30]) {
      expect(at(airspeed, -free(airspeed)).shaftPower).toBeLessThan(1e-12);
      expect(at(airspeed, -free(airspeed) / 2).shaftPower).toBe(0);
      const just = at(airspeed, -free(airspeed) * (1 + 1e-6)).shaftPower;
      expect(just).toBeGreaterThan(0);
      expect(just).toBeLessThan(1e-3);
    }
  });

  it("pays for what exceeds it with the figure of merit 0.38", () => {
    const excess = 8;
    const ideal = excess ** 1.5 / Math.sqrt(2 * density * area);
    for (const airspeed of [0, 12, 25]) expect(ideal / at(airspeed, -free(airspeed) - excess).shaftPower).toBeCloseTo(0.38, 9);
  });

  it("turns at the rate of its own thrust law: T = c_r ρ n² D⁴", () => {
    for (const thrust of [0.6, 6, 20]) {
      const turns = at(14, -thrust).rotationRate / (2 * Math.PI);
      expect(0.06 * density * turns ** 2 * 0.48 ** 4).toBeCloseTo(thrust, 9);
    }
  });
});

describe("at zero thrust", () => {
  it("power and rate pass through without a jump, standing and at speed", () => {
    for (const airspeed of [0, 3, 12, 30]) {
      const [below, zero, above] = [-1e-9, 0, 1e-9].map((thrust) => at(airspeed, thrust));
      for (const side of [below, above]) {
        expect(side?.shaftPower).toBeCloseTo(zero?.shaftPower as number, 6);
        // Standing, the rate falls with the square root of thrust.
        expect(side?.rotationRate).toBeCloseTo(zero?.rotationRate as number, airspeed > 0 ? 5 : 1);
      }
    }
  });

  it("nothing moves standing, and nothing is not a number anywhere", () => {
    expect(at(0, 0)).toEqual({ shaftPower: 0, rotationRate: 0 });
    fc.assert(
      fc.property(airspeeds, fc.double({ min: -60, max: 60, noNaN: true }), (airspeed, thrust) => {
        const { shaftPower, rotationRate } = at(airspeed, thrust);
        expect(shaftPower).toBeGreaterThanOrEqual(0);
        expect(rotationRate).toBeGreaterThanOrEqual(0);
        expect(Number.isFinite(shaftPower) && Number.isFinite(rotationRate)).toBe(true);
      }),
      { seed: 24 },
    );
  });

  it("the rate runs continuously through the change of direction", () => {
    let before = at(20, 0.5).rotationRate;
    for (let thrust = 0.49; thrust > -1.2; thrust -= 0.01) {
      const here = at(20, thrust).rotationRate;
      expect(Math.abs(here - before)).toBeLessThan(8);
      before = here;
    }
  });
});
