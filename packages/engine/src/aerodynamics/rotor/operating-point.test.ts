import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphereAt } from "../../environment/atmosphere/index.ts";
import { solveRotorInflowAndFlap } from "./inflow-and-flap.ts";
import { largestSteadyThrust } from "./largest-steady-thrust.ts";
import type { OperatingGivens, OperatingPoint } from "./operating-givens.ts";
import { rotorOperatingPoint } from "./operating-point.ts";
import type { RotorModel } from "./rotor-model.ts";
import { createRotorWorkspace } from "./rotor-workspace.ts";
import { shaftCoefficients } from "./shaft-axes.ts";

const model: RotorModel = {
  radius: 1.2,
  bladeCount: 2,
  rootCutout: 0.15,
  stations: [{ radiusFraction: 0, chord: 0.09, twist: 0 }],
  precone: 0.03,
  articulation: { kind: "teetering" },
  section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: 0, cd2: 0.4, stallAngle: 0.22 },
  tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 0.97 },
  inducedPowerFactor: 1.1,
  inflow: "drees",
  radialFlow: "resultant",
  azimuths: 16,
  radialElements: 10,
};
const air = atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 });
const cyclic = { cosine: 0, sine: 0 };
const workspace = createRotorWorkspace(model);
const force = (tipSpeed: number) => air.density * Math.PI * model.radius ** 2 * tipSpeed ** 2;
const solve = (givens: OperatingGivens) => rotorOperatingPoint(workspace, givens, { air, cyclic });

function solved(givens: OperatingGivens): OperatingPoint {
  const found = solve(givens);
  if (found.kind !== "solved") throw new Error(JSON.stringify(found));
  return found;
}

const thrustOf = ({ rotor, point }: OperatingPoint) => shaftCoefficients(rotor, cyclic).ct * force(point.tipSpeed);
const stream = { kind: "airspeed", value: 16 } as const;

describe("a rotor's operating point", () => {
  it("meets a thrust on the unstalled branch, or says how much there is", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: -0.2, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 600, noNaN: true }),
        (airspeed, shaftAngle, thrust) => {
          const condition = { stream: { kind: "airspeed", value: airspeed }, shaftAngle, tipSpeed: 85 } as const;
          const found = solve({ seek: "collective", ...condition, thrust });
          if (found.kind === "thrust-unavailable") expect(found.largestThrust).toBeLessThan(thrust);
          if (found.kind !== "solved") return;
          expect(thrustOf(found)).toBeCloseTo(thrust, 4);
          const more = solve({ seek: "loads", ...condition, collective: found.point.collective + 0.002 });
          const limit = largestSteadyThrust(workspace, found.point);
          if (more.kind === "solved" && limit.kind === "found" && found.point.collective + 0.002 < limit.collective)
            expect(thrustOf(more)).toBeGreaterThan(thrust);
          if (limit.kind === "found") expect(found.point.collective).toBeLessThan(limit.collective + 1e-3);
        },
      ),
      { numRuns: 40, seed: 6 },
    );
  });

  it("autorotates where torque vanishes for the first time with rising shaft angle", () => {
    const found = solved({ seek: "shaft-angle", stream, tipSpeed: 85, collective: 0.05, torque: 0 });
    expect(Math.abs(found.rotor.cq)).toBeLessThan(1e-10);
    const lower = solved({ seek: "loads", stream, shaftAngle: found.shaftAngle - 0.02, tipSpeed: 85, collective: 0.05 });
    expect(lower.rotor.cq).toBeGreaterThan(0);
  });

  it("finds the same autorotation from angle, from rotor speed and from load", () => {
    const byAngle = solved({ seek: "shaft-angle", stream, tipSpeed: 85, collective: 0.05, torque: 0 });
    const bySpeed = solved({
      seek: "tip-speed",
      airspeed: 16,
      shaftAngle: byAngle.shaftAngle,
      collective: 0.05,
      held: { kind: "torque", value: 0 },
    });
    expect(bySpeed.point.tipSpeed).toBeCloseTo(85, 3);
    const thrust = thrustOf(byAngle);
    const byLoad = solved({ seek: "shaft-angle-and-tip-speed", airspeed: 16, collective: 0.05, thrust, torque: 0 });
    expect(byLoad.point.tipSpeed).toBeCloseTo(85, 3);
    const byThrust = solved({ seek: "shaft-angle-and-collective", stream, tipSpeed: 85, thrust, torque: 0 });
    expect(byThrust.point.collective).toBeCloseTo(0.05, 5);
  });

  it("says no where there is no autorotation", () => {
    const still = solve({ seek: "tip-speed", airspeed: 0, shaftAngle: 0, collective: 0.05, held: { kind: "torque", value: 0 } });
    expect(still.kind).toBe("no-equilibrium");
    const coarse = solve({ seek: "shaft-angle", stream, tipSpeed: 85, collective: 0.6, torque: 0 });
    expect(coarse.kind).toBe("no-equilibrium");
  });

  it("makes thrust in proportion to density, and lift needs its density squared in nothing else", () => {
    const thin = { density: air.density / 2, speedOfSound: air.speedOfSound, dynamicViscosity: air.dynamicViscosity };
    const givens = { seek: "loads", stream, shaftAngle: 0.05, tipSpeed: 85, collective: 0.08 } as const;
    const full = solved(givens);
    const half = rotorOperatingPoint(workspace, givens, { air: thin, cyclic });
    expect(half.kind === "solved" && half.rotor.ct).toBeCloseTo(full.rotor.ct, 9);
  });
});

describe("the largest steady thrust", () => {
  it("is a maximum over collective, reached from below", () => {
    for (const airspeed of [0, 10, 25]) {
      const condition = { airspeed, angle: { kind: "disc", value: -0.05 }, tipSpeed: 85, air } as const;
      const largest = largestSteadyThrust(workspace, condition);
      if (largest.kind !== "found") throw new Error(largest.reason);
      for (const aside of [-0.02, -0.005, 0.005]) {
        const rotor = solveRotorInflowAndFlap(workspace, { ...condition, collective: largest.collective + aside });
        if (rotor.kind === "solved") expect(rotor.ct).toBeLessThan(largest.ct);
      }
    }
  });

  it("does not depend on what was solved before", () => {
    const condition = { airspeed: 12, angle: { kind: "disc", value: 0.02 }, tipSpeed: 80, air } as const;
    const first = largestSteadyThrust(createRotorWorkspace(model), condition);
    largestSteadyThrust(workspace, { ...condition, airspeed: 31 });
    expect(largestSteadyThrust(workspace, condition)).toEqual(first);
  });
});
