/** A curve through points: value inside, straight on beyond. */
export interface SmoothCurve {
  readonly low: number;
  readonly high: number;
  readonly at: (x: number) => number;
}

/**
 * Cubics from point to point, with the slope at each of the parabola through it and its neighbours; beyond the ends straight on
 * with the slope there. One point is a constant, two are a line.
 *
 * @param xs rising, at least one; @param ys of the same length
 * @derivation Hermite interpolation
 */
export function smoothCurve(xs: readonly number[], ys: readonly number[]): SmoothCurve {
  const last = xs.length - 1;
  const x = (i: number): number => xs[i] as number;
  const y = (i: number): number => ys[i] as number;
  const slopes = xs.map((_, i) => slopeAt(xs, ys, i));
  const slope = (i: number): number => slopes[i] as number;
  const at = (place: number): number => {
    if (place <= x(0)) return y(0) + slope(0) * (place - x(0));
    if (place >= x(last)) return y(last) + slope(last) * (place - x(last));
    let i = 0;
    while (place > x(i + 1)) i++;
    const width = x(i + 1) - x(i);
    const t = (place - x(i)) / width;
    const risen = t * t * (3 - 2 * t);
    return y(i) * (1 - risen) + y(i + 1) * risen + width * t * (1 - t) * (slope(i) * (1 - t) - slope(i + 1) * t);
  };
  return { low: x(0), high: x(last), at };
}

/** Of the parabola through a point and its neighbours; at the ends through the nearest three. */
function slopeAt(xs: readonly number[], ys: readonly number[], index: number): number {
  const last = xs.length - 1;
  if (last === 0) return 0;
  const secant = (i: number): number => ((ys[i + 1] as number) - (ys[i] as number)) / ((xs[i + 1] as number) - (xs[i] as number));
  if (last === 1) return secant(0);
  const middle = Math.min(Math.max(index, 1), last - 1);
  const before = secant(middle - 1);
  const after = secant(middle);
  const bend = (after - before) / ((xs[middle + 1] as number) - (xs[middle - 1] as number));
  const here = 2 * (xs[index] as number) - (xs[middle - 1] as number) - (xs[middle] as number);
  return before + bend * here;
}
