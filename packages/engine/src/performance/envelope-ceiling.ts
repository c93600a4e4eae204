import type { FullPoint } from "../equilibrium/index.ts";
import { type EnvelopeTrimmer, type Stop, stopOf, type Verdict } from "./envelope-trimmer.ts";

/** Highest altitude of one way of flying. */
export interface Ceiling {
  /** Above mean sea level [m]; null where it does not fly at the lowest altitude looked at. */
  readonly altitude: number | null;
  /** What ends it; absent where it still flies at the highest altitude looked at. */
  readonly stop?: Stop;
}

/** Range of altitudes [m] and where in it to begin. */
export interface CeilingSearch {
  readonly lowest: number;
  readonly highest: number;
  /** First step up, doubled as long as it flies. */
  readonly step: number;
  readonly tolerance: number;
}

/**
 * Highest altitude at which a flight is possible, found upward from the lowest in doubling steps, then by halving. A refusal that ends it
 * is asked from every way of flying.
 *
 * @param at how to fly at an altitude, best first
 * @derivation halving
 */
export function ceiling(
  { lowest, highest, step, tolerance }: CeilingSearch,
  at: (altitude: number) => { readonly trimmer: EnvelopeTrimmer; readonly points: readonly FullPoint[] },
): Ceiling {
  let flown: Verdict = { kind: "unknown" };
  const attempt = (altitude: number, thorough: boolean): Verdict => {
    const { trimmer, points } = at(altitude);
    let refusal: Verdict = { kind: "unknown" };
    for (const point of points) {
      const warm = flown.kind === "flies" ? trimmer.verdict(trimmer.warm(point, flown.trimmed.start)) : undefined;
      const verdict = warm?.kind === "flies" || (warm && !thorough) ? warm : trimmer.verdict(trimmer.cold(point));
      if (verdict.kind === "flies") {
        flown = verdict;
        return verdict;
      }
      if (refusal.kind === "unknown") refusal = verdict;
    }
    return refusal;
  };
  const first = attempt(lowest, true);
  if (first.kind !== "flies") return { altitude: null, stop: stopOf(first, flown) };
  let low = lowest;
  let high = Math.min(highest, lowest + step);
  let refused = attempt(high, false);
  let stride = step;
  while (refused.kind === "flies") {
    if (high >= highest) return { altitude: highest };
    low = high;
    stride *= 2;
    high = Math.min(highest, high + stride);
    refused = attempt(high, false);
  }
  while (high - low > tolerance) {
    const middle = (low + high) / 2;
    const verdict = attempt(middle, false);
    if (verdict.kind === "flies") low = middle;
    else {
      high = middle;
      refused = verdict;
    }
  }
  return { altitude: low, stop: stopOf(refused, flown) };
}
