import { type Closeness, firstCrossing } from "../../aerodynamics/rotor/index.ts";

/** A place where a function is zero. */
export interface Root<Payload> {
  readonly at: number;
  /** Whether the function goes up through zero in the order of the places. */
  readonly rising: boolean;
  readonly payload: Payload;
}

export interface RootScan<Payload> {
  readonly roots: readonly Root<Payload>[];
  /** Places that had a value at all, and the extreme values met. */
  readonly solved: number;
  readonly highest: number;
  readonly lowest: number;
}

type Sampler<Payload> = (place: number) => { readonly value: number; readonly payload: Payload } | undefined;

/** Steps towards zero between three places of which the middle one is nearest to it, before the function is taken not to reach it. */
const steps = 12;
const golden = (3 - Math.sqrt(5)) / 2;

/**
 * Every zero of a function between neighbours of a list of places, in their order.
 *
 * A zero is seen where two neighbours both have a value and the values differ in sign, or where the middle one of three is nearest to
 * zero and zero is crossed twice beside it; a jump through zero is none. The scan ends with the first root that is `enough`.
 *
 * @param tolerance size of the function value that counts as zero
 * @param closeness what is enough between two places of different sign, where that is less
 * @derivation repeated search for a crossing
 */
export function rootsAlong<Payload>(
  places: readonly number[],
  sampleAt: Sampler<Payload>,
  tolerance: number,
  enough: (root: Root<Payload>) => boolean = () => false,
  closeness: Closeness = { tolerance },
): RootScan<Payload> {
  const roots: Root<Payload>[] = [];
  const passed: Place<Payload>[] = [];
  let solved = 0;
  let highest = Number.NEGATIVE_INFINITY;
  let lowest = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const sampled = sampleAt(place);
    if (!sampled) {
      passed.length = 0;
      continue;
    }
    const here = { at: place, ...sampled };
    solved += 1;
    highest = Math.max(highest, here.value);
    lowest = Math.min(lowest, here.value);
    const before = passed.at(-1);
    const earlier = passed.at(-2);
    const summit = earlier && before && turning(earlier, before, here, sampleAt, tolerance);
    const found = summit
      ? [rootAt(earlier, summit, sampleAt, tolerance, closeness), rootAt(summit, here, sampleAt, tolerance, closeness)]
      : [rootAt(before, here, sampleAt, tolerance, closeness)];
    for (const root of found) {
      if (!root) continue;
      roots.push(root);
      if (enough(root)) return { roots, solved, highest, lowest };
    }
    passed.push(here);
    if (passed.length > 2) passed.shift();
  }
  return { roots, solved, highest, lowest };
}

interface Place<Payload> {
  readonly at: number;
  readonly value: number;
  readonly payload: Payload;
}

function rootAt<Payload>(
  before: Place<Payload> | undefined,
  here: Place<Payload>,
  sampleAt: Sampler<Payload>,
  tolerance: number,
  closeness: Closeness,
): Root<Payload> | undefined {
  if (Math.abs(here.value) <= tolerance) return { at: here.at, rising: before === undefined || before.value < 0, payload: here.payload };
  if (!before || Math.abs(before.value) <= tolerance || before.value > 0 === here.value > 0) return undefined;
  const rising = here.value > 0;
  const found = firstCrossing(
    [before.at, here.at],
    (place) => {
      const sample = sampleAt(place);
      return sample && { value: rising ? -sample.value : sample.value, payload: sample.payload };
    },
    closeness,
  );
  return found.kind === "found" ? { at: found.sample.at, rising, payload: found.sample.payload } : undefined;
}

/** Where a function that turns back before zero between three places does reach it; undefined where it does not. */
function turning<Payload>(
  first: Place<Payload>,
  middle: Place<Payload>,
  last: Place<Payload>,
  sampleAt: Sampler<Payload>,
  tolerance: number,
): Place<Payload> | undefined {
  const sign = Math.sign(middle.value);
  const height = (place: Place<Payload>): number => sign * place.value;
  const turns = height(middle) > tolerance && height(first) > height(middle) && height(last) > height(middle);
  // Far from zero for the bend that is seen: not worth a search.
  const bend = Math.max(height(first), height(last)) - height(middle);
  if (!turns || height(middle) > 2 * bend) return undefined;
  let [left, best, right] = [first.at, middle, last.at];
  for (let step = 0; step < steps; step++) {
    const inRight = Math.abs(right - best.at) > Math.abs(best.at - left);
    const at = best.at + golden * ((inRight ? right : left) - best.at);
    const sampled = sampleAt(at);
    if (!sampled) return undefined;
    const here = { at, ...sampled };
    if (height(here) <= 0) return here;
    if (height(here) < height(best)) {
      if (inRight) left = best.at;
      else right = best.at;
      best = here;
    } else if (inRight) right = at;
    else left = at;
  }
  return undefined;
}
