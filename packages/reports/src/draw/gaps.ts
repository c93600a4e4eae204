import type { Gap } from "@wingseed/engine";
import type { DrawContext } from "./context.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import { type Place, placeLabel, type Surroundings } from "./label-placement.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import { frameBox, type PlotFrame } from "./plot-frame.ts";
import { wrapText } from "./text-width.ts";

/** A gap as drawn, and its reason if there was no room to write it. */
export interface DrawnGap {
  readonly node: SvgNode;
  readonly unplaced?: string;
}

/** A stretch of x without an answer: hatched over the whole height, with the reason written on it. */
export function drawGap(gap: Gap, frame: PlotFrame, around: Surroundings, context: DrawContext): DrawnGap {
  const left = Math.max(frame.left, Math.min(frame.x.place(gap.from), frame.x.place(gap.to)));
  const right = Math.min(frame.right, Math.max(frame.x.place(gap.from), frame.x.place(gap.to)));
  const region = { ...frameBox(frame), x: left, width: Math.max(2, right - left) };
  const parts = [hatching(region, context.paint("control-edge"))];
  const { place, lines } = reasonPlace(gap.reason, region, frame, around);
  if (place)
    parts.push(label(lines, place.box, place.anchor, { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") }));
  const node = group("gap", parts, { "data-reason": gap.reason });
  return place ? { node } : { node, unplaced: gap.reason };
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
  around: Surroundings,
): { readonly place: Place | undefined; readonly lines: readonly string[] } {
  const size = textSize.small;
  for (const width of [region.width - 12, 200, 140]) {
    if (width < 60) continue;
    const lines = wrapText(reason, size, width);
    const block = textBlock(lines, size);
    const middle = region.x + region.width / 2;
    const left = Math.min(Math.max(frame.left + 4, middle - block.width / 2), frame.right - 4 - block.width);
    const preferred = [0.06, 0.25, 0.45, 0.65, 0.8].map(
      (share): Place => ({ anchor: "middle", box: { x: left, y: frame.top + share * region.height, ...block } }),
    );
    const place = placeLabel({ lines, size, point: [middle, frame.top + region.height / 2], preferred }, around);
    if (place) return { place, lines };
  }
  return { place: undefined, lines: [] };
}
