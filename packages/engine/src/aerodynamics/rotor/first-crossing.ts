/** A function value with what it was computed from. */
export interface Sample<Payload> {
  readonly at: number;
  readonly value: number;
  readonly payload: Payload;
}

export type Crossing<Payload> =
  | { readonly kind: "found"; readonly sample: Sample<Payload> }
  /** `highest` and `lowest` are the extreme values met; `solved` counts the points that had a value at all. */
  | { readonly kind: "none"; readonly solved: number; readonly highest: number; readonly lowest: number };

/** How closely a crossing is closed in on. */
export interface Closeness {
  /** Accepted size of the function value. */
  readonly tolerance: number;
  /** Most values taken inside a bracket: where the function jumps through zero they are all taken. @defaultValue 100 */
  readonly refinements?: number;
  /** How many times the tolerance may be left when they are used up. @defaultValue 1000 */
  readonly slack?: number;
}

const usual = { refinements: 100, slack: 1e3 } as const;

/**
 * The first place, in the order of `places`, where the function goes from above zero to zero or below.
 *
 * Places without a value interrupt the scan: a crossing is only seen between two neighbours that both have one. Inside the
 * bracket regula falsi with halved weights, with bisection when it stalls.
 *
 * @param closeness accepted size of the function value, or more about it
 * @source dowell-jarratt-1971, the Illinois method, unchecked
 */
export function firstCrossing<Payload>(
  places: readonly number[],
  sampleAt: (place: number) => { readonly value: number; readonly payload: Payload } | undefined,
  closeness: number | Closeness,
): Crossing<Payload> {
  const enough = { ...usual, ...(typeof closeness === "number" ? { tolerance: closeness } : closeness) };
  const { tolerance } = enough;
  let before: Sample<Payload> | undefined;
  let solved = 0;
  let highest = Number.NEGATIVE_INFINITY;
  let lowest = Number.POSITIVE_INFINITY;
  const sample = (at: number): Sample<Payload> | undefined => {
    const found = sampleAt(at);
    return found && { at, ...found };
  };
  for (const place of places) {
    const here = sample(place);
    if (here) {
      solved += 1;
      highest = Math.max(highest, here.value);
      lowest = Math.min(lowest, here.value);
      if (Math.abs(here.value) <= tolerance) return { kind: "found", sample: here };
      if (before && before.value > 0 && here.value < 0) {
        const root = refined(before, here, sample, enough);
        if (root) return { kind: "found", sample: root };
      }
    }
    before = here;
  }
  return { kind: "none", solved, highest, lowest };
}

/** The crossing inside a bracket; undefined when the function has a jump or a hole there. */
function refined<Payload>(
  above: Sample<Payload>,
  below: Sample<Payload>,
  sample: (at: number) => Sample<Payload> | undefined,
  { tolerance, refinements, slack }: Required<Closeness>,
): Sample<Payload> | undefined {
  let high = above;
  let low = below;
  let highWeight = high.value;
  let lowWeight = low.value;
  let kept = 0;
  for (let step = 0; step < refinements; step++) {
    const secant = high.at + ((low.at - high.at) * highWeight) / (highWeight - lowWeight);
    const at = step % 8 === 7 ? (high.at + low.at) / 2 : secant;
    if (at === high.at || at === low.at) break;
    const here = sample(at);
    if (!here) return undefined;
    if (Math.abs(here.value) <= tolerance) return here;
    if (here.value > 0) {
      high = here;
      highWeight = here.value;
      if (kept === 1) lowWeight /= 2;
      else lowWeight = low.value;
      kept = 1;
    } else {
      low = here;
      lowWeight = here.value;
      if (kept === -1) highWeight /= 2;
      else highWeight = high.value;
      kept = -1;
    }
  }
  const nearest = Math.abs(high.value) < Math.abs(low.value) ? high : low;
  return Math.abs(nearest.value) <= slack * tolerance ? nearest : undefined;
}
