/** A point in the picture [px]. */
export type PixelPoint = readonly [number, number];

/** Points at equal distances along a line [px], with the direction of the line there. */
export function pointsAlong(
  points: readonly PixelPoint[],
  spacing: number,
  start = spacing / 2,
): readonly { readonly at: PixelPoint; readonly direction: PixelPoint }[] {
  const found: { readonly at: PixelPoint; readonly direction: PixelPoint }[] = [];
  let next = start;
  let passed = 0;
  for (let index = 1; index < points.length; index++) {
    const [x0, y0] = points[index - 1] as PixelPoint;
    const [x1, y1] = points[index] as PixelPoint;
    const length = Math.hypot(x1 - x0, y1 - y0);
    while (length > 0 && next <= passed + length) {
      const share = (next - passed) / length;
      found.push({ at: [x0 + share * (x1 - x0), y0 + share * (y1 - y0)], direction: [(x1 - x0) / length, (y1 - y0) / length] });
      next += spacing;
    }
    passed += length;
  }
  return found;
}

/** Parts of a line between its gaps. */
export function unbroken(points: readonly (PixelPoint | null)[]): readonly (readonly PixelPoint[])[] {
  const parts: PixelPoint[][] = [];
  let part: PixelPoint[] = [];
  for (const point of points) {
    if (point) part.push(point);
    else if (part.length > 0) {
      parts.push(part);
      part = [];
    }
  }
  if (part.length > 0) parts.push(part);
  return parts;
}
