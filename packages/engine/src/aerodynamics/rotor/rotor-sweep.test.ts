import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rotorLoading } from "./rotor-loading.ts";
import type { RotorModel } from "./rotor-model.ts";
import { sweepRotor } from "./rotor-sweep.kernel.ts";
import { createRotorWorkspace, type RotorSweepResult, type RotorSweepState, type RotorWorkspace } from "./rotor-workspace.ts";

const model: RotorModel = {
  radius: 1.2,
  bladeCount: 2,
  rootCutout: 0.15,
  stations: [
    { radiusFraction: 0, chord: 0.11, twist: 0.04 },
    { radiusFraction: 1, chord: 0.08, twist: -0.03 },
  ],
  precone: 0.03,
  articulation: { kind: "teetering" },
  section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: -0.005, cd2: 0.4, stallAngle: 0.22 },
  tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 0.97 },
  inducedPowerFactor: 1.1,
  inflow: "drees",
  radialFlow: "resultant",
  azimuths: 24,
  radialElements: 16,
};
const fast = createRotorWorkspace(model);
const general = createRotorWorkspace({
  ...model,
  section: { kind: "built-in", name: "naca-0015", dragIncrement: 0.002 },
  tipLoss: { kind: "prandtl" },
  radialFlow: "friction",
});

/** Sections change along the blade, stall delay is on. */
const changing = createRotorWorkspace({
  ...model,
  stations: [
    { radiusFraction: 0, chord: 0.2, twist: 0.04, section: { kind: "built-in", name: "naca-0015", dragIncrement: 0 } },
    { radiusFraction: 0.6, chord: 0.09, twist: 0 },
    { radiusFraction: 1, chord: 0.08, twist: -0.03, section: { kind: "built-in", name: "naca-0012", dragIncrement: 0.001 } },
  ],
  tipLoss: { kind: "prandtl" },
  stallDelay: true,
});
/** Rings with velocities of their own, that follow no balance here. */
const annular = createRotorWorkspace({ ...model, inflowBalance: "annular", tipLoss: { kind: "prandtl" } });
annular.rings.induced.forEach((_, i, velocities) => {
  velocities[i] = 0.01 + 0.004 * i;
  annular.rings.swirl[i] = 0.02 - 0.001 * i;
});
annular.rings.plungeCosine = 0.004;
annular.rings.plungeSine = -0.007;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const state: fc.Arbitrary<RotorSweepState> = fc.record({
  mu: between(0, 0.8),
  lambdaC: between(-0.15, 0.15),
  lambdaI: between(-0.02, 0.1),
  theta0: between(-0.1, 0.3),
  theta1c: between(-0.1, 0.1),
  theta1s: between(-0.15, 0.15),
  coning: between(-0.02, 0.12),
  tipSpeed: between(40, 150),
  speedOfSound: fc.constant(340),
  kinematicViscosity: fc.constant(1.46e-5),
});

function swept(ws: RotorWorkspace, of: RotorSweepState): RotorSweepResult {
  sweepRotor(ws, of);
  return { ...ws.out };
}

describe("the sweep over the blade elements", () => {
  it.each([
    ["lift cut-off and generic section", fast],
    ["Prandtl's tip function and tabulated section", general],
    ["sections that change along the blade, stall delayed", changing],
    ["velocities induced ring by ring", annular],
  ])("agrees with its plain form: %s", (_, ws) => {
    fc.assert(
      fc.property(state, (of) => {
        const sweep = swept(ws, of);
        const plain = rotorLoading(ws, of);
        const sum = (part: (load: (typeof plain)[number]) => number) => plain.reduce((total, load) => total + part(load), 0);
        const pairs = [
          [sweep.ct, sum((load) => load.thrust)],
          [sweep.cq, sum((load) => load.torque)],
          [sweep.ch, sum((load) => load.aft)],
          [sweep.cy, sum((load) => load.side)],
          [sweep.momentCos, sum((load) => load.radiusFraction * load.thrust * Math.cos(load.azimuth))],
          [sweep.momentSin, sum((load) => load.radiusFraction * load.thrust * Math.sin(load.azimuth))],
          [sweep.meanFlapMoment, sum((load) => load.radiusFraction * load.thrust)],
          [sweep.cpInduced, sum((load) => load.inducedPower)],
        ] as const;
        for (const [kernel, reference] of pairs) expect(Math.abs(kernel - reference)).toBeLessThan(1e-8);
      }),
      { numRuns: 60, seed: 1 },
    );
  });

  it.each([fast, general, changing, annular])(
    "closes the balance of power: shaft and stream give what drag and induced velocity take",
    (ws) => {
      fc.assert(
        fc.property(state, (of) => {
          const { ct, cq, ch, cpInduced } = swept(ws, of);
          const profile = rotorLoading(ws, of).reduce((total, load) => total + load.profilePower, 0);
          expect(cq + of.mu * ch - of.lambdaC * ct).toBeCloseTo(cpInduced + profile, 8);
        }),
        { numRuns: 60, seed: 2 },
      );
    },
  );

  it("turned upside down makes the same rotor with its thrust reversed", () => {
    const flat = createRotorWorkspace({
      ...model,
      stations: [{ radiusFraction: 0, chord: 0.09, twist: 0 }],
      section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: 0, cd2: 0.4, stallAngle: 0.22 },
    });
    fc.assert(
      fc.property(state, (of) => {
        const one = swept(flat, of);
        const { lambdaC, lambdaI, theta0, theta1c, theta1s, coning } = of;
        const other = swept(flat, {
          ...of,
          lambdaC: -lambdaC,
          lambdaI: -lambdaI,
          theta0: -theta0,
          theta1c: -theta1c,
          theta1s: -theta1s,
          coning: -coning,
        });
        expect(other.ct).toBeCloseTo(-one.ct, 9);
        expect(other.momentCos).toBeCloseTo(-one.momentCos, 9);
        for (const name of ["cq", "ch", "cy", "cpInduced"] as const) expect(other[name]).toBeCloseTo(one[name], 9);
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  it("with the stream from behind is itself turned by half a circle", () => {
    const uniform = createRotorWorkspace({ ...model, inflow: "uniform" });
    fc.assert(
      fc.property(state, (of) => {
        const one = swept(uniform, of);
        const other = swept(uniform, { ...of, mu: -of.mu, theta1c: -of.theta1c, theta1s: -of.theta1s });
        for (const name of ["ct", "cq", "meanFlapMoment"] as const) expect(other[name]).toBeCloseTo(one[name], 12);
        for (const name of ["ch", "cy", "momentCos", "momentSin"] as const) expect(other[name]).toBeCloseTo(-one[name], 12);
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  it("changes by less than one per cent on a finer mesh", () => {
    const fine = createRotorWorkspace({ ...model, azimuths: 36, radialElements: 24 });
    const finest = createRotorWorkspace({ ...model, azimuths: 96, radialElements: 64 });
    const of: RotorSweepState = {
      ...fast.state,
      mu: 0.25,
      lambdaC: -0.01,
      lambdaI: 0.02,
      theta0: 0.09,
      theta1c: 0.02,
      theta1s: -0.05,
      coning: 0.035,
      tipSpeed: 90,
      speedOfSound: 340,
      kinematicViscosity: 1.46e-5,
    };
    const [coarse, middle, limit] = [fast, fine, finest].map((ws) => swept(ws, of));
    for (const name of ["ct", "cq"] as const) {
      const far = Math.abs((coarse?.[name] ?? 0) / (limit?.[name] ?? 1) - 1);
      const near = Math.abs((middle?.[name] ?? 0) / (limit?.[name] ?? 1) - 1);
      expect(far).toBeLessThan(0.01);
      expect(near).toBeLessThan(Math.max(far, 1e-3));
    }
  });
});
