import type { Box } from "./label.ts";
import type { PixelPoint } from "./polyline.ts";

/** One straight edge: which side is kept, and where a line crosses it. */
interface Edge {
  readonly axis: 0 | 1;
  readonly at: number;
  readonly keepAbove: boolean;
}

/** The parts of a line or outline inside a box. An outline stays closed, along the edges of the box. */
export function cutAt(points: readonly PixelPoint[], closed: boolean, box: Box): readonly (readonly PixelPoint[])[] {
  const edges: readonly Edge[] = [
    { axis: 0, at: box.x, keepAbove: true },
    { axis: 0, at: box.x + box.width, keepAbove: false },
    { axis: 1, at: box.y, keepAbove: true },
    { axis: 1, at: box.y + box.height, keepAbove: false },
  ];
  if (closed) {
    const kept = edges.reduce(keptOutline, points);
    return kept.length > 1 ? [kept] : [];
  }
  return edges.reduce<readonly (readonly PixelPoint[])[]>((parts, edge) => parts.flatMap((part) => keptParts(part, edge)), [points]);
}

function inside(point: PixelPoint, { axis, at, keepAbove }: Edge): boolean {
  return keepAbove ? point[axis] >= at : point[axis] <= at;
}

function crossing(from: PixelPoint, to: PixelPoint, { axis, at }: Edge): PixelPoint {
  const share = (at - from[axis]) / (to[axis] - from[axis]);
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
}

function keptOutline(points: readonly PixelPoint[], edge: Edge): readonly PixelPoint[] {
  return points.flatMap((point, index) => {
    const before = points.at(index - 1) as PixelPoint;
    const isInside = inside(point, edge);
    const cross = isInside === inside(before, edge) ? [] : [crossing(before, point, edge)];
    return isInside ? [...cross, point] : cross;
  });
}

function keptParts(points: readonly PixelPoint[], edge: Edge): readonly (readonly PixelPoint[])[] {
  const parts: PixelPoint[][] = [];
  let part: PixelPoint[] = [];
  points.forEach((point, index) => {
    const before = points[index - 1];
    const isInside = inside(point, edge);
    if (before && isInside !== inside(before, edge)) part.push(crossing(before, point, edge));
    if (isInside) part.push(point);
    else if (part.length > 0) {
      parts.push(part);
      part = [];
    }
  });
  if (part.length > 0) parts.push(part);
  return parts.filter((each) => each.length > 1);
}
