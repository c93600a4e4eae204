import type { Region } from "@wingseed/engine";
import { borderPoints } from "./borders.ts";
import { bandOpacity, type DrawContext } from "./context.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import { type Place, placeLabel, type Surroundings } from "./label-placement.ts";
import { markStyle } from "./meaning.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import type { PlotFrame } from "./plot-frame.ts";
import type { PixelPoint } from "./polyline.ts";
import { ring } from "./series-marks.ts";
import { wrapText } from "./text-width.ts";

/** Distance of the rings that fill a region where the rotor turns free [px]. */
const ringPitch = 34;

/** A tint over part of the plane; rings in it say that the rotor turns free there. */
export function drawRegion(region: Region, frame: PlotFrame, taken: readonly Box[], context: DrawContext): SvgNode {
  const outline = borderPoints(region, frame);
  const style = markStyle(region.meaning, { stale: context.stale });
  const paint = context.paint(style.paint);
  const tint = element("path", {
    d: pathThrough(outline, true),
    fill: paint,
    "fill-opacity": 0.12 * bandOpacity(context),
    stroke: context.paint("control-edge"),
    "stroke-width": 1,
  });
  const rings =
    style.shape === "rings"
      ? insidePoints(outline, ringPitch, 8)
          .filter((at) => isClear(at, taken))
          .map((at) => ring(at, paint, context))
      : [];
  return group("region", [tint, ...rings], { "data-series": region.name, "data-meaning": region.meaning });
}

/** True where no name stands. */
function isClear([x, y]: PixelPoint, taken: readonly Box[]): boolean {
  return taken.every((box) => x < box.x - 6 || x > box.x + box.width + 6 || y < box.y - 6 || y > box.y + box.height + 6);
}

/** The name of a region inside it, as deep as there is room, and where no other region lies over it. */
export function regionName(
  region: Region,
  others: readonly Region[],
  frame: PlotFrame,
  around: Surroundings,
  context: DrawContext,
): { readonly node?: SvgNode; readonly unplaced?: string } {
  const outline = borderPoints(region, frame);
  const over = others.map((other) => borderPoints(other, frame));
  const all = insidePoints(outline, 14, 4);
  const alone = all.filter((at) => over.every((other) => !isInside(at, other)));
  const deepest = (alone.length > 0 ? alone : all)
    .map((at) => ({ at, depth: Math.min(...[outline, ...over].map((each) => depthIn(at, each))) }))
    .toSorted((a, b) => b.depth - a.depth)
    .slice(0, 60);
  for (const width of [190, 110]) {
    const lines = wrapText(region.name, textSize.small, width);
    const block = textBlock(lines, textSize.small);
    const preferred = deepest.map(
      ({ at: [x, y] }): Place => ({ anchor: "middle", box: { x: x - block.width / 2, y: y - block.height / 2, ...block } }),
    );
    const place = deepest[0] && placeLabel({ lines, size: textSize.small, point: deepest[0].at, preferred }, around, 6);
    if (place)
      return {
        node: label(lines, place.box, place.anchor, {
          size: textSize.small,
          fill: context.paint("ink"),
          rim: context.paint("ground"),
          weight: 600,
        }),
      };
  }
  return { unplaced: `Area without room for its name: ${region.name}` };
}

/** Points of a grid inside an outline and some way from its edge. */
function insidePoints(outline: readonly PixelPoint[], pitch: number, clear: number): readonly PixelPoint[] {
  const [xs, ys] = [outline.map((point) => point[0]), outline.map((point) => point[1])];
  const found: PixelPoint[] = [];
  let row = 0;
  for (let y = Math.min(...ys) + pitch / 2; y < Math.max(...ys); y += pitch / 2) {
    for (let x = Math.min(...xs) + pitch / (row % 2 === 0 ? 2 : 1); x < Math.max(...xs); x += pitch) {
      if (isInside([x, y], outline) && depthIn([x, y], outline) > clear) found.push([x, y]);
    }
    row++;
  }
  return found;
}

/** By the count of edges that a ray to the right crosses. */
function isInside([x, y]: PixelPoint, outline: readonly PixelPoint[]): boolean {
  let inside = false;
  outline.forEach(([x1, y1], index) => {
    const [x0, y0] = outline.at(index - 1) as PixelPoint;
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
  });
  return inside;
}

/** Distance to the nearest edge [px]. */
function depthIn([x, y]: PixelPoint, outline: readonly PixelPoint[]): number {
  return outline.reduce((least, [x1, y1], index) => {
    const [x0, y0] = outline.at(index - 1) as PixelPoint;
    const length = (x1 - x0) ** 2 + (y1 - y0) ** 2;
    const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / length));
    return Math.min(least, Math.hypot(x - x0 - share * (x1 - x0), y - y0 - share * (y1 - y0)));
  }, Number.POSITIVE_INFINITY);
}
