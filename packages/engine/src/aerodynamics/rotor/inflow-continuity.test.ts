import { describe, expect, it } from "vitest";
import { atmosphereAt } from "../../environment/atmosphere/index.ts";
import { autorotation } from "./autorotation.ts";
import { solveRotorInflowAndFlap } from "./inflow-and-flap.ts";
import type { RotorModel } from "./rotor-model.ts";
import { createRotorWorkspace } from "./rotor-workspace.ts";

/** A section that does not stall: stalled rings have jumps of their own. */
const model: RotorModel = {
  radius: 0.9144,
  bladeCount: 3,
  rootCutout: 0.169,
  stations: [{ radiusFraction: 0, chord: 0.048, twist: 0 }],
  precone: 0,
  articulation: { kind: "teetering" },
  section: { kind: "generic", liftSlope: 5.7, cd0: 0.01, cd1: 0, cd2: 0.3, stallAngle: 1.1 },
  tipLoss: { kind: "prandtl" },
  inducedPowerFactor: 1,
  inflow: "drees",
  radialFlow: "resultant",
  azimuths: 12,
  radialElements: 10,
};
const balances: readonly (readonly [string, Partial<RotorModel>])[] = [
  ["mean", {}],
  ["annular", { inflowBalance: "annular" }],
  ["annular with an induced power factor", { inflowBalance: "annular", inducedPowerFactor: 1.15 }],
  ["annular with swirl and root loss", { inflowBalance: "annular", swirl: true, rootLoss: true }],
];
const air = atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 });
const tipSpeed = 115;
const hoverSpeed = tipSpeed * Math.sqrt(0.004 / 2);
const steps = 500;

describe.each(balances)("induced velocity, %s", (_, settings) => {
  it.each([0, 0.4, 1])(
    "is continuous from climb through hover and the ring state into the windmill at %s hover speeds forward, and so is thrust",
    (forward) => {
      const ws = createRotorWorkspace({ ...model, ...settings });
      let before: { readonly ct: number; readonly lambdaI: number } | undefined;
      let change = { ct: Number.NaN, lambdaI: Number.NaN };
      for (let step = 0; step <= steps; step++) {
        const climb = (2 - (5 * step) / steps) * hoverSpeed;
        const along = forward * hoverSpeed;
        const rotor = solveRotorInflowAndFlap(ws, {
          airspeed: Math.hypot(climb, along),
          angle: { kind: "disc", value: Math.atan2(-climb, along) },
          tipSpeed,
          collective: 0.13,
          air,
        });
        if (rotor.kind !== "solved") throw new Error(`${climb / hoverSpeed}: ${JSON.stringify(rotor)}`);
        if (before) {
          // A step is 1/100 of the hover speed, 4.5e-4 of tip speed, and no change differs from the last by more than slopes may bend.
          const next = { ct: rotor.ct - before.ct, lambdaI: rotor.lambdaI - before.lambdaI };
          if (step > 1) {
            expect(Math.abs(next.lambdaI - change.lambdaI)).toBeLessThan(1e-4);
            expect(Math.abs(next.ct - change.ct)).toBeLessThan(4e-6);
          }
          change = next;
        }
        before = rotor;
      }
    },
  );
});

describe("autorotation beside a solved state", () => {
  const gyro: RotorModel = {
    ...model,
    radius: 1.15,
    bladeCount: 2,
    stations: [{ radiusFraction: 0, chord: 0.09, twist: 0 }],
    section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: -0.005, cd2: 0.4, stallAngle: 0.22 },
    tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 0.97 },
    azimuths: 24,
    radialElements: 16,
  };

  const hinged = { articulation: { kind: "hinged", lockNumber: 7, hingeOffset: 0.04 } } as const;
  const annular = { inflowBalance: "annular", tipLoss: { kind: "prandtl" } } as const;

  it.each([
    ["teetering", {}],
    ["hinged off the shaft", hinged],
    ["annular", annular],
    ["annular, hinged off the shaft", { ...annular, ...hinged }],
    ["annular with an induced power factor", { ...annular, inducedPowerFactor: 1.15 }],
    ["annular with swirl and root loss", { ...annular, swirl: true, rootLoss: true }],
    ["annular with swirl, stall delay and hinges off the shaft", { ...annular, ...hinged, swirl: true, stallDelay: true }],
    ["annular with rigid blades", { ...annular, articulation: { kind: "rigid" } }],
  ] as const)("takes no more than 15 sweeps for 1 m/s, and is the state found from nothing: %s", (_, settings) => {
    const ws = createRotorWorkspace({ ...gyro, ...settings });
    let trail: Parameters<typeof autorotation>[2];
    for (let airspeed = 34; airspeed >= 8; airspeed--) {
      const condition = { airspeed, tipSpeed: 72, collective: 0.035, air };
      const beside = autorotation(ws, condition, trail);
      if (beside.kind !== "solved") throw new Error(beside.reason);
      if (trail) expect(beside.sweeps).toBeLessThanOrEqual(15);
      trail = beside.trail;
      const fresh = autorotation(createRotorWorkspace({ ...gyro, ...settings }), condition);
      if (fresh.kind !== "solved") throw new Error(fresh.reason);
      expect(beside.discAngle).toBeCloseTo(fresh.discAngle, 7);
      for (const name of ["ct", "ch", "cy", "lambdaI", "theta1c", "theta1s", "coning"] as const) {
        expect(beside.rotor[name], name).toBeCloseTo(fresh.rotor[name], 8);
      }
      expect(Math.abs(beside.rotor.cq)).toBeLessThan(1e-9);
    }
  });

  it("is refused with a reason where the air cannot turn the rotor", () => {
    const ws = createRotorWorkspace(gyro);
    const none = autorotation(ws, { airspeed: 18, tipSpeed: 72, collective: 0.6, air });
    expect(none.kind === "no-equilibrium" && none.reason.length > 10).toBe(true);
  });
});
