import { type FullTrimmed, type FullTrimmer, fullObjective } from "../../equilibrium/index.ts";
import type { FullLinePoint } from "../../performance/index.ts";
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
  const hover = flownAt(trimmer, "clutch-closed", lines.closed, 0);
  const speed = inputs.cruiseSpeed ?? bestRange(lines.open);
  const cruise = speed === undefined ? undefined : flownAt(trimmer, "clutch-open", lines.open, speed);
  if (!hover) return { hover, cruise, ...nothing, refusal: `it does not hover with the clutch closed: ${refused(lines.closed, 0)}` };
  if (!cruise) {
    const at = speed === undefined ? "at any speed asked for" : `at ${speed.toFixed(1)} m/s`;
    return { hover, cruise, ...nothing, refusal: `it does not cruise with the clutch open ${at}: ${refused(lines.open, speed ?? 0)}` };
  }
  const place = meetingPlace(lines, cruise.point.airspeed, inputs.clutchSpeed);
  if (!place)
    return { hover, cruise, ...nothing, refusal: "up to the cruise no airspeed flies level with the clutch closed and with it open" };
  const closed = flownAt(trimmer, "clutch-closed", lines.closed, place.airspeed);
  const open = flownAt(trimmer, "clutch-open", lines.open, place.airspeed);
  return {
    hover,
    cruise,
    meetSpeed: place.airspeed,
    because: place.because,
    closedPower: closed && fullObjective(closed),
    openPower: open && fullObjective(open),
    refusal: undefined,
  };
}

/** A level flight beside the nearest of a line that flies. */
function flownAt(
  trimmer: FullTrimmer,
  mode: "clutch-closed" | "clutch-open",
  line: readonly FullLinePoint[],
  airspeed: number,
): FullTrimmed | undefined {
  const near = line
    .flatMap(({ outcome }) => (outcome.kind === "trimmed" ? [outcome] : []))
    .sort((a, b) => Math.abs(a.point.airspeed - airspeed) - Math.abs(b.point.airspeed - airspeed))
    .slice(0, 2);
  const point = { mode, airspeed, climbRate: 0, sideslip: 0 };
  const warm =
    near.length > 0
      ? trimmer.trimFrom(
          point,
          near.map(({ start }) => start),
        )
      : undefined;
  const found = warm?.kind === "trimmed" ? warm : trimmer.trim(point);
  return found.kind === "trimmed" ? found : undefined;
}

function refused(line: readonly FullLinePoint[], airspeed: number): string {
  const near = line
    .flatMap((point) => (point.outcome.kind === "trimmed" ? [] : [{ airspeed: point.airspeed, limit: point.outcome.limit }]))
    .sort((a, b) => Math.abs(a.airspeed - airspeed) - Math.abs(b.airspeed - airspeed))[0];
  return near ? `${near.limit} stands in the way at ${near.airspeed.toFixed(1)} m/s` : "the solver gave up";
}

const powerOf = ({ outcome }: FullLinePoint): number | undefined => (outcome.kind === "trimmed" ? fullObjective(outcome) : undefined);

/** Least power over airspeed along a line: the lowest point of the parabola through the lowest three. */
function bestRange(line: readonly FullLinePoint[]): number | undefined {
  const points = line.flatMap((point) => {
    const power = powerOf(point);
    return power === undefined || point.airspeed <= 0 ? [] : [{ airspeed: point.airspeed, cost: power / point.airspeed }];
  });
  let least = 0;
  points.forEach(({ cost }, i) => {
    if (cost < (points[least]?.cost ?? 0)) least = i;
  });
  const [a, b, c] = [points[least - 1], points[least], points[least + 1]];
  if (!b || !a || !c) return b?.airspeed;
  const left = (b.cost - a.cost) / (b.airspeed - a.airspeed);
  const right = (c.cost - b.cost) / (c.airspeed - b.airspeed);
  const bend = (right - left) / (c.airspeed - a.airspeed);
  const lowest = bend > 0 ? (a.airspeed + b.airspeed) / 2 - left / (2 * bend) : b.airspeed;
  return Math.min(c.airspeed, Math.max(a.airspeed, lowest));
}

/** Where the clutch opens: as given; where open becomes cheaper; where it is least dearer. */
function meetingPlace(
  { closed, open }: ModeLines,
  cruise: number,
  given: number | undefined,
): { readonly airspeed: number; readonly because: string } | undefined {
  if (given !== undefined) return { airspeed: Math.min(given, cruise), because: "as given" };
  const both = closed.flatMap((point, i) => {
    const [driven, free] = [powerOf(point), open[i] && powerOf(open[i])];
    return driven === undefined || free === undefined || point.airspeed > cruise
      ? []
      : [{ airspeed: point.airspeed, dearer: free - driven }];
  });
  for (let i = 1; i < both.length; i++) {
    const [a, b] = [both[i - 1], both[i]];
    if (!a || !b || a.dearer <= 0 || b.dearer > 0) continue;
    const airspeed = a.airspeed + ((b.airspeed - a.airspeed) * a.dearer) / (a.dearer - b.dearer);
    return { airspeed, because: "from there on flying with the clutch open costs less" };
  }
  const least = [...both].sort((a, b) => a.dearer - b.dearer)[0];
  if (!least) return undefined;
  if ((both[0]?.dearer ?? 1) <= 0) {
    return { airspeed: both[0]?.airspeed ?? least.airspeed, because: "with the clutch open it costs less as soon as it flies at all" };
  }
  return { airspeed: least.airspeed, because: "flying with the clutch open costs more everywhere, and there the least" };
}
