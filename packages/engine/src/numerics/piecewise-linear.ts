/** Value of a piecewise-linear curve through (x, y), held constant beyond its ends. `x` strictly ascending. */
export function piecewiseLinear(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  const last = x.length - 1;
  if (at <= (x[0] as number)) return y[0] as number;
  if (at >= (x[last] as number)) return y[last] as number;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((x[middle] as number) <= at) low = middle;
    else high = middle;
  }
  const x0 = x[low] as number;
  const y0 = y[low] as number;
  return y0 + (((y[high] as number) - y0) * (at - x0)) / ((x[high] as number) - x0);
}
