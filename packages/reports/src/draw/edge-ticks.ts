import type { Bound } from "@wingseed/engine";
import { element, pathThrough, type SvgNode } from "./node.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";

/** What kind of thing a limit is; the shape of its ticks tells it without colour. */
export type LimitFamily = Bound["family"];

/** Distance between ticks and their length [px]. */
const spacing = 12;
const length = 6;

/**
 * Ticks along an edge, on its forbidden side: plain for air, slanted for power, with a cap for strength, crossed for
 * control, and a second line for a rule.
 * @param side +1: to the left when walking along the edge as drawn on screen; −1: to the right
 */
export function edgeTicks(edge: readonly PixelPoint[], side: 1 | -1, family: LimitFamily, stroke: string): SvgNode {
  const along = pointsAlong(edge, spacing);
  const strokes = family === "rule" ? secondLine(edge, side) : along.map(({ at, direction }) => tick(at, direction, side, family)).join("");
  return element("path", { d: strokes, fill: "none", stroke, "stroke-width": 1.25, "data-family": family });
}

/** One tick: `along` and `out` are the axes of its little frame. */
function tick(at: PixelPoint, along: PixelPoint, side: 1 | -1, family: Exclude<LimitFamily, "rule">): string {
  const out: PixelPoint = [side * along[1], -side * along[0]];
  const point = (forward: number, outward: number): PixelPoint => [
    at[0] + forward * along[0] + outward * out[0],
    at[1] + forward * along[1] + outward * out[1],
  ];
  switch (family) {
    case "air":
      return pathThrough([point(0, 0), point(0, length)]);
    case "power":
      return pathThrough([point(-2.5, 0), point(2.5, length)]);
    case "strength":
      return pathThrough([point(0, 0), point(0, length)]) + pathThrough([point(-2.5, length), point(2.5, length)]);
    case "control":
      return pathThrough([point(-2.5, 1), point(2.5, length)]) + pathThrough([point(2.5, 1), point(-2.5, length)]);
  }
}

function secondLine(edge: readonly PixelPoint[], side: 1 | -1): string {
  const shifted = edge.map((point, index): PixelPoint => {
    const [before, after] = [edge[Math.max(0, index - 1)] as PixelPoint, edge[Math.min(edge.length - 1, index + 1)] as PixelPoint];
    const size = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
    return [point[0] + (side * 4 * (after[1] - before[1])) / size, point[1] - (side * 4 * (after[0] - before[0])) / size];
  });
  return pathThrough(shifted);
}
