import { type Coordinates, checksByDistance } from "./domain-distance.ts";
import type { PublishedCheck, PublishedError } from "./published-check.ts";

/** How a value goes with a compared output field: as its power. The value itself has exponent 1. */
export interface BandRule {
  readonly field: string;
  readonly exponent: number;
}

/** A published error that a band is made of. */
export interface BandError {
  readonly check: string;
  readonly title: string;
  readonly quantity: string;
  /** Largest error of the comparison as a factor on the value, above 1 whichever way it went [1]. */
  readonly factor: number;
  /** From the range of that check [1]. */
  readonly distance: number;
}

/** Between which values published errors leave a computed one open. */
export interface PublishedBand {
  readonly low: number;
  readonly high: number;
  /** The error that decides first. */
  readonly errors: readonly BandError[];
}

/** Checks that are farther than the nearest by more than this count no more [widths of a range]. */
const sameNearness = 1;

/**
 * Band around a computed value, from the errors of published checks (docs/decisions/0019-band-of-published-errors.md).
 *
 * The checks that count are those whose range the state lies in; where there is none, the nearest and those less than one width
 * farther. Of each the largest error over all rows, gated or not, becomes a factor; outside its range the factor is raised to
 * 1 plus the distance. The largest factor is taken either way: an error seen one way may fall the other way on another machine.
 *
 * @param value positive, SI
 * @param rules fields whose relative errors say something about the value
 * @returns null when no comparable check says anything about it
 */
export function publishedBand(
  component: string,
  at: Coordinates,
  value: number,
  rules: readonly BandRule[],
  checks?: readonly PublishedCheck[],
): PublishedBand | null {
  const speaking = checksByDistance(component, at, checks).flatMap(({ check, distance, comparable }) => {
    const worst = comparable ? worstError(check, rules) : undefined;
    return worst ? [{ ...worst, check: check.check, title: check.title, distance }] : [];
  });
  const nearest = Math.min(...speaking.map(({ distance }) => distance));
  const errors = speaking
    .filter(({ distance }) => (nearest === 0 ? distance === 0 : distance <= nearest + sameNearness))
    .toSorted((a, b) => widened(b) - widened(a));
  const [decisive] = errors;
  const factor = decisive ? widened(decisive) : Number.NaN;
  return Number.isFinite(factor) && value > 0 ? { low: value / factor, high: value * factor, errors } : null;
}

/** The factor of an error as it counts at its distance. */
function widened({ factor, distance }: Pick<BandError, "factor" | "distance">): number {
  return factor ** (1 + distance);
}

/** The comparison of a check with the largest factor; undefined when it compares none of the fields. */
function worstError({ errors }: PublishedCheck, rules: readonly BandRule[]): Pick<BandError, "quantity" | "factor"> | undefined {
  return rules
    .flatMap(({ field, exponent }) =>
      errors
        .filter((error) => error.field === field && error.unit === "relative")
        .map((error) => ({ quantity: error.quantity, factor: factorOf(error, exponent) })),
    )
    .reduce<Pick<BandError, "quantity" | "factor"> | undefined>(
      (worst, one) => (worst && worst.factor >= one.factor ? worst : one),
      undefined,
    );
}

/** A computed value of nothing, or of the wrong sign, is off by no factor: infinity. */
function factorOf({ lowest, highest }: PublishedError, exponent: number): number {
  const factors = [lowest, highest].map((error) => (error > -1 ? (1 + error) ** exponent : Number.POSITIVE_INFINITY));
  return Math.max(...factors.map((factor) => Math.max(factor, 1 / factor)));
}
