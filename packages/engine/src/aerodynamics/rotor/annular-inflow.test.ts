import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphereAt } from "../../environment/atmosphere/index.ts";
import { type AnnularPoint, annularLoads } from "./annular-point.ts";
import type { RotorModel } from "./rotor-model.ts";
import { createRotorWorkspace } from "./rotor-workspace.ts";

const model: RotorModel = {
  radius: 1.2,
  bladeCount: 2,
  rootCutout: 0.15,
  stations: [
    { radiusFraction: 0, chord: 0.11, twist: 0.04 },
    { radiusFraction: 1, chord: 0.08, twist: -0.03, section: { kind: "built-in", name: "naca-0012", dragIncrement: 0 } },
  ],
  precone: 0,
  articulation: { kind: "teetering" },
  section: { kind: "built-in", name: "naca-0015", dragIncrement: 0.002 },
  tipLoss: { kind: "prandtl" },
  inducedPowerFactor: 1,
  inflow: "drees",
  inflowBalance: "annular",
  rootLoss: true,
  swirl: true,
  radialFlow: "off",
  azimuths: 16,
  radialElements: 12,
};
const air = atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 });
const workspace = createRotorWorkspace(model);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPoint: fc.Arbitrary<AnnularPoint> = fc.record({
  airspeed: fc.oneof(fc.constant(0), between(0, 60)),
  discAngle: fc.oneof(fc.constant(-Math.PI / 2), fc.constant(Math.PI / 2), between(-Math.PI / 2, Math.PI / 2)),
  rotationRate: fc.oneof(fc.constant(0), between(-90, 90)),
  collective: between(-0.4, 1.5),
  air: fc.constant(air),
});

describe("annular inflow", () => {
  it("answers for every state of a rotor: climb, hover, descent, oblique, stopped, backwards", () => {
    fc.assert(
      fc.property(anyPoint, (point) => {
        const loads = annularLoads(workspace, point);
        if (loads.kind !== "solved") throw new Error(loads.reason);
        for (const value of [loads.thrust, loads.torque, loads.aftForce, loads.pitchMoment, loads.inducedPower]) {
          expect(Number.isFinite(value)).toBe(true);
        }
      }),
      { numRuns: 400, seed: 11 },
    );
  });
});
