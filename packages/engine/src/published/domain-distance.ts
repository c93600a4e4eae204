import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { type CoveredRange, checksOf, type PublishedCheck } from "./published-check.ts";

const one = (description: string) => quantity("dimensionless", { description });

/** Schema of `domain` in the outputs of an analysis: how far the answer lies from what was held against published data. */
export const domainOutputs = z
  .strictObject({
    distance: one(
      "0 inside the range of the nearest check, 1 when one width of a range outside; none when nothing was compared.",
    ).nullable(),
    nearest: z.string().nullable().meta({ description: "Published check that covers this best." }),
    outside: z
      .array(
        z.strictObject({
          name: z.string().meta({ description: "Coordinate that lies outside." }),
          value: one("Its value here, SI."),
          low: one("Lowest compared value."),
          high: one("Highest compared value."),
        }),
      )
      .meta({ description: "Coordinates outside the range of that check." }),
  })
  .meta({ description: "Distance from the range that was held against published data.", role: "domain" });

export type DomainDistance = z.infer<typeof domainOutputs>;

/** Coordinates of a state by name, SI; those that are absent or no numbers are left aside. */
export type Coordinates = Readonly<Record<string, number | null | undefined>>;

/**
 * How far a state lies from the range that a component was held against published data in: from the nearest check, as the
 * root of the sum of squares over coordinates of the distance outside each range over its width.
 */
export function domainDistance(component: string, at: Coordinates, checks?: readonly PublishedCheck[]): DomainDistance {
  const [nearest] = checksByDistance(component, at, checks);
  if (!nearest) return { distance: null, nearest: null, outside: [] };
  const { check, distance } = nearest;
  const outside = check.domain.flatMap((range) => {
    const value = at[range.name];
    return isNumber(value) && overshoot(range, value) > 0 ? [{ name: range.name, value, low: range.low, high: range.high }] : [];
  });
  return { distance, nearest: check.check, outside };
}

/** The same for rows of a sweep: the row that lies farthest out. */
export function domainOfRows(component: string, rows: readonly Coordinates[], checks?: readonly PublishedCheck[]): DomainDistance {
  const distances = rows.map((at) => domainDistance(component, at, checks));
  return distances.reduce<DomainDistance>((worst, each) => ((each.distance ?? -1) > (worst.distance ?? -1) ? each : worst), {
    distance: null,
    nearest: null,
    outside: [],
  });
}

/** A check as seen from a state. */
interface SeenCheck {
  readonly check: PublishedCheck;
  readonly distance: number;
  /** False where the state is another one altogether: more than a width outside in a coordinate that is no matter of scale. */
  readonly comparable: boolean;
}

/**
 * The checks of a component, nearest first. A coordinate that others state and a check is silent about counts one width for
 * the order, though not in the distance: what says little is not near to everything. Where two are as near, by name.
 */
export function checksByDistance(component: string, at: Coordinates, checks?: readonly PublishedCheck[]): readonly SeenCheck[] {
  const own = checksOf(component, checks);
  const known = new Set(own.flatMap((check) => check.domain.map(({ name }) => name)).filter((name) => isNumber(at[name])));
  return own
    .map((check) => {
      const stated = check.domain.filter(({ name }) => known.has(name));
      const outside = stated.map((range) => ({ name: range.name, by: overshoot(range, at[range.name] ?? 0) }));
      const distance = Math.hypot(...outside.map(({ by }) => by));
      const rank = Math.hypot(distance, Math.sqrt(known.size - stated.length));
      return { check, distance, rank, comparable: outside.every(({ name, by }) => by <= 1 || byFactor.has(name)) };
    })
    .toSorted((a, b) => a.rank - b.rank || (a.check.check < b.check.check ? -1 : 1));
}

function isNumber(value: number | null | undefined): value is number {
  return typeof value === "number" && Number.isFinite(value);
}

/** Narrowest width that counts [SI]: a check at one Mach number says something about those close by. */
const leastWidth: Readonly<Record<string, number>> = {
  advanceRatio: 0.1,
  axialRatio: 0.25,
  bladeLoading: 0.02,
  torqueLoading: 0.002,
  tipMach: 0.1,
  machNumber: 0.1,
  angle: 0.035,
  thickness: 0.03,
  camber: 0.02,
  stateOfCharge: 0.1,
  temperature: 5,
  rate: 0.5,
};

/** Coordinates where a factor counts, not a difference; one width is at least a factor of two. */
const byFactor = new Set(["reynoldsNumber"]);

/** Widths by which arithmetic alone may leave a range: the cosine of a right angle is no advance ratio. */
const noise = 1e-9;

/** Distance outside a range over its width; 0 inside. */
function overshoot(range: CoveredRange, value: number): number {
  const widths = widthsOutside(range, value);
  return widths > noise ? widths : 0;
}

function widthsOutside({ name, low, high }: CoveredRange, value: number): number {
  if (value >= low && value <= high) return 0;
  if (byFactor.has(name) && low > 0) {
    const factor = value < low ? low / Math.max(value, low * 1e-6) : value / high;
    return Math.log(factor) / Math.max(Math.log(high / low), Math.LN2);
  }
  const width = Math.max(high - low, leastWidth[name] ?? 0.1 * Math.max(Math.abs(low), Math.abs(high), 1e-9));
  return (value < low ? low - value : value - high) / width;
}
