import type { TrimLimit } from "../trim-problem.ts";
import type { FullPoint } from "./full-conditions.ts";
import type { FullEvaluation } from "./full-problem.ts";

/** A flight in balance of all six components. */
export interface FullTrimmed {
  readonly kind: "trimmed";
  readonly point: FullPoint;
  readonly evaluation: FullEvaluation;
  /** Speeds [m/s], airspeed along the path; electric power [W]. */
  readonly flown: {
    readonly mode: FullPoint["mode"];
    readonly airspeed: number;
    readonly forwardSpeed: number;
    readonly climbRate: number;
    readonly electricPower: number;
  };
  /** Largest steady thrust over thrust per rotor, searched [1]. */
  readonly stallMargins: readonly number[];
  readonly limits: readonly { readonly limit: TrimLimit; readonly share: number }[];
  readonly start: FullStart;
  readonly iterations: number;
  /** A scheduled rotor speed lies at an end of its permitted range. */
  readonly tipSpeedHeld: boolean;
}

/** What a limit would have to be for the flight to balance, everything else as it is [SI]. */
export interface LimitNeeded {
  readonly allowed: number;
  readonly needed: number;
  readonly quantity: "angle" | "speed" | "force" | "torque" | "power" | "current" | "voltage" | "dimensionless";
}

/** No balance within the limits: what blocks, and how much is missing in its own scaled measure. */
export interface FullNotTrimmable {
  readonly kind: "no-equilibrium";
  readonly point: FullPoint;
  readonly limit: string;
  readonly family: TrimLimit["family"];
  readonly violation: number;
  /** Where easing this limit alone would do; only looked for at a single point. */
  readonly needed?: LimitNeeded;
  readonly start: FullStart;
}

/** The solver ended without an answer and without a contradiction: nothing is known of this flight. */
export interface FullUnresolved {
  readonly kind: "not-resolved";
  readonly limit: string;
  readonly family: TrimLimit["family"];
  readonly point: FullPoint;
  readonly violation: number;
  readonly start: FullStart;
}

export type FullOutcome = FullTrimmed | FullNotTrimmable | FullUnresolved;

/** A vector of unknowns in the solver's units, and the curvature that belongs to it. */
export interface FullStart {
  readonly x: Float64Array;
  readonly hessian?: Float64Array;
}

/** What a trim makes least: electric power, or sink rate in a glide. @derivation not a formula */
export function fullObjective({ point, evaluation }: FullTrimmed): number {
  return point.mode === "glide" ? -evaluation.climbRate : evaluation.loads.electricPower;
}
