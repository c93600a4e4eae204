/** Steps after which the search ends wherever it is: bisection alone would have used up every digit before. */
const mostSteps = 90;

/**
 * A root between two places where a function has opposite signs: inverse quadratic steps where they are safe, else bisection.
 *
 * @param low any end; @param high the other end
 * @param tolerance accepted width of the bracket around the root
 * @returns the end of the last bracket with the smaller value; NaN when the signs are equal or a value is not a number
 * @source chandrupatla-1997, unchecked
 */
export function bracketedRoot(
  value: (at: number) => number,
  low: number,
  lowValue: number,
  high: number,
  highValue: number,
  tolerance: number,
): number {
  let b = low;
  let a = high;
  let c = high;
  let fb = lowValue;
  let fa = highValue;
  let fc = highValue;
  if (!(fa * fb <= 0)) return Number.NaN;
  let t = 0.5;
  for (let step = 0; step < mostSteps; step++) {
    const nearest = Math.abs(fa) < Math.abs(fb) ? a : b;
    const width = Math.abs(b - a);
    const least = tolerance + 2e-16 * Math.abs(nearest);
    if (fa === 0 || fb === 0 || width <= least) return fa === 0 ? a : fb === 0 ? b : nearest;
    const place = a + Math.min(Math.max(t, (0.5 * least) / width), 1 - (0.5 * least) / width) * (b - a);
    const here = value(place);
    if (Number.isNaN(here)) return Number.NaN;
    if (here > 0 === fa > 0) {
      c = a;
      fc = fa;
    } else {
      c = b;
      b = a;
      fc = fb;
      fb = fa;
    }
    a = place;
    fa = here;
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    t =
      phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
        : 0.5;
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
