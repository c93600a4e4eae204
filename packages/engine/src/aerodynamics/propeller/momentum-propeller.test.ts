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
const thrusts = fc.double({ min: 0.5, max: 60, noNaN: true });

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

  it("nears its profile efficiency as thrust falls at speed", () => {
    expect((0.5 * 45) / at(45, 0.5).shaftPower).toBeCloseTo(0.8, 2);
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

describe("about zero thrust", () => {
  it("power and rate pass from one way of running to the other without a jump, standing and at speed", () => {
    for (const airspeed of [0, 3, 12, 30]) {
      let before = at(airspeed, 1.5);
      for (let thrust = 1.499; thrust > -1.5; thrust -= 0.001) {
        const here = at(airspeed, thrust);
        expect(Math.abs(here.shaftPower - before.shaftPower)).toBeLessThan(0.1);
        expect(Math.abs(here.rotationRate - before.rotationRate)).toBeLessThan(2);
        before = here;
      }
    }
  });

  it("costs less than half a newton of thrust does", () => {
    for (const airspeed of [0, 12, 30]) expect(at(airspeed, 0).shaftPower).toBeLessThan(at(airspeed, 0.5).shaftPower);
  });

  it("nothing is negative or not a number anywhere", () => {
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
});
