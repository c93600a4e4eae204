import { describe, expect, it } from "vitest";
import { type Articulation, flapStiffness } from "./articulation.ts";
import { type SolvedRotor, solveRotorInflowAndFlap } from "./inflow-and-flap.ts";
import { rotorLoading } from "./rotor-loading.ts";
import type { RotorModel } from "./rotor-model.ts";
import type { RotorPoint } from "./rotor-point.ts";
import { createRotorWorkspace, type RotorWorkspace } from "./rotor-workspace.ts";

const lockNumber = 8;
/** A section that never stalls and has no drag, in air without compressibility: what closed forms are about. */
const section = { kind: "generic", liftSlope: 2 * Math.PI, cd0: 0, cd1: 0, cd2: 0, stallAngle: 1.3 } as const;
const model: RotorModel = {
  radius: 1,
  bladeCount: 3,
  rootCutout: 0.06,
  stations: [{ radiusFraction: 0, chord: 0.05, twist: 0 }],
  precone: 0.02,
  articulation: { kind: "teetering" },
  section,
  tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 1 },
  inducedPowerFactor: 1,
  inflow: "uniform",
  radialFlow: "off",
  azimuths: 24,
  radialElements: 60,
};
const air = { density: 1.225, speedOfSound: 1e6, dynamicViscosity: 1.8e-5 };
const tipSpeed = 100;
const cyclic = { sine: 0.013, cosine: -0.008 };
const hover: RotorPoint = {
  airspeed: 0,
  angle: { kind: "shaft", value: 0, cyclicSine: cyclic.sine, cyclicCosine: cyclic.cosine },
  tipSpeed,
  collective: 0.03,
  air,
};

function solved(articulation: Articulation, point = hover): { readonly ws: RotorWorkspace; readonly rotor: SolvedRotor } {
  const ws = createRotorWorkspace({ ...model, articulation });
  const rotor = solveRotorInflowAndFlap(ws, point);
  if (rotor.kind !== "solved") throw new Error(JSON.stringify(rotor));
  return { ws, rotor };
}

/**
 * First-harmonic flapping of a blade in hover, in axes of the shaft, by the integrals of a straight lift curve:
 * (ν² − 1) β_1c = (γ/2)(A (θ_1c − K β_1c) − D β_1s), (ν² − 1) β_1s = (γ/2)(A (θ_1s − K β_1s) + D β_1c).
 */
function closedForm(articulation: Articulation): { readonly a1: number; readonly b1: number } {
  const { surplus, hingeOffset: e, coupling } = flapStiffness(articulation, tipSpeed / model.radius);
  const power = (n: number) => (1 - model.rootCutout ** n) / n;
  const pitchArm = power(4) - e * power(3);
  const dampingArm = power(4) - 2 * e * power(3) + e * e * power(2);
  const onPitch = (lockNumber / 2) * pitchArm;
  const onRate = (lockNumber / 2) * dampingArm;
  const own = surplus + onPitch * coupling;
  const scale = (own * own + onRate * onRate) / onPitch;
  const beta1c = (own * cyclic.cosine - onRate * cyclic.sine) / scale;
  const beta1s = (own * cyclic.sine + onRate * cyclic.cosine) / scale;
  return { a1: -beta1c, b1: -beta1s };
}

const held: readonly (readonly [string, Articulation])[] = [
  ["a hinge on the axis", { kind: "hinged", lockNumber }],
  ["a hinge off the axis", { kind: "hinged", lockNumber, hingeOffset: 0.06 }],
  ["a hinge on the axis with a spring", { kind: "hinged", lockNumber, restFrequency: 45 }],
  [
    "a hinge off the axis with a spring and coupling",
    { kind: "hinged", lockNumber, hingeOffset: 0.05, restFrequency: 30, pitchFlapCoupling: 0.4 },
  ],
  ["a flexure", { kind: "hingeless", lockNumber, flapFrequency: 1.15 }],
  ["a flexure with coupling", { kind: "hingeless", lockNumber, flapFrequency: 1.1, hingeOffset: 0.04, pitchFlapCoupling: -0.3 }],
];

describe("flapping in hover under cyclic pitch", () => {
  it.each(held)("follows the closed form: %s", (_, articulation) => {
    const { rotor } = solved(articulation);
    const { a1, b1 } = closedForm(articulation);
    const size = Math.hypot(a1, b1);
    expect(Math.abs(rotor.flapLongitudinal - a1)).toBeLessThan(0.012 * size);
    expect(Math.abs(rotor.flapLateral - b1)).toBeLessThan(0.012 * size);
  });

  it.each(held)("carries to the hub what spring and shifted hinge carry: %s", (_, articulation) => {
    const { ws, rotor } = solved(articulation);
    const { surplus, hingeOffset } = flapStiffness(articulation, tipSpeed / model.radius);
    const inertia = (air.density * section.liftSlope * 0.05) / lockNumber;
    const scale = air.density * Math.PI * tipSpeed ** 2;
    const perAngle = ((model.bladeCount / 2) * inertia * surplus * tipSpeed ** 2) / scale;
    const loads = rotorLoading(ws, ws.state);
    const lift = (along: (azimuth: number) => number) => loads.reduce((sum, load) => sum + load.thrust * along(load.azimuth), 0);
    expect(rotor.hubPitchMoment).toBeCloseTo(perAngle * rotor.flapLongitudinal - hingeOffset * lift(Math.cos), 9);
    expect(rotor.hubRollMoment).toBeCloseTo(perAngle * rotor.flapLateral - hingeOffset * lift(Math.sin), 9);
    if (surplus > 0) expect(Math.abs(rotor.hubPitchMoment)).toBeGreaterThan(1e-7);
  });

  it("of a teeter follows the swashplate, turned by the angle of coupling", () => {
    const { rotor } = solved({ kind: "teetering" });
    expect(rotor.flapLongitudinal).toBeCloseTo(cyclic.sine, 9);
    expect(rotor.flapLateral).toBeCloseTo(-cyclic.cosine, 9);
    expect(rotor.hubPitchMoment).toBeCloseTo(0, 9);
    const coupled = solved({ kind: "teetering", pitchFlapCoupling: 1 }).rotor;
    expect(Math.hypot(coupled.flapLongitudinal, coupled.flapLateral)).toBeCloseTo(Math.hypot(cyclic.sine, cyclic.cosine) / Math.SQRT2, 9);
  });

  it("of rigid blades is none, and of a very stiff flexure nearly none, with the same hub moments", () => {
    const rigid = solved({ kind: "rigid" }).rotor;
    const stiff = solved({ kind: "hingeless", lockNumber, flapFrequency: 12 }).rotor;
    expect(rigid.flapLongitudinal).toBe(0);
    expect(Math.abs(stiff.flapLongitudinal)).toBeLessThan(1e-3);
    expect(stiff.hubPitchMoment / rigid.hubPitchMoment).toBeCloseTo(1, 1);
    expect(stiff.hubRollMoment / rigid.hubRollMoment).toBeCloseTo(1, 1);
  });
});

describe("the flap frequency", () => {
  it("is that of an even blade on a shifted hinge: 1 + e S/I, by integrals over the blade, plus the spring's", () => {
    const [e, steps] = [0.08, 20_000];
    const arms = Array.from({ length: steps }, (_, i) => ((i + 0.5) / steps) * (1 - e));
    const moment = arms.reduce((sum, arm) => sum + arm, 0);
    const inertia = arms.reduce((sum, arm) => sum + arm * arm, 0);
    const hinge = { kind: "hinged", lockNumber, hingeOffset: e } as const;
    expect(flapStiffness(hinge, 100).surplus).toBeCloseTo((e * moment) / inertia, 6);
    expect(flapStiffness({ ...hinge, restFrequency: 30 }, 100).surplus).toBeCloseTo((e * moment) / inertia + 0.09, 6);
    expect(flapStiffness({ kind: "hingeless", lockNumber, flapFrequency: 1.1 }, 100).surplus).toBeCloseTo(0.21, 12);
  });
});

describe("coning", () => {
  it("is the mean flap moment over centrifugal force and spring, resting at the precone", () => {
    const articulation: Articulation = { kind: "hinged", lockNumber, hingeOffset: 0.05, restFrequency: 40 };
    const { ws, rotor } = solved(articulation);
    const { surplus, spring } = flapStiffness(articulation, tipSpeed / model.radius);
    const about = rotorLoading(ws, ws.state).reduce((sum, load) => sum + load.thrust * (load.radiusFraction - 0.05), 0);
    const perMoment = lockNumber / (section.liftSlope * ws.mesh.solidity);
    expect(rotor.coning * (1 + surplus)).toBeCloseTo(spring * model.precone + perMoment * about, 9);
  });
});

describe("in forward flight", () => {
  it.each(held)("solves, and a stiffer blade carries more to the hub: %s", (_, articulation) => {
    for (const airspeed of [10, 30, 50]) {
      const point = { ...hover, airspeed, angle: { ...hover.angle, value: -0.05 }, collective: 0.1 };
      const { rotor } = solved(articulation, point);
      expect(rotor.sweeps).toBeLessThan(25);
      if (flapStiffness(articulation, tipSpeed).surplus > 0) {
        const free = solved({ kind: "hinged", lockNumber }, point).rotor;
        expect(Math.hypot(rotor.hubPitchMoment, rotor.hubRollMoment)).toBeGreaterThan(Math.hypot(free.hubPitchMoment, free.hubRollMoment));
      }
    }
  });
});
