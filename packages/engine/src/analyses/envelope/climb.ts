import { bestClimb, type EnvelopePoint, type EnvelopeTrimmer, type PoweredMode } from "../../performance/index.ts";
import type { ClimbRow } from "./schema.ts";

interface Place {
  readonly blocks: number;
  readonly temperatureOffset: number;
  readonly altitude: number;
}

/** Fastest climb at each speed, in the mode that climbs faster; the second is asked only where the first falls short of the limit. */
export function climbRows(
  trimmer: EnvelopeTrimmer,
  lines: readonly { readonly mode: PoweredMode; readonly points: readonly EnvelopePoint[] }[],
  place: Place,
): ClimbRow[] {
  const limit = trimmer.conditions.aircraft.limits.climbRate;
  return (lines[0]?.points ?? []).map(({ airspeed }, i) => {
    let best: ReturnType<typeof bestClimb>;
    for (const { mode, points } of lines) {
      if (best && best.climbRate >= limit) break;
      const found = bestClimb(trimmer, mode, points[i] as EnvelopePoint, limit);
      if (found && found.climbRate > (best?.climbRate ?? Number.NEGATIVE_INFINITY)) best = found;
    }
    return best ? { ...place, ...best } : { ...place, airspeed, mode: null, climbRate: null, limit: null, family: null };
  });
}

/** The fastest of them at one place: of equals the slowest speed. */
export function bestClimbRow(rows: readonly ClimbRow[], place: Place): ClimbRow[] {
  const here = rows.filter(
    (row) => row.blocks === place.blocks && row.temperatureOffset === place.temperatureOffset && row.altitude === place.altitude,
  );
  const climbing = here.filter(({ climbRate }) => climbRate !== null);
  const [first] = climbing;
  if (!first) return [];
  return [climbing.reduce((best, row) => ((row.climbRate as number) > (best.climbRate as number) + 1e-9 ? row : best), first)];
}
