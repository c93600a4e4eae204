import { type FullOutcome, type FullPoint, type FullTrimmed, type FullTrimmer, fullObjective } from "../equilibrium/full/index.ts";
import type { FlightMode } from "../equilibrium/index.ts";
import type { LineHooks, LinePoint } from "./speed-line.ts";

/** One speed of a line at the trim level `full`. */
export type FullLinePoint = LinePoint<FullTrimmed>;

/** What stays the same along a line: climb, side wind, turn, failed and stuck parts. */
export type LineFlight = Omit<FullPoint, "mode" | "airspeed">;

/** Level, the air from ahead. */
export const straightAndLevel: LineFlight = { climbRate: 0, sideslip: 0 };

const distinct = 0.005;
/** A point this much dearer than the mean of its neighbours is tried again [1]. */
const bulge = 0.002;
/** After a stretch that flies, so many refusals in a row are taken for its end. */
const refusalsToEnd = 3;

/**
 * Trims a mode over speeds by continuation from both ends: each point starts from its neighbour below, then from its neighbour
 * above; where the two ends lead to different optima both are kept. A point that neither reaches is tried from every way of flying.
 *
 * @param speeds ascending [m/s]
 * @throws what `hooks.cancelled` throws
 */
export function fullSpeedLine(
  trimmer: FullTrimmer,
  mode: FlightMode,
  speeds: readonly number[],
  hooks: LineHooks,
  flight: LineFlight = straightAndLevel,
): FullLinePoint[] {
  const at = (airspeed: number): FullPoint => ({ ...flight, mode, airspeed });
  const total = speeds.length * 2;
  const upward = upwardOutcomes(trimmer, speeds.map(at), hooks, total);
  const line: FullLinePoint[] = new Array(speeds.length);
  let above: FullTrimmed | undefined;
  for (let i = speeds.length - 1; i >= 0; i--) {
    hooks.cancelled();
    const airspeed = speeds[i] as number;
    const first = upward[i] as FullOutcome;
    // The way back starts afresh: from the end of the way up it would only be the same way again.
    const second = above
      ? trimmer.trimFrom(at(airspeed), [above.start], "table")
      : first.kind === "trimmed"
        ? trimmer.trim(at(airspeed), "table")
        : undefined;
    line[i] = better(airspeed, first, second);
    const kept = second?.kind === "trimmed" ? second : first;
    above = kept.kind === "trimmed" ? kept : undefined;
    hooks.progress(total - i, total);
  }
  repair(trimmer, at, line, hooks);
  return line.map((found) => searched(trimmer, found));
}

/** A first picture of a line: from below only, stall margins from the table. */
export function coarseFullSpeedLine(
  trimmer: FullTrimmer,
  mode: FlightMode,
  speeds: readonly number[],
  hooks: LineHooks,
  flight: LineFlight = straightAndLevel,
): FullLinePoint[] {
  const points = speeds.map((airspeed): FullPoint => ({ ...flight, mode, airspeed }));
  return upwardOutcomes(trimmer, points, hooks, points.length).map((outcome) => ({ airspeed: outcome.point.airspeed, outcome }));
}

function upwardOutcomes(trimmer: FullTrimmer, points: readonly FullPoint[], hooks: LineHooks, total: number): FullOutcome[] {
  const upward: FullOutcome[] = [];
  points.forEach((point, i) => {
    hooks.cancelled();
    upward.push(fromBelow(trimmer, point, upward));
    hooks.progress(i + 1, total);
  });
  return upward;
}

/** From the neighbour below where it flies, from every way of flying where that fails; beyond the end of a stretch only the nearest miss is followed. */
function fromBelow(trimmer: FullTrimmer, point: FullPoint, line: readonly FullOutcome[]): FullOutcome {
  const below = line[line.length - 1];
  const ended = line.length > refusalsToEnd && line.slice(-refusalsToEnd).every((outcome) => outcome.kind !== "trimmed");
  if (below && ended && line.some((outcome) => outcome.kind === "trimmed")) return trimmer.trimFrom(point, [below.start], "table");
  const warm = below?.kind === "trimmed" ? trimmer.trimFrom(point, [below.start], "table") : undefined;
  return warm?.kind === "trimmed" ? warm : trimmer.trim(point, "table");
}

/** Tries a point again from its neighbours where they show that something better exists. */
function repair(trimmer: FullTrimmer, at: (airspeed: number) => FullPoint, line: FullLinePoint[], hooks: LineHooks): void {
  line.forEach((point, i) => {
    const { outcome } = point;
    const neighbours = [line[i - 1]?.outcome, line[i + 1]?.outcome].flatMap((near) => (near?.kind === "trimmed" ? [near] : []));
    if (neighbours.length < 2) return;
    const mean = neighbours.reduce((sum, near) => sum + fullObjective(near), 0) / 2;
    if (outcome.kind === "trimmed" && fullObjective(outcome) <= mean + bulge * Math.abs(mean)) return;
    hooks.cancelled();
    const again = trimmer.trimFrom(
      at(point.airspeed),
      neighbours.map(({ start }) => start),
      "table",
    );
    // What is dearer here is only the neighbour's way followed: it is no second optimum of this speed.
    line[i] = { ...point, outcome: better(point.airspeed, outcome, again).outcome };
  });
}

/** The kept optimum with its stall margin searched. */
function searched(trimmer: FullTrimmer, found: FullLinePoint): FullLinePoint {
  const { outcome } = found;
  return outcome.kind === "trimmed" ? { ...found, outcome: trimmer.trimFrom(outcome.point, [outcome.start]) } : found;
}

function better(airspeed: number, first: FullLinePoint["outcome"], second: FullLinePoint["outcome"] | undefined): FullLinePoint {
  if (second?.kind !== "trimmed") return { airspeed, outcome: first };
  if (first.kind !== "trimmed") return { airspeed, outcome: second };
  const [keep, drop] = fullObjective(second) < fullObjective(first) * (1 - 1e-7) ? [second, first] : [first, second];
  return fullObjective(drop) > fullObjective(keep) * (1 + distinct)
    ? { airspeed, outcome: keep, other: drop }
    : { airspeed, outcome: keep };
}
