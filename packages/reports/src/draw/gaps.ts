import type { Gap } from "@wingseed/engine";
import { readAt } from "./axis-scale.ts";
import { type DrawContext, mostHidden } from "./context.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import { type Place, placeLabel, type Surroundings } from "./label-placement.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import { frameBox, type PlotFrame } from "./plot-frame.ts";
import { wrapText } from "./text-width.ts";

/** A gap as drawn, and its reason if there was no room to write it. */
export interface DrawnGap {
  readonly node: SvgNode;
  /** The reason, to be drawn over everything else. */
  readonly words?: SvgNode;
  readonly unplaced?: string;
}

/** A stretch of x without an answer: hatched over the whole height, with the reason written on it. */
export function drawGap(gap: Gap, frame: PlotFrame, around: Surroundings, context: DrawContext): DrawnGap {
  const left = Math.max(frame.left, Math.min(frame.x.place(gap.from), frame.x.place(gap.to)));
  const right = Math.min(frame.right, Math.max(frame.x.place(gap.from), frame.x.place(gap.to)));
  const region = { ...frameBox(frame), x: left, width: Math.max(2, right - left) };
  const node = group("gap", [hatching(region, context.paint("control-edge"))], { "data-reason": gap.reason });
  const { place, lines } = reasonPlace(gap.reason, region, frame, { around, mostCovered: mostHidden(context) });
  if (!place) return { node, unplaced: `${readAt(frame.x, gap.from)} to ${readAt(frame.x, gap.to)}: ${gap.reason}` };
  const style = { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") };
  return { node, words: label(lines, place.box, place.anchor, style) };
}

/** Slanted lines over a rectangle, cut at its edges. */
export function hatching(region: Box, stroke: string, pitch = 9): SvgNode {
  const { x, y, width, height } = region;
  const lines: string[] = [];
  for (let offset = pitch / 2; offset < width + height; offset += pitch) {
    const start = offset <= height ? ([x, y + offset] as const) : ([x + offset - height, y + height] as const);
    const end = offset <= width ? ([x + offset, y] as const) : ([x + width, y + offset - width] as const);
    lines.push(pathThrough([start, end]));
  }
  return element("path", { d: lines.join(""), stroke, "stroke-width": 1, fill: "none", opacity: 0.7 });
}

function reasonPlace(
  reason: string,
  region: Box,
  frame: PlotFrame,
  { around, mostCovered }: { readonly around: Surroundings; readonly mostCovered: number },
): { readonly place: Place | undefined; readonly lines: readonly string[] } {
  const size = textSize.small;
  const [toRight, toLeft] = [frame.right - region.x - 6, region.x + region.width - frame.left - 6];
  for (const width of [region.width - 12, Math.min(200, toRight), Math.min(200, toLeft)]) {
    if (width < 84) continue;
    const lines = wrapText(reason, size, width);
    const block = textBlock(lines, size);
    const wished = width === region.width - 12 ? region.x + region.width / 2 - block.width / 2 : region.x + 4;
    const left = Math.min(Math.max(frame.left + 4, wished), frame.right - 2 - block.width);
    const preferred = [0.04, 0.2, 0.4, 0.6, 0.75].map(
      (share): Place => ({ anchor: "start", box: { x: left, y: frame.top + share * region.height, ...block } }),
    );
    const place = placeLabel({ lines, size, point: [left, frame.top], preferred }, around, mostCovered);
    if (place) return { place, lines };
  }
  return { place: undefined, lines: [] };
}
