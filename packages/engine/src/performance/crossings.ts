import type { Flown } from "./flyer.ts";
import type { LinePoint } from "./speed-line.ts";

/** A stretch of airspeed [m/s]. */
export interface SpeedInterval {
  readonly from: number;
  readonly to: number;
}

/** Where flying with the clutch open costs less, and why nowhere when nowhere. */
export interface CheaperStretches {
  readonly intervals: readonly SpeedInterval[];
  readonly reason: string;
}

/** Compares two lines over the same speeds; borders are interpolated between neighbouring speeds, linear in the difference. */
export function cheaperStretches<F extends Flown>(closed: readonly LinePoint<F>[], open: readonly LinePoint<F>[]): CheaperStretches {
  const difference = closed.map((point, i) => {
    const other = open[i]?.outcome;
    if (other?.kind !== "trimmed") return undefined;
    if (point.outcome.kind !== "trimmed") return Number.NEGATIVE_INFINITY;
    return other.flown.electricPower - point.outcome.flown.electricPower;
  });
  const intervals: { from: number; to: number }[] = [];
  let current: { from: number; to: number } | undefined;
  difference.forEach((here, i) => {
    const airspeed = (closed[i] as LinePoint<F>).airspeed;
    const before = difference[i - 1];
    const cheaper = here !== undefined && here < 0;
    if (cheaper && !current) {
      current = { from: crossing(before, here, closed[i - 1]?.airspeed, airspeed), to: airspeed };
      intervals.push(current);
    } else if (cheaper && current) current.to = airspeed;
    else if (!cheaper && current) {
      if (here !== undefined && before !== undefined) current.to = crossing(before, here, closed[i - 1]?.airspeed, airspeed);
      current = undefined;
    }
  });
  const finite = difference.filter((value): value is number => value !== undefined && Number.isFinite(value));
  if (intervals.length > 0) return { intervals, reason: "" };
  if (difference.every((value) => value === undefined)) return { intervals, reason: "no speed can be flown with the clutch open" };
  return { intervals, reason: `with the clutch open it costs at least ${Math.round(Math.min(...finite))} W more at every speed` };
}

function crossing(before: number | undefined, here: number, speedBefore: number | undefined, speedHere: number): number {
  if (before === undefined || speedBefore === undefined || !Number.isFinite(before) || !Number.isFinite(here)) return speedHere;
  return speedBefore + ((speedHere - speedBefore) * before) / (before - here);
}
