import type { Air } from "../../environment/atmosphere/index.ts";
import { solveAnnularInflow } from "./annular-inflow.ts";
import { type RotorSweepState, type RotorWorkspace, ringLoadWidth } from "./rotor-workspace.ts";

/** A rotor or propeller with blades that do not flap, in a stream. */
export interface AnnularPoint {
  /** V, 0 or more [m/s]. */
  readonly airspeed: number;
  /** Angle of the disc to the stream, positive tilted back; −π/2: the stream comes along the shaft against the thrust (climb, propeller) [rad]. */
  readonly discAngle: number;
  /** Ω; 0 stopped, negative turned backwards [rad/s]. */
  readonly rotationRate: number;
  /** Pitch at 0.75 R [rad]. */
  readonly collective: number;
  readonly air: Air;
}

/** What one ring does. */
export interface RingLoad {
  readonly radiusFraction: number;
  /** Δx [1]. */
  readonly width: number;
  /** Down through the disc [m/s]. */
  readonly inducedVelocity: number;
  /** Around the shaft in the sense of positive rotation [m/s]. */
  readonly swirlVelocity: number;
  /** [N]. */
  readonly thrust: number;
  /** [N m]. */
  readonly torque: number;
  /** Angle of attack, Reynolds and Mach number of the mean flow of the ring [rad], [1], [1]. */
  readonly angleOfAttack: number;
  readonly reynolds: number;
  readonly mach: number;
}

/** Forces and moments on the shaft. Axes: aft, towards the advancing side, up along the shaft; signs as in the sweep. */
export interface AnnularLoads {
  readonly kind: "solved";
  /** Along the shaft, up [N]. */
  readonly thrust: number;
  /** That the shaft must give, in the sense of positive rotation [N m]. */
  readonly torque: number;
  /** In the plane, aft [N]. */
  readonly aftForce: number;
  /** In the plane, towards the side where a blade turning forwards advances [N]. */
  readonly sideForce: number;
  /** On the hub, front up [N m]. */
  readonly pitchMoment: number;
  /** On the hub, the advancing side down [N m]. */
  readonly rollMoment: number;
  /** Power of the induced velocities [W]. */
  readonly inducedPower: number;
  /** Mean over the bladed area [m/s]. */
  readonly inducedVelocity: number;
  readonly rings: readonly RingLoad[];
}

export type AnnularOutcome =
  | AnnularLoads
  /** One sentence. */
  | { readonly kind: "not-converged"; readonly reason: string };

/**
 * Loads of a rotor with rigid blades and annular inflow at any rotation rate, stopped and backwards included.
 *
 * @param ws of a model with `inflowBalance: "annular"`
 * @derivation `solveAnnularInflow` with velocities over the speed of the tip in the stream, √((ΩR)² + V²)
 */
export function annularLoads(ws: RotorWorkspace, point: AnnularPoint): AnnularOutcome {
  const { model } = ws;
  const { airspeed, discAngle, rotationRate, air } = point;
  const tipSpeed = rotationRate * model.radius;
  const reference = Math.hypot(tipSpeed, airspeed);
  if (reference === 0) return atRest(ws);
  const along = (airspeed * Math.cos(discAngle)) / reference;
  const state: RotorSweepState = {
    mu: Math.abs(along) < 1e-9 ? 0 : along,
    lambdaC: (-airspeed * Math.sin(discAngle)) / reference,
    lambdaI: 0,
    theta0: point.collective,
    theta1c: 0,
    theta1s: 0,
    coning: model.precone,
    tipSpeed: reference,
    speedOfSound: air.speedOfSound,
    kinematicViscosity: air.dynamicViscosity / air.density,
  };
  const spin = tipSpeed / reference;
  const inflow = solveAnnularInflow(ws, state, spin);
  if (inflow.kind === "unbalanced") {
    const reason = `no induced velocity balances momentum and thrust at ${(100 * inflow.radiusFraction).toFixed(0)} % of the radius`;
    return { kind: "not-converged", reason };
  }
  const force = air.density * Math.PI * model.radius ** 2 * reference ** 2;
  const moment = force * model.radius;
  const { out } = ws;
  return {
    kind: "solved",
    thrust: out.ct * force,
    torque: out.cq * moment,
    aftForce: out.ch * force,
    sideForce: out.cy * force,
    pitchMoment: -out.momentCos * moment,
    rollMoment: -out.momentSin * moment,
    inducedPower: out.cpInduced * force * reference,
    inducedVelocity: inflow.lambdaI * reference,
    rings: ringLoads(ws, state, spin, force),
  };
}

function ringLoads(ws: RotorWorkspace, state: RotorSweepState, spin: number, force: number): readonly RingLoad[] {
  const { mesh, rings, model } = ws;
  const at = (values: Float64Array, index: number): number => values[index] ?? 0;
  return Array.from(mesh.radiusFraction, (x, i) => {
    const swirl = at(rings.swirl, i);
    const along = spin * x - swirl;
    const through = state.lambdaC + at(rings.induced, i);
    const speed = Math.hypot(along, through) * state.tipSpeed;
    const angle = state.theta0 + at(mesh.twist, i) - Math.atan2(through, along);
    return {
      radiusFraction: x,
      width: at(mesh.width, i),
      inducedVelocity: at(rings.induced, i) * state.tipSpeed,
      swirlVelocity: swirl * state.tipSpeed,
      thrust: at(rings.loads, i * ringLoadWidth) * force,
      torque: at(rings.loads, i * ringLoadWidth + 1) * force * model.radius,
      angleOfAttack: Math.atan2(Math.sin(angle), Math.cos(angle)),
      reynolds: (speed * at(mesh.chord, i)) / state.kinematicViscosity,
      mach: speed / state.speedOfSound,
    };
  });
}

/** Neither turning nor in a stream: nothing acts. */
function atRest(ws: RotorWorkspace): AnnularLoads {
  const rings = Array.from(ws.mesh.radiusFraction, (radiusFraction, i) => ({
    radiusFraction,
    width: ws.mesh.width[i] ?? 0,
    inducedVelocity: 0,
    swirlVelocity: 0,
    thrust: 0,
    torque: 0,
    angleOfAttack: 0,
    reynolds: 0,
    mach: 0,
  }));
  return {
    kind: "solved",
    thrust: 0,
    torque: 0,
    aftForce: 0,
    sideForce: 0,
    pitchMoment: 0,
    rollMoment: 0,
    inducedPower: 0,
    inducedVelocity: 0,
    rings,
  };
}
