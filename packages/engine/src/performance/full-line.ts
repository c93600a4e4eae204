import { type FullOutcome, type FullPoint, type FullTrimmer, fullObjective } from "../equilibrium/full/index.ts";
import type { FlightMode } from "../equilibrium/index.ts";
import { agree, better, type FullLinePoint, followedLine } from "./full-line-pilots.ts";
import type { LineHooks } from "./speed-line.ts";

export type { FullLinePoint };

/** What stays the same along a line: climb, side wind, turn, failed and stuck parts. */
export type LineFlight = Omit<FullPoint, "mode" | "airspeed">;

/** Level, the air from ahead. */
export const straightAndLevel: LineFlight = { climbRate: 0, sideslip: 0 };

/** A point this much dearer than the mean of its neighbours is tried again [1]. */
const bulge = 0.002;
/** After a stretch that flies, so many refusals in a row are taken for its end. */
const refusalsToEnd = 3;

/**
 * Trims a mode over speeds. Some speeds, the pilots, are trimmed from every way of flying; from each the line is followed up to the next.
 * Where it arrives at a dearer flight than the pilot's, or at none, it is also followed down from there: the cheaper is kept and the other
 * one where it is another optimum.
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
  const points = speeds.map((airspeed): FullPoint => ({ ...flight, mode, airspeed }));
  const line = followedLine(trimmer, points, hooks);
  repair(trimmer, points, line, hooks);
  return line.map((found, i) => {
    hooks.cancelled();
    const { outcome } = found;
    hooks.progress(points.length + i + 1, points.length * 2);
    return outcome.kind === "trimmed" ? { ...found, outcome: trimmer.trimFrom(outcome.point, [outcome.start]) } : found;
  });
}

/** A first picture of a line: from below only, stall margins from the table. */
export function coarseFullSpeedLine(
  trimmer: FullTrimmer,
  mode: FlightMode,
  speeds: readonly number[],
  hooks: LineHooks,
  flight: LineFlight = straightAndLevel,
): FullLinePoint[] {
  const outcomes: FullOutcome[] = [];
  speeds.forEach((airspeed, i) => {
    hooks.cancelled();
    outcomes.push(fromBelow(trimmer, { ...flight, mode, airspeed }, outcomes));
    hooks.progress(i + 1, speeds.length);
  });
  return outcomes.map((outcome) => ({ airspeed: outcome.point.airspeed, outcome }));
}

/** From the neighbour below where it flies, from every way of flying where that fails; beyond the end of a stretch only the nearest miss is followed. */
function fromBelow(trimmer: FullTrimmer, point: FullPoint, line: readonly FullOutcome[]): FullOutcome {
  const below = line[line.length - 1];
  const ended = line.length > refusalsToEnd && line.slice(-refusalsToEnd).every((outcome) => outcome.kind !== "trimmed");
  if (below && ended && line.some((outcome) => outcome.kind === "trimmed")) return trimmer.trimFrom(point, [below.start], "table");
  const warm = below?.kind === "trimmed" ? trimmer.trimFrom(point, [below.start], "table") : undefined;
  return warm?.kind === "trimmed" ? warm : trimmer.trim(point, "table");
}

/**
 * Tries a speed again that costs more than its neighbours let expect: from them, and from every way of flying. What is found is carried on
 * to both sides as long as it is cheaper.
 */
function repair(trimmer: FullTrimmer, points: readonly FullPoint[], line: FullLinePoint[], hooks: LineHooks): void {
  const bettered = (i: number, found: FullOutcome): boolean => {
    const known = line[i] as FullLinePoint;
    // What is dearer here is only the neighbour's way followed: it is no second optimum of this speed.
    const kept = better(known.airspeed, known.outcome, found).outcome;
    line[i] = { ...known, outcome: kept };
    return kept.kind === "trimmed" && !agree(kept, known.outcome);
  };
  const carry = (from: number, side: 1 | -1) => {
    for (let i = from; ; i += side) {
      const near = line[i]?.outcome;
      const point = points[i + side];
      if (near?.kind !== "trimmed" || point === undefined || line[i + side]?.outcome.kind !== "trimmed") return;
      hooks.cancelled();
      if (!bettered(i + side, trimmer.trimFrom(point, [near.start], "table"))) return;
    }
  };
  line.forEach(({ outcome }, i) => {
    const neighbours = [line[i - 1]?.outcome, line[i + 1]?.outcome].flatMap((near) => (near?.kind === "trimmed" ? [near] : []));
    if (neighbours.length === 0) return;
    const mean = neighbours.reduce((sum, near) => sum + fullObjective(near), 0) / neighbours.length;
    // The last speed that flies has nothing beyond it to be held against.
    if (neighbours.length === 2 && outcome.kind === "trimmed" && fullObjective(outcome) <= mean + bulge * Math.abs(mean)) return;
    hooks.cancelled();
    const point = points[i] as FullPoint;
    const starts = neighbours.map(({ start }) => start);
    const beside = bettered(i, trimmer.trimFrom(point, starts, "table"));
    if (!bettered(i, trimmer.trim(point, "table")) && !beside) return;
    carry(i, -1);
    carry(i, 1);
  });
}
