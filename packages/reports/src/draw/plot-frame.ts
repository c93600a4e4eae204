import type { AxisScale } from "./axis-scale.ts";
import type { DrawContext } from "./context.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import { element, group, type SvgNode } from "./node.ts";
import { textWidth, wrapText } from "./text-width.ts";

/** The plotting area [px] and its two scales. */
export interface PlotFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: AxisScale;
  readonly y: AxisScale;
}

/** Room above the plot for the title of the y axis. */
export const titleRoom = 34;
const tickLabelRoom = 28;
const axisTitleRoom = 22;
/** Room under the plot for tick labels and title of the x axis. */
export const axisRoom = tickLabelRoom + axisTitleRoom;

export function frameBox(frame: PlotFrame): Box {
  return { x: frame.left, y: frame.top, width: frame.right - frame.left, height: frame.bottom - frame.top };
}

/** The y axis: title above, hairlines across, figures left. */
export function yAxis(frame: PlotFrame, context: DrawContext): SvgNode {
  const size = textSize.axis;
  const ink = context.paint("ink-2");
  const parts: SvgNode[] = [];
  for (const tick of frame.y.ticks) {
    parts.push(hairline([frame.left, tick.at, frame.right, tick.at], context.paint("hairline")));
    const block = textBlock([tick.text], size);
    const box = { x: frame.left - 8 - block.width, y: tick.at - block.height / 2, ...block };
    parts.push(label([tick.text], box, "end", { size, fill: ink }));
  }
  const title = fittingTitle(frame.y.title, context.width - 8);
  const block = textBlock([title], size);
  parts.push(
    label([title], { x: 0, y: frame.top - titleRoom + 2, ...block }, "start", {
      size,
      fill: context.paint("ink"),
      rim: context.paint("ground"),
    }),
  );
  return group("y-axis", parts);
}

/** A title in its first words where it is wider than the room for it; the unit stays, the caption has the whole. */
function fittingTitle(title: string, room: number): string {
  if (textWidth(title, textSize.axis) <= room) return title;
  const [, words = title, unit = ""] = /^(.*?)(, [^, ]+)?$/u.exec(title) ?? [];
  const end = ` …${unit}`;
  const [first = words] = wrapText(words, textSize.axis, room - textWidth(end, textSize.axis));
  return first + end;
}

/** The x axis: line, figures, and the title under them, ending at the right edge of the plot. */
export function xAxis(frame: PlotFrame, context: DrawContext, labelled = true): SvgNode {
  const size = textSize.axis;
  const parts: SvgNode[] = [
    element("line", { x1: frame.left, x2: frame.right, y1: frame.bottom, y2: frame.bottom, stroke: context.paint("control-edge") }),
  ];
  for (const tick of frame.x.ticks) {
    parts.push(hairline([tick.at, frame.bottom, tick.at, frame.bottom + 4], context.paint("control-edge")));
    if (!labelled) continue;
    const block = textBlock([tick.text], size);
    const box = { x: tick.at - block.width / 2, y: frame.bottom + 10, ...block };
    parts.push(label([tick.text], box, "middle", { size, fill: context.paint("ink-2") }));
  }
  if (labelled) parts.push(xTitle(frame, context));
  return group("x-axis", parts);
}

function xTitle(frame: PlotFrame, context: DrawContext): SvgNode {
  const size = textSize.axis;
  const title = fittingTitle(frame.x.title, context.width - 8);
  const block = textBlock([title], size);
  const box = { x: Math.max(0, frame.right - block.width), y: frame.bottom + tickLabelRoom + 1, ...block };
  return label([title], box, "end", { size, fill: context.paint("ink") });
}

function hairline([x1, y1, x2, y2]: readonly [number, number, number, number], stroke: string): SvgNode {
  return element("line", { x1, y1, x2, y2, stroke, "stroke-width": 1 });
}

/** Width that the figures of a y axis need [px]. */
export function tickColumnWidth(scale: AxisScale): number {
  return Math.max(28, ...scale.ticks.map((tick) => textBlock([tick.text], textSize.axis).width)) + 12;
}

/** How many ticks fit along a width. */
export function ticksAlong(width: number): number {
  return Math.max(2, Math.floor(width / 84));
}
