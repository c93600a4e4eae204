import type { FullPoint } from "../equilibrium/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import type { EnvelopePoint } from "./envelope-line.ts";
import { type EnvelopeTrimmer, levelAt, type Stop, stopOf } from "./envelope-trimmer.ts";

/** Fastest steady climb at one speed, and what stops a faster one. */
export interface BestClimb extends Stop {
  readonly airspeed: number;
  readonly mode: PoweredMode;
  /** [m/s] */
  readonly climbRate: number;
}

export const climbLimitName = "climb limit";
/** Halvings between level flight and the file's limit: to less than a hundredth of it. */
const halvings = 7;
/** The first refusals are asked from every way of flying: the way that climbs need not be that of level flight. */
const thoroughHalvings = 2;

/**
 * Fastest steady climb at a speed at which level flight is known, at most the file's climb limit.
 *
 * @param limit the file's [m/s]
 * @derivation halving between a rate that flies and one that does not
 */
export function bestClimb(
  trimmer: EnvelopeTrimmer,
  mode: PoweredMode,
  { airspeed, verdict }: EnvelopePoint,
  limit: number,
): BestClimb | undefined {
  if (verdict.kind !== "flies") return undefined;
  const at = (climbRate: number): FullPoint => ({ ...levelAt(mode, airspeed), climbRate });
  let flown = verdict;
  let stop: Stop = { limit: climbLimitName, family: "rule" };
  const attempt = (climbRate: number, isThorough: boolean): boolean => {
    const warm = trimmer.verdict(trimmer.warm(at(climbRate), flown.trimmed.start));
    const found = warm.kind === "flies" || !isThorough ? warm : trimmer.verdict(trimmer.cold(at(climbRate)));
    if (found.kind === "flies") {
      flown = found;
      return true;
    }
    stop = stopOf(found, flown);
    return false;
  };
  if (attempt(limit, true)) return { airspeed, mode, climbRate: limit, limit: climbLimitName, family: "rule" };
  let low = 0;
  let high = limit;
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    if (attempt(middle, i < thoroughHalvings)) low = middle;
    else high = middle;
  }
  return { airspeed, mode, climbRate: low, ...stop };
}
