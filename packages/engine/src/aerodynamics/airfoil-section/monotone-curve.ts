/**
 * A smooth curve through points that overshoots nowhere (Fritsch and Carlson's limits on the slopes, in Fritsch and
 * Butland's harmonic form).
 *
 * Slopes at both ends are zero: every curve here begins or ends at a line of symmetry, or is continued by another.
 *
 * @param xs rising; @param ys of the same length
 * @returns the value at x; outside the points the end value
 * @source fritsch-butland-1984, unchecked
 */
export function monotoneCurve(xs: readonly number[], ys: readonly number[], endSlopes: readonly [number, number]): (x: number) => number {
  const last = xs.length - 1;
  const at = (values: readonly number[], index: number): number => values[index] as number;
  const secants = xs.slice(1).map((x, i) => (at(ys, i + 1) - at(ys, i)) / (x - at(xs, i)));
  const slopes = xs.map((_, i) => {
    if (i === 0) return endSlopes[0];
    if (i === last) return endSlopes[1];
    return harmonicSlope(at(secants, i - 1), at(secants, i), at(xs, i) - at(xs, i - 1), at(xs, i + 1) - at(xs, i));
  });
  return (x) => {
    if (x <= at(xs, 0)) return at(ys, 0);
    if (x >= at(xs, last)) return at(ys, last);
    let i = 0;
    while (x > at(xs, i + 1)) i++;
    const width = at(xs, i + 1) - at(xs, i);
    const t = (x - at(xs, i)) / width;
    const risen = t * t * (3 - 2 * t);
    return at(ys, i) * (1 - risen) + at(ys, i + 1) * risen + width * t * (1 - t) * (at(slopes, i) * (1 - t) - at(slopes, i + 1) * t);
  };
}

function harmonicSlope(before: number, after: number, widthBefore: number, widthAfter: number): number {
  if (before * after <= 0) return 0;
  const weightBefore = 2 * widthAfter + widthBefore;
  const weightAfter = widthAfter + 2 * widthBefore;
  return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
}
