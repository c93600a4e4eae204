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
 * Highest altitude at which a flight is possible, found upward from the lowest in doubling steps, then by halving. The refusal that ends
 * it is asked from every way of flying.
 *
 * @param at how to fly at an altitude, best first, and beside what was flown last
 * @derivation halving
 */
export function ceiling(
  { lowest, highest, step, tolerance }: CeilingSearch,
  at: (altitude: number, flown: FullPoint | undefined) => { readonly trimmer: EnvelopeTrimmer; readonly points: readonly FullPoint[] },
): Ceiling {
  let flown: Verdict = { kind: "unknown" };
  const attempt = (altitude: number, thorough: boolean): Verdict => {
    const { trimmer, points } = at(altitude, flown.kind === "flies" ? flown.trimmed.point : undefined);
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
  for (;;) {
    const bracket = bracketAbove(low, { highest, step, tolerance }, (altitude) => attempt(altitude, false));
    if (bracket === undefined) return { altitude: highest };
    // What ends it is asked once more from every way of flying.
    const verdict = attempt(bracket.high, true);
    if (verdict.kind !== "flies") return { altitude: bracket.low, stop: stopOf(verdict, flown) };
    low = bracket.high;
  }
}

/** The last altitude that flies and the first that does not, to the tolerance; undefined where the highest flies. */
function bracketAbove(
  from: number,
  { highest, step, tolerance }: Omit<CeilingSearch, "lowest">,
  attempt: (altitude: number) => Verdict,
): { readonly low: number; readonly high: number } | undefined {
  let low = from;
  let high = from;
  for (let stride = step; ; stride *= 2) {
    if (high >= highest) return undefined;
    high = Math.min(highest, high + stride);
    if (attempt(high).kind !== "flies") break;
    low = high;
  }
  while (high - low > tolerance) {
    const middle = (low + high) / 2;
    if (attempt(middle).kind === "flies") low = middle;
    else high = middle;
  }
  return { low, high };
}
