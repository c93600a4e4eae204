import type { Border } from "@wingseed/engine";
import { type DrawContext, mostHidden } from "./context.ts";
import { edgeTicks } from "./edge-ticks.ts";
import { type Box, label, leader, textSize } from "./label.ts";
import { placeLabel, type Surroundings } from "./label-placement.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import type { PlotFrame } from "./plot-frame.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";
import { wrapText } from "./text-width.ts";

/** A border as drawn, and its name if there was no room for it. */
export interface DrawnBorder {
  readonly node: SvgNode;
  readonly unplaced?: string;
}

/** A limit along a curve: a heavy line, ticks on the forbidden side, its name near its middle. */
export function drawBorder(border: Border, frame: PlotFrame, around: Surroundings, context: DrawContext): DrawnBorder {
  const points = borderPoints(border, frame);
  const stroke = context.paint(context.stale ? "ink-3" : "ink");
  const line = element("path", { d: pathThrough(points), fill: "none", stroke, "stroke-width": 1.75, "stroke-linejoin": "round" });
  const parts = [line, edgeTicks(points, border.forbidden === "left" ? 1 : -1, border.family, stroke)];
  const name = nameAlong(border.name, points, around, context);
  const node = group("border", [...parts, ...name], { "data-series": border.name, "data-meaning": "limit" });
  return name.length > 0 ? { node } : { node, unplaced: `Limit without room for its name: ${border.name}` };
}

export function borderPoints({ x, y }: Pick<Border, "x" | "y">, frame: PlotFrame): readonly PixelPoint[] {
  return x.flatMap((at, index): PixelPoint[] => {
    const value = y[index];
    return value === undefined ? [] : [[frame.x.place(at), frame.y.place(value)]];
  });
}

/** A name at the place along a line where it hides least, tied to it where it stands away; nothing without room. */
export function nameAlong(
  name: string,
  points: readonly PixelPoint[],
  around: Surroundings,
  context: DrawContext,
  weight = 500,
): readonly SvgNode[] {
  const along = pointsAlong(points, 8).map((each) => each.at);
  const shares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95];
  const candidates =
    along.length === 0 ? points.slice(0, 1) : shares.map((share) => along[Math.floor(share * (along.length - 1))] as PixelPoint);
  for (const most of [0, 2, mostHidden(context)]) {
    for (const width of [190, 120]) {
      const lines = wrapText(name, textSize.small, width);
      for (const point of candidates) {
        const place = placeLabel({ lines, size: textSize.small, point, distance: 9 }, around, most);
        if (!place) continue;
        const style = { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground"), weight };
        return [...tieTo(place.box, point, context), label(lines, place.box, place.anchor, style)];
      }
    }
  }
  return [];
}

/** A leader line when a label had to stand away from its point. */
export function tieTo(box: Box, at: PixelPoint, context: DrawContext): readonly SvgNode[] {
  const nearest: PixelPoint = [Math.min(Math.max(at[0], box.x), box.x + box.width), Math.min(Math.max(at[1], box.y), box.y + box.height)];
  const distance = Math.hypot(nearest[0] - at[0], nearest[1] - at[1]);
  return distance > 14 ? [leader(at, nearest, context.paint("control-edge"))] : [];
}
