import { solveLinearInPlace } from "../numerics/index.ts";
import type { LinearMotion, LinearState } from "./linear-motion.ts";

/**
 * Derivatives of an aeroplane in stability axes (x along the steady flight path), forces over mass and moments over the inertia about their own
 * axis. Speeds along x, y, z are u, v, w [m/s], rates p, q, r [rad/s]; X, Y, Z are forces, L, M, N moments; `Dot` is per rate of change.
 */
export interface LongitudinalDerivatives {
  readonly xu: number;
  readonly xw: number;
  readonly zu: number;
  readonly zw: number;
  readonly zq: number;
  readonly zwDot: number;
  readonly mu: number;
  readonly mw: number;
  readonly mq: number;
  readonly mwDot: number;
}

export interface LateralDerivatives {
  readonly yv: number;
  readonly yp: number;
  readonly yr: number;
  readonly lv: number;
  readonly lp: number;
  readonly lr: number;
  readonly nv: number;
  readonly np: number;
  readonly nr: number;
  /** Product of inertia I_xz over I_x and over I_z [1]. */
  readonly productOverRoll: number;
  readonly productOverYaw: number;
}

export interface SteadyFlight {
  /** [m/s] */
  readonly airspeed: number;
  /** Steady pitch of the stability axes, the climb angle [rad]. */
  readonly pathAngle: number;
  /** [m/s²] */
  readonly gravity: number;
}

const longitudinalStates: readonly LinearState[] = [
  { id: "u", kind: "speed" },
  { id: "w", kind: "heave" },
  { id: "q", kind: "pitch-rate" },
  { id: "theta", kind: "pitch" },
];

const lateralStates: readonly LinearState[] = [
  { id: "v", kind: "sideslip" },
  { id: "p", kind: "roll-rate" },
  { id: "r", kind: "yaw-rate" },
  { id: "phi", kind: "roll" },
];

/**
 * Small longitudinal motion u, w, q, θ of an aeroplane of fixed controls.
 *
 * @source etkin-reid-1996, linear equations of motion in stability axes, chapter 4, unchecked
 */
export function longitudinalMotion(d: LongitudinalDerivatives, { airspeed, pathAngle, gravity }: SteadyFlight): LinearMotion {
  const mass = [1, 0, 0, 0, 0, 1 - d.zwDot, 0, 0, 0, -d.mwDot, 1, 0, 0, 0, 0, 1];
  const right = [
    [d.xu, d.xw, 0, -gravity * Math.cos(pathAngle)],
    [d.zu, d.zw, d.zq + airspeed, -gravity * Math.sin(pathAngle)],
    [d.mu, d.mw, d.mq, 0],
    [0, 0, 1, 0],
  ];
  return { states: longitudinalStates, matrix: resolved(mass, right) };
}

/** Small lateral motion v, p, r, φ of an aeroplane of fixed controls, products of inertia kept. Same source. */
export function lateralMotion(d: LateralDerivatives, { airspeed, pathAngle, gravity }: SteadyFlight): LinearMotion {
  const mass = [1, 0, 0, 0, 0, 1, -d.productOverRoll, 0, 0, -d.productOverYaw, 1, 0, 0, 0, 0, 1];
  const right = [
    [d.yv, d.yp, d.yr - airspeed, gravity * Math.cos(pathAngle)],
    [d.lv, d.lp, d.lr, 0],
    [d.nv, d.np, d.nr, 0],
    [0, 1, Math.tan(pathAngle), 0],
  ];
  return { states: lateralStates, matrix: resolved(mass, right) };
}

/** Inverse of `mass` times `right`, column by column. */
function resolved(mass: readonly number[], right: readonly (readonly number[])[]): Float64Array {
  const n = right.length;
  const matrix = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const column = Float64Array.from(right, (row) => row[j] as number);
    if (!solveLinearInPlace(Float64Array.from(mass), column, n)) throw new RangeError("the matrix of inertia has no inverse");
    for (let i = 0; i < n; i++) matrix[i * n + j] = column[i] as number;
  }
  return matrix;
}
