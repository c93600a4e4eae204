import { type FullOutcome, type FullTrimmed, type FullTrimmer, fullObjective } from "../../equilibrium/index.ts";
import { type FullLinePoint, type PoweredMode, straightAndLevel } from "../../performance/index.ts";
import type { TransitionInputs } from "./schema.ts";

/** Level flight over airspeed in both modes. */
export interface ModeLines {
  readonly closed: readonly FullLinePoint[];
  readonly open: readonly FullLinePoint[];
}

/** The ends of the transition and where its modes meet; undefined what does not fly, with the reason. */
export interface Meeting {
  readonly hover: FullTrimmed | undefined;
  readonly cruise: FullTrimmed | undefined;
  readonly meetSpeed: number | undefined;
  readonly because: string | undefined;
  /** Both flights there, level. */
  readonly closedPower: number | undefined;
  readonly openPower: number | undefined;
  readonly refusal: string | undefined;
}

const nothing = { meetSpeed: undefined, because: undefined, closedPower: undefined, openPower: undefined } as const;

/**
 * Ends and meeting point of the reference.
 *
 * @param trimmer of the reference: with the room to limits that it keeps
 */
export function meeting(trimmer: FullTrimmer, lines: ModeLines, inputs: TransitionInputs): Meeting {
  const hover = levelAt(trimmer, "clutch-closed", lines.closed, 0);
  const speed = inputs.cruiseSpeed ?? bestRange(trimmer, lines.open);
  const cruise = speed === undefined ? undefined : levelAt(trimmer, "clutch-open", lines.open, speed);
  const ends = { hover: flown(hover), cruise: cruise && flown(cruise) };
  if (hover.kind !== "trimmed") return { ...ends, ...nothing, refusal: `it does not hover with the clutch closed: ${why(hover)}` };
  if (!cruise) return { ...ends, ...nothing, refusal: "at none of the airspeeds of the corridor it flies with the clutch open" };
  if (cruise.kind !== "trimmed") {
    const at = `${cruise.point.airspeed.toFixed(1)} m/s`;
    return { ...ends, ...nothing, refusal: `it does not cruise with the clutch open at ${at}: ${why(cruise)}` };
  }
  const place = meetingPlace(trimmer, lines, cruise.point.airspeed, inputs.clutchSpeed);
  if (!place) return { ...ends, ...nothing, refusal: "up to the cruise no airspeed flies level with the clutch closed and with it open" };
  const closed = flown(levelAt(trimmer, "clutch-closed", lines.closed, place.airspeed));
  const open = flown(levelAt(trimmer, "clutch-open", lines.open, place.airspeed));
  return {
    ...ends,
    meetSpeed: place.airspeed,
    because: place.because,
    closedPower: closed && fullObjective(closed),
    openPower: open && fullObjective(open),
    refusal: undefined,
  };
}

const flown = (outcome: FullOutcome): FullTrimmed | undefined => (outcome.kind === "trimmed" ? outcome : undefined);

function why(outcome: Exclude<FullOutcome, FullTrimmed>): string {
  return outcome.kind === "no-equilibrium" ? `${outcome.limit} stands in the way` : "the solver gave up";
}

/** A level flight beside the nearest of a line that fly. */
function levelAt(trimmer: FullTrimmer, mode: PoweredMode, line: readonly FullLinePoint[], airspeed: number): FullOutcome {
  const near = line
    .flatMap((point) => (point.outcome.kind === "trimmed" ? [{ airspeed: point.airspeed, start: point.outcome.start }] : []))
    .sort((a, b) => Math.abs(a.airspeed - airspeed) - Math.abs(b.airspeed - airspeed))
    .slice(0, 2);
  const point = { ...straightAndLevel, mode, airspeed };
  const warm =
    near.length > 0
      ? trimmer.trimFrom(
          point,
          near.map(({ start }) => start),
        )
      : undefined;
  return warm?.kind === "trimmed" ? warm : trimmer.trim(point);
}

const powerOf = ({ outcome }: FullLinePoint): number | undefined => (outcome.kind === "trimmed" ? fullObjective(outcome) : undefined);

/** So close to a whole line the lowest point is looked for once more [m/s]. */
const closer = 1;
/** So far from one another the powers of both modes may be where they meet, over their own [1]. */
const alike = 1e-3;
const mostHalvings = 5;

/** Airspeed of least power over airspeed: the lowest point of the parabola through the lowest three of the line, then through three close by. */
function bestRange(trimmer: FullTrimmer, line: readonly FullLinePoint[]): number | undefined {
  const points = line.flatMap((point) => {
    const power = powerOf(point);
    return power === undefined || point.airspeed <= 0 ? [] : [{ airspeed: point.airspeed, cost: power / point.airspeed }];
  });
  const first = lowest(points);
  if (first === undefined || first <= closer) return first;
  const near = [first - closer, first, first + closer].flatMap((airspeed) => {
    const outcome = levelAt(trimmer, "clutch-open", line, airspeed);
    return outcome.kind === "trimmed" ? [{ airspeed, cost: fullObjective(outcome) / airspeed }] : [];
  });
  return near.length === 3 ? lowest(near) : first;
}

function lowest(points: readonly { readonly airspeed: number; readonly cost: number }[]): number | undefined {
  let least = 0;
  points.forEach(({ cost }, i) => {
    if (cost < (points[least]?.cost ?? 0)) least = i;
  });
  const [a, b, c] = [points[least - 1], points[least], points[least + 1]];
  if (!b || !a || !c) return b?.airspeed;
  const left = (b.cost - a.cost) / (b.airspeed - a.airspeed);
  const right = (c.cost - b.cost) / (c.airspeed - b.airspeed);
  const bend = (right - left) / (c.airspeed - a.airspeed);
  const place = bend > 0 ? (a.airspeed + b.airspeed) / 2 - left / (2 * bend) : b.airspeed;
  return Math.min(c.airspeed, Math.max(a.airspeed, place));
}

interface Place {
  readonly airspeed: number;
  readonly because: string;
}

/** Where the clutch opens: as given; where open becomes cheaper; where it is least dearer. */
function meetingPlace(trimmer: FullTrimmer, lines: ModeLines, cruise: number, given: number | undefined): Place | undefined {
  if (given !== undefined) return { airspeed: Math.min(given, cruise), because: "as given" };
  const both = lines.closed.flatMap((point, i) => {
    const other = lines.open[i];
    const [driven, free] = [powerOf(point), other && powerOf(other)];
    return driven === undefined || free === undefined || point.airspeed > cruise
      ? []
      : [{ airspeed: point.airspeed, dearer: free - driven }];
  });
  const [first] = both;
  if (!first) return undefined;
  if (first.dearer <= 0) return { airspeed: first.airspeed, because: "with the clutch open it costs less as soon as it flies at all" };
  for (let i = 1; i < both.length; i++) {
    const [a, b] = [both[i - 1], both[i]];
    if (a && b && b.dearer <= 0)
      return { airspeed: crossing(trimmer, lines, a, b), because: "from there on flying with the clutch open costs less" };
  }
  const least = both.reduce((best, one) => (one.dearer < best.dearer ? one : best), first);
  return { airspeed: least.airspeed, because: "flying with the clutch open costs more everywhere, and there the least" };
}

interface Dearer {
  readonly airspeed: number;
  readonly dearer: number;
}

/** Where open stops being dearer, by halving between the two. */
function crossing(trimmer: FullTrimmer, lines: ModeLines, from: Dearer, to: Dearer): number {
  let [low, high] = [from.airspeed, to.airspeed];
  let middle = low + ((high - low) * from.dearer) / (from.dearer - to.dearer);
  for (let i = 0; i < mostHalvings; i++) {
    const closed = levelAt(trimmer, "clutch-closed", lines.closed, middle);
    const open = levelAt(trimmer, "clutch-open", lines.open, middle);
    if (closed.kind !== "trimmed" || open.kind !== "trimmed") return middle;
    const dearer = fullObjective(open) - fullObjective(closed);
    if (Math.abs(dearer) < alike * fullObjective(closed)) return middle;
    if (dearer > 0) low = middle;
    else high = middle;
    middle = (low + high) / 2;
  }
  return middle;
}
