import { type AircraftDefinition, massProperties } from "../../aircraft/index.ts";
import { centreLimits, type LimitSource } from "./centre-limits.ts";
import { type Contribution, contributionsTo, halfWidthOf, type unsureNumbers } from "./intervals.ts";
import { type AskedLoading, loadingOf } from "./loadings.ts";
import type { BalanceRow } from "./output-schema.ts";

type Numbers = ReturnType<typeof unsureNumbers>;

/** Place of the fore-and-aft centre of gravity among the results that are propagated. */
export const centreResult = 1;

function results(aircraft: AircraftDefinition, asked: AskedLoading): readonly number[] {
  const { mass, centre, inertia } = massProperties(aircraft, loadingOf(aircraft, asked));
  const [xx = 0, , zx = 0, , yy = 0, , , , zz = 0] = inertia;
  return [mass, centre.x, centre.y, centre.z, xx, yy, zz, -zx];
}

/** One loading weighed and balanced, and what its interval comes from. */
export function balanceRow(
  aircraft: AircraftDefinition,
  asked: AskedLoading,
  numbers: Numbers,
  sources: readonly LimitSource[],
): { readonly row: BalanceRow; readonly contributions: readonly Contribution[] } {
  const loading = loadingOf(aircraft, asked);
  const contributions = contributionsTo(aircraft, numbers, (other) => results(other, asked));
  const [mass, x, y, z, xx, yy, zz, product] = results(aircraft, asked).map((value, result) => ({
    value,
    halfWidth: halfWidthOf(contributions, result),
  })) as [Half, Half, Half, Half, Half, Half, Half, Half];
  const { fore, aft } = centreLimits(sources, aircraft, loading);
  const foreMargin = fore.x - x.value;
  const aftMargin = x.value - aft.x;
  const row: BalanceRow = {
    blocks: asked.blocks,
    payload: asked.payload,
    place: asked.place,
    mass,
    centre: { x, y, z },
    inertia: { x: xx, y: yy, z: zz, product },
    fore,
    aft,
    foreMargin,
    aftMargin,
    verdict: verdictOf(Math.min(foreMargin, aftMargin), x.halfWidth),
    binding: foreMargin < aftMargin ? "fore limit" : "aft limit",
    tooHeavy: mass.value > aircraft.limits.largestTakeoffMass + 1e-9,
  };
  return { row, contributions };
}

interface Half {
  readonly value: number;
  readonly halfWidth: number;
}

function verdictOf(margin: number, halfWidth: number): BalanceRow["verdict"] {
  if (margin >= 0) return margin >= halfWidth ? "inside" : "inside-unsure";
  return -margin > halfWidth ? "outside" : "outside-unsure";
}
