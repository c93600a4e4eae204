import { bandOpacity, type DrawContext } from "./context.ts";
import { edgeTicks, type LimitFamily } from "./edge-ticks.ts";
import { label, leader, textBlock, textSize } from "./label.ts";
import { columnHeight, spreadInColumn } from "./label-placement.ts";
import { element, group, type SvgNode } from "./node.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";
import { textWidth, wrapText } from "./text-width.ts";
import type { TokenName } from "./theme.ts";

/** What is written at the end of a line or a band. */
export interface EndLabel {
  readonly name: string;
  readonly paint: TokenName;
  readonly at: PixelPoint;
  /** The limit that ends it, with its family; without a name where it is written once for all lines. */
  readonly limit?: { readonly name?: string; readonly family: LimitFamily };
  /** True for bands: a little square of their colour stands before the name. */
  readonly swatch?: boolean;
}

/** Middles of neighbouring end labels are at least this far apart [px]. */
const pitch = 20;
const leaderRoom = 14;
const swatchRoom = 14;

/** Width of the column of end labels right of a plot [px]. */
export function endColumnWidth(names: readonly { readonly name: string; readonly limit?: string }[], pictureWidth: number): number {
  if (names.length === 0) return 20;
  const allowed = allowedWidth(pictureWidth);
  const widest = Math.max(
    ...names.flatMap((each) => wrappedName(each.name, each.limit, allowed).map((line) => textWidth(line, textSize.label))),
  );
  return leaderRoom + swatchRoom + widest + 2;
}

/** Height that the end labels need at least [px]. */
export function endColumnHeight(names: readonly { readonly name: string; readonly limit?: string }[], pictureWidth: number): number {
  const allowed = allowedWidth(pictureWidth);
  const heights = names.map((each) => textBlock(wrappedName(each.name, each.limit, allowed), textSize.label).height + 3);
  return columnHeight(heights, pitch);
}

/** The column as drawn, and points along its leader lines, which other names should not cover. */
export interface DrawnEnds {
  readonly node: SvgNode;
  readonly leaders: readonly PixelPoint[];
}

/** Names at the ends of lines, 20 px apart, tied to their ends by leader lines where they had to move. */
export function drawEndLabels(
  ends: readonly EndLabel[],
  column: { readonly left: number; readonly top: number; readonly bottom: number },
  context: DrawContext,
): DrawnEnds {
  const allowed = allowedWidth(context.width);
  const blocks = ends.map((end) => {
    const lines = wrappedName(end.name, end.limit?.name, allowed);
    return { end, lines, ...textBlock(lines, textSize.label) };
  });
  const wishes = blocks.map((block) => ({ middle: block.end.at[1], height: block.height + 3 }));
  const middles = spreadInColumn(wishes, { top: column.top, bottom: column.bottom, pitch });
  const left = column.left + leaderRoom;
  const leaders: PixelPoint[] = [];
  const parts = blocks.flatMap(({ end, lines, width, height }, index) => {
    const middle = middles[index] as number;
    const marks: SvgNode[] = [];
    if (Math.abs(middle - end.at[1]) > 3 || column.left - end.at[0] > 6) {
      const tie = [
        [end.at[0] + (end.limit ? 9 : 3), end.at[1]],
        [left - 3, middle],
      ] as const;
      marks.push(leader(...tie, context.paint("control-edge")));
      leaders.push(...pointsAlong(tie, 6).map((point) => point.at));
    }
    if (end.swatch) marks.push(swatch(left, middle, end.paint, context));
    if (end.limit) marks.push(limitEnd(end.at, end.limit.family, context));
    const box = { x: left + (end.swatch ? swatchRoom : 0), y: middle - height / 2, width, height };
    marks.push(label(lines, box, "start", { fill: labelInk(end.paint, context) }));
    return marks;
  });
  return { node: group("end-labels", parts), leaders };
}

/** As opaque as the bands it stands for. */
function swatch(x: number, middle: number, paint: TokenName, context: DrawContext): SvgNode {
  return element("rect", { x, y: middle - 5, width: 10, height: 10, fill: context.paint(paint), "fill-opacity": bandOpacity(context) });
}

function allowedWidth(pictureWidth: number): number {
  return Math.max(80, Math.min(200, pictureWidth * 0.28));
}

/** A short upright bar with ticks to its right: nothing lies beyond. */
function limitEnd([x, y]: PixelPoint, family: LimitFamily, context: DrawContext): SvgNode {
  const stroke = context.paint("ink");
  const bar: readonly PixelPoint[] = [
    [x, y + 12],
    [x, y - 12],
  ];
  return group("limit-end", [
    element("line", { x1: x, x2: x, y1: y - 12, y2: y + 12, stroke, "stroke-width": 1.75 }),
    edgeTicks(bar, -1, family, stroke),
  ]);
}

/** Text needs more contrast than lines: category colours are kept for marks, their names are written in ink. */
function labelInk(paint: TokenName, context: DrawContext): string {
  return context.paint(paint === "ink-3" ? "ink-3" : "ink");
}

function wrappedName(name: string, limit: string | undefined, allowed: number): readonly string[] {
  const lines = wrapText(name, textSize.label, allowed);
  return limit === undefined ? lines : [...lines, ...wrapText(`ends: ${limit}`, textSize.label, allowed)];
}
