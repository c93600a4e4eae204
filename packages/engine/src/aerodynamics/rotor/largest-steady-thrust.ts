import { type SolvedRotor, solveRotorInflowAndFlap, type UnsolvedRotor } from "./inflow-and-flap.ts";
import { InflowTrail } from "./inflow-trail.ts";
import type { RotorPoint } from "./rotor-point.ts";
import type { RotorWorkspace } from "./rotor-workspace.ts";

/** Flow and rotor speed at which the largest thrust is asked for. */
export type ThrustLimitCondition = Omit<RotorPoint, "collective">;

export type LargestThrust =
  | { readonly kind: "found"; readonly ct: number; readonly collective: number; readonly rotor: SolvedRotor }
  /** No first maximum: `reason` says whether none lies below 40 degrees or a point could not be solved. */
  | { readonly kind: "not-found"; readonly reason: string };

const degree = Math.PI / 180;
const lowestCollective = -12 * degree;
const highestCollective = 40 * degree;
const collectiveStep = 1.5 * degree;
/** Collective is known so well at the end of the search [rad]. */
const collectiveTolerance = 1e-4;
/** Thrust coefficients of one state, solved from two sides, differ by less [1]. */
const sameThrust = 1e-9;
const golden = (Math.sqrt(5) - 1) / 2;

/**
 * The first maximum of thrust over collective, coming from below: beyond it the rotor is stalled.
 *
 * Marches up in steps of 1.5 degrees and closes in by golden section, so a stalled branch is never returned. Each state starts from the
 * one before; the one that is returned is solved once more from nothing, and all of them are where it then is another.
 *
 * @param from a collective below which the first maximum is known not to lie [rad]
 * @derivation search over `solveRotorInflowAndFlap`
 */
export function largestSteadyThrust(ws: RotorWorkspace, condition: ThrustLimitCondition, from = lowestCollective): LargestThrust {
  const trail = new InflowTrail(ws, (collective) => ({ ...condition, collective }));
  const quick = largestOf((collective) => trail.at(collective), from);
  const solve = (collective: number): SolvedRotor | UnsolvedRotor => solveRotorInflowAndFlap(ws, { ...condition, collective });
  if (quick.kind === "found") {
    const again = solve(quick.collective);
    if (again.kind === "solved" && Math.abs(again.ct - quick.ct) <= sameThrust) return { ...quick, ct: again.ct, rotor: again };
  }
  return largestOf(solve, from);
}

function largestOf(solve: SolveAt, from: number): LargestThrust {
  const march = marchOf(solve, { from, step: collectiveStep, enough: () => false });
  if (march.kind === "not-found") return march;
  const { before, after } = march;
  return refined(solve, before.collective, after.collective);
}

type SolveAt = (collective: number) => SolvedRotor | UnsolvedRotor;

interface MarchPoint {
  readonly collective: number;
  readonly rotor: SolvedRotor;
}

export interface UnstalledMarch {
  /** First collective [rad]. */
  readonly from: number;
  /** [rad]. */
  readonly step: number;
  enough(rotor: SolvedRotor): boolean;
}

/**
 * Marches collective up until thrust falls or `enough` says so; thrust rises strictly on the way.
 *
 * @derivation search over `solveRotorInflowAndFlap`
 */
export function unstalledMarch(trail: InflowTrail, asked: UnstalledMarch): MarchEnd {
  return marchOf((collective) => trail.at(collective), asked);
}

export type MarchEnd =
  | {
      readonly kind: "enough" | "passed";
      readonly before: MarchPoint;
      readonly after: MarchPoint;
      /** Largest C_T met on the way [1]. */
      readonly highest: number;
    }
  | { readonly kind: "not-found"; readonly reason: string };

function marchOf(solve: SolveAt, { from, step, enough }: UnstalledMarch): MarchEnd {
  let earlier: MarchPoint | undefined;
  let last: MarchPoint | undefined;
  let unsolved = false;
  for (let collective = from; collective <= highestCollective; collective += step) {
    const rotor = solve(collective);
    if (rotor.kind === "not-converged") {
      // Low down, before any solved point, a gap is skipped; on the way up it ends the search.
      if (last) unsolved = true;
      if (unsolved) break;
      continue;
    }
    const here = { collective, rotor };
    if (enough(rotor)) return { kind: "enough", before: last ?? here, after: here, highest: rotor.ct };
    if (last && rotor.ct < last.rotor.ct && rotor.ct > 0)
      return { kind: "passed", before: earlier ?? last, after: here, highest: last.rotor.ct };
    earlier = last;
    last = here;
  }
  return {
    kind: "not-found",
    reason: unsolved
      ? "inflow and flapping could not be solved on the way up to the largest thrust"
      : `thrust still rises with collective at ${Math.round(highestCollective / degree)} degrees`,
  };
}

function refined(solve: SolveAt, from: number, to: number): LargestThrust {
  const at = (collective: number): MarchPoint | undefined => {
    const rotor = solve(collective);
    return rotor.kind === "solved" ? { collective, rotor } : undefined;
  };
  let low = from;
  let high = to;
  let left = at(high - golden * (high - low));
  let right = at(low + golden * (high - low));
  let best: MarchPoint | undefined;
  const better = (one: MarchPoint | undefined): void => {
    if (one && (!best || one.rotor.ct > best.rotor.ct)) best = one;
  };
  while (high - low > collectiveTolerance) {
    better(left);
    better(right);
    // An unsolved right point counts as beyond stall.
    if (left && (!right || left.rotor.ct >= right.rotor.ct)) {
      high = low + golden * (high - low);
      right = left;
      left = at(high - golden * (high - low));
    } else {
      low = high - golden * (high - low);
      left = right;
      right = at(low + golden * (high - low));
    }
  }
  if (!best) return { kind: "not-found", reason: "inflow and flapping could not be solved near the largest thrust" };
  return { kind: "found", ct: best.rotor.ct, ...best };
}
