import type { FullOutcome } from "../equilibrium/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import { followedLine } from "./envelope-continuation.ts";
import { type EnvelopeTrimmer, levelAt, type Stop, stopOf, type Verdict } from "./envelope-trimmer.ts";

/** One speed of a line: flown within every limit, or what forbids it. */
export interface EnvelopePoint {
  readonly airspeed: number;
  readonly verdict: Verdict;
}

/** A speed at which level flight begins or ends. */
export interface EnvelopeEdge extends Stop {
  readonly side: "slowest" | "fastest";
  readonly airspeed: number;
}

export interface EnvelopeLine {
  readonly points: readonly EnvelopePoint[];
  readonly edges: readonly EnvelopeEdge[];
}

/** A border between two speeds is halved to within this [m/s]. */
export const borderResolution = 0.125;

/**
 * Level flight over speeds in one rotor mode. From a speed that flies the line is followed both ways, each speed from its neighbour, from
 * every way of flying where that fails. Beyond a border speeds carry its limit; some of them and the last are looked at again.
 *
 * @param speeds ascending [m/s]
 * @param resolution of a border [m/s]
 * @derivation not a formula
 */
export function envelopeLine(
  trimmer: EnvelopeTrimmer,
  mode: PoweredMode,
  speeds: readonly number[],
  resolution = borderResolution,
): EnvelopeLine {
  const outcomes = followedLine(trimmer, mode, speeds);
  const points = speeds.map((airspeed, i): EnvelopePoint => ({ airspeed, verdict: trimmer.verdict(outcomes[i] as FullOutcome) }));
  return { points, edges: edgesOf(trimmer, mode, points, resolution) };
}

/** Where flight begins and ends along a line, found between a speed that flies and its neighbour that does not. */
function edgesOf(trimmer: EnvelopeTrimmer, mode: PoweredMode, points: readonly EnvelopePoint[], resolution: number): EnvelopeEdge[] {
  const border = borderBetween(trimmer, mode, resolution);
  const edges: EnvelopeEdge[] = [];
  points.forEach((point, i) => {
    if (point.verdict.kind !== "flies") return;
    const below = points[i - 1];
    const above = points[i + 1];
    if (below && below.verdict.kind !== "flies") edges.push({ side: "slowest", ...border(point, below) });
    if (above && above.verdict.kind !== "flies") edges.push({ side: "fastest", ...border(point, above) });
  });
  return edges;
}

/** Halves between a speed that flies and one that does not. */
function borderBetween(trimmer: EnvelopeTrimmer, mode: PoweredMode, resolution: number) {
  return (inside: EnvelopePoint, outside: EnvelopePoint): Omit<EnvelopeEdge, "side"> => {
    let flies = inside;
    let stopped = outside;
    while (flies.verdict.kind === "flies" && Math.abs(stopped.airspeed - flies.airspeed) > resolution * (1 + 1e-9)) {
      const airspeed = (flies.airspeed + stopped.airspeed) / 2;
      const verdict = trimmer.verdict(trimmer.warm(levelAt(mode, airspeed), flies.verdict.trimmed.start));
      if (verdict.kind === "flies") flies = { airspeed, verdict };
      else stopped = { airspeed, verdict };
    }
    return { airspeed: (flies.airspeed + stopped.airspeed) / 2, ...stopOf(stopped.verdict, flies.verdict) };
  };
}
