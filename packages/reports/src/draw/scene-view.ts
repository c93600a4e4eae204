import type { SceneFigure, SceneLine } from "@wingseed/engine";
import type { DrawContext } from "./context.ts";
import { label, textBlock, textSize } from "./label.ts";
import type { Surroundings } from "./label-placement.ts";
import { markStyle } from "./meaning.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";
import { drawArrows } from "./scene-arrows.ts";
import { drawAttitude } from "./scene-attitude.ts";
import type { SharedNames, ViewCanvas, ViewPlace } from "./scene-canvas.ts";
import { cutAt } from "./scene-cut.ts";
import { drawDimensions } from "./scene-dimensions.ts";
import { drawMarks } from "./scene-marks.ts";
import { namedAt } from "./scene-names.ts";
import { isShown, viewTitles } from "./scene-projection.ts";

export const viewTitleRoom = 26;
/** Labels may stand this far outside the drawing [px]. */
const margin = 24;

export interface DrawnView {
  readonly node: SvgNode;
  readonly bottom: number;
  /** Names without room. */
  readonly unplaced: readonly string[];
  /** What is said in words instead. */
  readonly told: readonly string[];
}

/** One view: title, outlines, lengths, forces, marks and names. */
export function drawView(figure: SceneFigure, place: ViewPlace, shared: SharedNames, context: DrawContext): DrawnView {
  const { look, extent, scale, room, x, y } = place;
  const box = { x, y: y + viewTitleRoom, width: extent.width * scale, height: extent.height * scale };
  const toPaper = ([right, down]: PixelPoint): PixelPoint => [box.x + (right - extent.x) * scale, box.y + (down - extent.y) * scale];
  const lines = figure.lines
    .filter((line) => isShown(line, look.view))
    .flatMap((line) => {
      const points = line.points.map((point) => toPaper(look.place(point)));
      const parts = place.title === undefined ? [points] : cutAt(points, line.closed ?? false, box);
      return parts.map((part) => ({ line, points: part }));
    });
  const title = viewTitle(place.title ?? viewTitles[look.view], x, y, context);
  const around: Surroundings = {
    inside: {
      x: Math.max(0, box.x - margin),
      y: box.y - 4,
      width: Math.min(box.width + room.right + 2 * margin, context.width - Math.max(0, box.x - margin)),
      height: box.height + margin,
    },
    taken: [],
    lines: lines.flatMap(({ line, points }) =>
      pointsAlong(line.closed ? [...points, points[0] as PixelPoint] : points, 6).map((point) => point.at),
    ),
  };
  const canvas: ViewCanvas = { look, box, place, around, toPaper };
  const frame = place.title === undefined ? [] : [element("rect", { ...box, fill: "none", stroke: context.paint("hairline") })];
  const dimensions = place.title === undefined ? drawDimensions(figure, look, canvas, around, context) : [];
  const attitude = drawAttitude(figure, canvas, context);
  const marks = drawMarks(figure, canvas, shared, context);
  const arrows = drawArrows(figure, canvas, context);
  const names = figure.arrows ? { nodes: [], unplaced: [] } : namedAt(lines, canvas, shared, context);
  const outlines = lines.map(({ line, points }) => outline(line, points, context));
  return {
    node: group("view", [title, ...frame, ...outlines, ...dimensions, ...attitude, ...marks.nodes, ...arrows.nodes, ...names.nodes], {
      "data-view": place.title ?? look.view,
    }),
    bottom: box.y + box.height + room.below,
    unplaced: [...marks.unplaced, ...arrows.unplaced, ...names.unplaced],
    told: arrows.told,
  };
}

function viewTitle(text: string, x: number, y: number, context: DrawContext): SvgNode {
  return label([text], { x, y, ...textBlock([text], textSize.small) }, "start", { size: textSize.small, fill: context.paint("ink-2") });
}

/** An edge, or an outline with a pale inside through which others show. */
function outline(line: SceneLine, points: readonly PixelPoint[], context: DrawContext): SvgNode {
  const style = markStyle(line.meaning, { stale: context.stale });
  const thin = line.weight === "thin" || context.coarse;
  const paint = context.paint(style.paint);
  return element("path", {
    d: pathThrough(points, line.closed),
    fill: line.closed ? paint : "none",
    "fill-opacity": line.closed ? (thin ? 0.06 : 0.14) : undefined,
    stroke: paint,
    "stroke-width": thin ? 1 : 1.75,
    "stroke-dasharray": style.dash,
    "stroke-linejoin": "round",
    "data-series": line.name,
    "data-meaning": line.meaning,
  });
}
