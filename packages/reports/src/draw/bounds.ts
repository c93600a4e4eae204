import type { Bound } from "@wingseed/engine";
import type { DrawContext } from "./context.ts";
import { edgeTicks } from "./edge-ticks.ts";
import { label, textBlock, textSize } from "./label.ts";
import { type Place, placeLabel, type Surroundings } from "./label-placement.ts";
import { element, group, type SvgNode } from "./node.ts";
import type { PlotFrame } from "./plot-frame.ts";
import type { PixelPoint } from "./polyline.ts";

/** A bound as drawn, and its name if there was no room for it. */
export interface DrawnBound {
  readonly node: SvgNode;
  readonly unplaced?: string;
}

/** A bound across the plot: a heavy line, ticks on the forbidden side, its name along it. */
export function drawBound(bound: Bound, frame: PlotFrame, around: Surroundings, context: DrawContext): DrawnBound | undefined {
  const scale = bound.axis === "x" ? frame.x : frame.y;
  const at = scale.place(bound.value);
  const [first, last] = bound.axis === "x" ? [frame.left, frame.right] : [frame.top, frame.bottom];
  if (at < first - 0.5 || at > last + 0.5) return undefined;
  const edge: readonly PixelPoint[] =
    bound.axis === "x"
      ? [
          [at, frame.bottom],
          [at, frame.top],
        ]
      : [
          [frame.left, at],
          [frame.right, at],
        ];
  const stroke = context.paint(context.stale ? "ink-3" : "ink");
  const side = forbiddenSide(bound);
  const [start, end] = edge as readonly [PixelPoint, PixelPoint];
  const line = element("line", { x1: start[0], y1: start[1], x2: end[0], y2: end[1], stroke, "stroke-width": 1.75 });
  const parts = [line, edgeTicks(edge, side, bound.family, stroke)];
  const place = namePlace(bound, at, frame, around);
  if (place) parts.push(label([bound.name], place.box, place.anchor, { size: textSize.small, fill: stroke, rim: context.paint("ground") }));
  const node = group("bound", parts, { "data-bound": bound.name });
  return place ? { node } : { node, unplaced: bound.name };
}

/** Walking up a vertical edge, or right along a level one, larger x and smaller y lie right and left. */
function forbiddenSide(bound: Bound): 1 | -1 {
  if (bound.axis === "x") return bound.forbidden === "above" ? -1 : 1;
  return bound.forbidden === "above" ? 1 : -1;
}

function namePlace(bound: Bound, at: number, frame: PlotFrame, around: Surroundings): Place | undefined {
  const size = textSize.small;
  const block = textBlock([bound.name], size);
  const preferred: Place[] = [];
  for (let step = 0; step <= 8; step++) {
    if (bound.axis === "y") {
      const x = frame.left + 8 + (step / 8) * Math.max(0, frame.right - frame.left - block.width - 16);
      const out = bound.forbidden === "above" ? -1 : 1;
      for (const [direction, gap] of [
        [out, 9],
        [-out, 4],
      ] as const) {
        const y = direction < 0 ? at - gap - block.height : at + gap;
        preferred.push({ anchor: "start", box: { x, y, ...block } });
      }
    } else {
      const y = frame.top + 4 + (step / 8) * Math.max(0, frame.bottom - frame.top - block.height - 8);
      const right: Place = { anchor: "start", box: { x: at + (bound.forbidden === "above" ? 10 : 5), y, ...block } };
      const left: Place = { anchor: "end", box: { x: at - (bound.forbidden === "above" ? 5 : 10) - block.width, y, ...block } };
      preferred.push(...(bound.forbidden === "above" ? [right, left] : [left, right]));
    }
  }
  return placeLabel({ lines: [bound.name], size, point: [at, frame.top], preferred, nowhereElse: true }, around);
}
