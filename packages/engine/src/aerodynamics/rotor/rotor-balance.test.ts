import { describe, expect, it } from "vitest";
import { atmosphereAt } from "../../environment/atmosphere/index.ts";
import { autorotation } from "./autorotation.ts";
import { collectiveForThrust } from "./collective-for-thrust.ts";
import { type SolvedRotor, solveRotorInflowAndFlap } from "./inflow-and-flap.ts";
import { largestSteadyThrust } from "./largest-steady-thrust.ts";
import { rotorLoading } from "./rotor-loading.ts";
import type { RotorModel } from "./rotor-model.ts";
import type { RotorPoint } from "./rotor-point.ts";
import { createRotorWorkspace } from "./rotor-workspace.ts";

const model: RotorModel = {
  radius: 1.15,
  bladeCount: 2,
  rootCutout: 0.15,
  stations: [
    { radiusFraction: 0, chord: 0.09, twist: 0.04 },
    { radiusFraction: 1, chord: 0.09, twist: -0.012 },
  ],
  precone: 0.035,
  articulation: { kind: "teetering" },
  section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: -0.005, cd2: 0.4, stallAngle: 0.22 },
  tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 0.97 },
  inducedPowerFactor: 1.12,
  inflow: "drees",
  radialFlow: "resultant",
  azimuths: 24,
  radialElements: 16,
};
const annular = { inflowBalance: "annular", tipLoss: { kind: "prandtl" }, inducedPowerFactor: 1 } as const;
const rotors: readonly (readonly [string, Partial<RotorModel>])[] = [
  ["mean inflow", {}],
  ["annular inflow", annular],
  ["annular inflow with swirl and root loss", { ...annular, swirl: true, rootLoss: true }],
  ["annular inflow, hinges off the shaft", { ...annular, articulation: { kind: "hinged", lockNumber: 6, hingeOffset: 0.05 } }],
];
const air = atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 });
const points: readonly RotorPoint[] = [
  { airspeed: 0, angle: { kind: "disc", value: 0 }, tipSpeed: 85, collective: 0.12, air },
  { airspeed: 4, angle: { kind: "disc", value: -Math.PI / 2 }, tipSpeed: 85, collective: 0.14, air },
  { airspeed: 20, angle: { kind: "disc", value: -0.08 }, tipSpeed: 80, collective: 0.1, air },
  { airspeed: 18, angle: { kind: "disc", value: 0.16 }, tipSpeed: 75, collective: 0.05, air },
  { airspeed: 11, angle: { kind: "disc", value: Math.PI / 2 }, tipSpeed: 80, collective: 0.04, air },
];

function solved(settings: Partial<RotorModel>, point: RotorPoint): SolvedRotor {
  const rotor = solveRotorInflowAndFlap(createRotorWorkspace({ ...model, ...settings }), point);
  if (rotor.kind !== "solved") throw new Error(JSON.stringify(rotor));
  return rotor;
}

describe.each(rotors)("a rotor with %s", (_, settings) => {
  it("needs at the shaft what induced velocity, drag and climb take and its force aft gives", () => {
    const ws = createRotorWorkspace({ ...model, ...settings });
    for (const point of points) {
      const rotor = solveRotorInflowAndFlap(ws, point);
      if (rotor.kind !== "solved") throw new Error(JSON.stringify(rotor));
      const profile = rotorLoading(ws, ws.state).reduce((sum, load) => sum + load.profilePower, 0);
      expect(rotor.cq).toBeCloseTo(rotor.cpInduced + profile + rotor.lambdaC * rotor.ct - rotor.mu * rotor.ch, 8);
      expect(profile).toBeGreaterThan(0);
    }
  });

  it("has the same coefficients at another size, with tip speed, density and viscosity of equal Mach and Reynolds number", () => {
    const scale = 3.7;
    const section = { kind: "built-in", name: "naca-0012", dragIncrement: 0 } as const;
    const larger = {
      ...settings,
      section,
      radius: scale * model.radius,
      stations: model.stations.map((station) => ({ ...station, chord: scale * station.chord })),
    };
    for (const point of points) {
      const speed = 1.3;
      const thinner = {
        density: 0.4 * air.density,
        speedOfSound: speed * air.speedOfSound,
        dynamicViscosity: 0.4 * scale * speed * air.dynamicViscosity,
      };
      const small = solved({ ...settings, section }, point);
      const large = solved(larger, { ...point, airspeed: speed * point.airspeed, tipSpeed: speed * point.tipSpeed, air: thinner });
      for (const name of ["ct", "cq", "ch", "cy", "lambdaI", "flapLongitudinal", "hubPitchMoment"] as const) {
        expect(large[name]).toBeCloseTo(small[name], 8);
      }
    }
  });

  it("makes in its mirror the same thrust: pushed up and pulled down, with pitch and stream reversed", () => {
    const symmetric = {
      ...settings,
      precone: 0,
      section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: 0, cd2: 0.4, stallAngle: 0.22 },
      stations: [{ radiusFraction: 0, chord: 0.09, twist: 0 }],
    } as const;
    for (const point of points) {
      const up = solved(symmetric, point);
      const down = solved(symmetric, { ...point, collective: -point.collective, angle: { kind: "disc", value: -point.angle.value } });
      expect(down.ct).toBeCloseTo(-up.ct, 8);
      expect(down.flapLateral).toBeCloseTo(-up.flapLateral, 7);
      for (const name of ["cq", "ch", "cpInduced"] as const) expect(down[name]).toBeCloseTo(up[name], 8);
    }
  });

  it("needs the same power on a finer mesh within half a per cent, and errs less by every refinement", () => {
    const meshes = [
      [12, 8],
      [24, 16],
      [36, 24],
      [48, 32],
      [72, 48],
    ] as const;
    const cases = [
      ["hover", (on: Partial<RotorModel>) => powerAtThrust({ ...settings, ...on }, { ...(points[0] as RotorPoint) }, 0.0046)],
      ["driven", (on: Partial<RotorModel>) => powerAtThrust({ ...settings, ...on }, { ...(points[2] as RotorPoint) }, 0.004)],
      ["autorotating", (on: Partial<RotorModel>) => dragPower({ ...settings, ...on })],
    ] as const;
    for (const [name, power] of cases) {
      const values = meshes.map(([azimuths, radialElements]) => power({ azimuths, radialElements }));
      const [coarsest = 0, usual = 0, fine = 0, finer = 0, limit = 1] = values;
      expect(Math.abs(usual / fine - 1), `${name}: 24 × 16 against 36 × 24`).toBeLessThan(0.005);
      const error = (value: number) => Math.abs(value / limit - 1);
      expect(error(usual), name).toBeLessThan(0.003);
      // Order of convergence over halved steps, 12 × 8, 24 × 16, 48 × 32, where errors are above rounding of the limit.
      const order = Math.log2(error(coarsest) / Math.max(error(finer), 2e-4)) / 2;
      expect(order, `${name}: order of convergence`).toBeGreaterThan(0.9);
    }
  });

  it("is marched to the first maximum of thrust, and asked for a thrust never answers from beyond it", () => {
    const ws = createRotorWorkspace({ ...model, ...settings });
    for (const airspeed of [0, 15, 30]) {
      const condition = { airspeed, angle: { kind: "disc", value: -0.03 }, tipSpeed: 85, air } as const;
      const limit = largestSteadyThrust(ws, condition);
      if (limit.kind !== "found") throw new Error(limit.reason);
      const beyond = solveRotorInflowAndFlap(ws, { ...condition, collective: limit.collective + 0.02 });
      if (beyond.kind === "solved") expect(beyond.ct).toBeLessThan(limit.ct);
      for (const share of [0.5, 0.9, 0.99]) {
        const target = { value: share * limit.ct, tolerance: 1e-9, of: (rotor: SolvedRotor) => rotor.ct, exactLimit: true };
        const found = collectiveForThrust(ws, condition, target);
        if (found.kind !== "found") throw new Error(found.kind);
        expect(found.collective).toBeLessThan(limit.collective);
      }
      const tooMuch = { value: 1.02 * limit.ct, tolerance: 1e-9, of: (rotor: SolvedRotor) => rotor.ct, exactLimit: true };
      expect(collectiveForThrust(ws, condition, tooMuch).kind).toBe("unavailable");
    }
  });
});

/** Torque at a thrust coefficient. */
function powerAtThrust(settings: Partial<RotorModel>, point: RotorPoint, ct: number): number {
  const ws = createRotorWorkspace({ ...model, ...settings });
  const target = { value: ct, tolerance: 1e-9, of: (rotor: SolvedRotor) => rotor.ct, exactLimit: false };
  const found = collectiveForThrust(ws, point, target);
  if (found.kind !== "found") throw new Error(found.kind);
  return found.rotor.cq;
}

/** Drag times speed of an autorotating rotor over its thrust: what something else has to pull. */
function dragPower(settings: Partial<RotorModel>): number {
  const ws = createRotorWorkspace({ ...model, ...settings });
  const state = autorotation(ws, { airspeed: 18, tipSpeed: 75, collective: 0.05, air });
  if (state.kind !== "solved") throw new Error(state.reason);
  const { ct, ch } = state.rotor;
  return (ct * Math.sin(state.discAngle) + ch * Math.cos(state.discAngle)) / ct;
}
