import type { Airframe } from "../../airframe/index.ts";
import type { FullStart } from "./full-outcome.ts";
import type { FullProblem } from "./full-problem.ts";
import { type Found, isSolution, searchAll } from "./full-search.ts";

/** A tail that works at more than this share of the angle of its largest lift may sit in the wrong valley. */
const strained = 0.7;

/**
 * Looks again from an answer, or from the nearest miss, with tail surfaces set otherwise: turned into the flow that they meet there, or to the
 * other side. A stalled tail balances as well as one that works, at more power or not quite, and no small step leads from one to the other.
 *
 * @derivation not a formula
 */
export function secondLook(problem: FullProblem, airframe: Airframe, found: Found): Found {
  const at = found.best ?? found.nearest;
  if (at === undefined) return found;
  const starts = otherTails(problem, airframe, at.x, found.best === undefined);
  if (starts.length === 0) return found;
  const again = searchAll(problem.program, starts);
  if (again.best === undefined) return found.best || again.nearest === undefined ? found : { ...found, nearest: nearer(found, again) };
  const better = found.best === undefined || (again.best.values[0] as number) < (found.best.values[0] as number);
  return better && isSolution(again.best) ? { ...found, best: again.best } : found;
}

function nearer({ nearest }: Found, { nearest: other }: Found): NonNullable<Found["nearest"]> {
  if (nearest === undefined || other === undefined) return (nearest ?? other) as NonNullable<Found["nearest"]>;
  return other.violation < nearest.violation ? other : nearest;
}

function otherTails({ layout, evaluation }: FullProblem, airframe: Airframe, x: Float64Array, missed: boolean): FullStart[] {
  const { surfaces } = airframe.conditions.aircraft;
  const readings = evaluation(x).loads.surfaces;
  const tails = airframe.controls.flatMap(({ part, what }, k) => {
    const index = layout.controlAt + k;
    const surface = surfaces.findIndex(({ id }) => id === part);
    const free = (layout.upper[index] as number) > (layout.lower[index] as number);
    if (what !== "deflection" || surface < 0 || !free) return [];
    const { angle = 0 } = readings[surface] ?? {};
    const part0 = surfaces[surface] as (typeof surfaces)[number];
    if (!missed && Math.abs(angle) < (strained * part0.maximumLiftCoefficient) / part0.liftSlope) return [];
    return [{ index, turned: (x[index] as number) - angle / (layout.units[index] as number) }];
  });
  if (tails.length === 0) return [];
  const within = (index: number, value: number) => Math.min(layout.upper[index] as number, Math.max(layout.lower[index] as number, value));
  const changed = (change: readonly { readonly index: number; readonly to: number }[]): FullStart => {
    const start = Float64Array.from(x);
    for (const { index, to } of change) start[index] = within(index, to);
    return { x: start };
  };
  return [
    changed(tails.map(({ index, turned }) => ({ index, to: turned }))),
    ...tails.map(({ index }) => changed([{ index, to: -(x[index] as number) }])),
    ...(tails.length > 1 ? tails.map(({ index, turned }) => changed([{ index, to: turned }])) : []),
  ];
}
