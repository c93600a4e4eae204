import type { GridFigure } from "@wingseed/engine";
import { displayUnit, inUnit } from "../format/index.ts";
import { type AxisScale, axisScale, axisTitle, extentOf } from "./axis-scale.ts";
import type { DrawContext } from "./context.ts";
import { hatching } from "./gaps.ts";
import { label, textBlock, textSize } from "./label.ts";
import { element, group, type SvgNode } from "./node.ts";
import { wordsUnder } from "./panel.ts";
import { picture } from "./picture.ts";
import { axisRoom, type PlotFrame, tickColumnWidth, ticksAlong, titleRoom, xAxis, yAxis } from "./plot-frame.ts";
import type { TokenName } from "./theme.ts";

const steps = 7;

/** Values over two axes as fields of seven steps, with a bar that says what each step stands for. */
export function drawGrid(figure: GridFigure, context: DrawContext): SvgNode {
  const frame = gridFrame(figure, context);
  const bands = colourBands(figure, context);
  const cells = figure.ys.flatMap((_, row) => figure.xs.map((_x, column) => cell(figure, frame, bands, [row, column], context)));
  const edge = element("rect", {
    x: frame.left,
    y: frame.top,
    width: frame.right - frame.left,
    height: frame.bottom - frame.top,
    fill: "none",
    stroke: context.paint("control-edge"),
  });
  const isEmpty = extentOf(figure.values) === undefined;
  const why = `no ${figure.value.label} at any ${figure.x.label} and ${figure.y.label}`;
  const bar = isEmpty ? wordsUnder([why], frame.bottom + axisRoom + 4, context).node : colourBar(figure, bands, frame, context);
  return picture(
    figure,
    frame.bottom + axisRoom + 58,
    [yAxis(frame, context), group("cells", cells), edge, xAxis(frame, context), bar],
    context,
    frame,
  );
}

function gridFrame(figure: GridFigure, context: DrawContext): PlotFrame {
  const top = titleRoom;
  const bottom = top + (context.plotHeight ?? Math.min(340, Math.max(200, context.width * 0.45)));
  const scale = (axis: GridFigure["x"], values: readonly number[], range: readonly [number, number], tickCount: number) =>
    axisScale({ axis, tight: true, extent: cellEdgesExtent(values), range, tickCount, system: context.system });
  const y = scale(figure.y, figure.ys, [bottom, top], Math.max(3, Math.floor((bottom - top) / 52)));
  const left = tickColumnWidth(y);
  const right = context.width - 24;
  return { left, right, top, bottom, y, x: scale(figure.x, figure.xs, [left, right], ticksAlong(right - left)) };
}

/** Edges between cells lie halfway between their centres. */
function cellEdges(values: readonly number[], index: number): readonly [number, number] {
  const here = values[index] as number;
  const [before, after] = [values[index - 1], values[index + 1]];
  const half = ((after ?? here) - (before ?? here)) / (before !== undefined && after !== undefined ? 4 : 2) || 0.5;
  return [before === undefined ? here - half : (before + here) / 2, after === undefined ? here + half : (here + after) / 2];
}

function cellEdgesExtent(values: readonly number[]): readonly [number, number] {
  const edges = values.flatMap((_, index) => cellEdges(values, index));
  return extentOf(edges) ?? [0, 1];
}

interface ColourBands {
  readonly scale: AxisScale;
  paintOf(value: number): TokenName;
  /** True where white or black text is needed instead of the other. */
  readonly low: number;
  readonly high: number;
  readonly diverging: boolean;
}

function colourBands(figure: GridFigure, context: DrawContext): ColourBands {
  const [low, high] = extentOf(figure.values) ?? [0, 1];
  const diverging = low < 0 && high > 0;
  const reach = Math.max(Math.abs(low), Math.abs(high));
  const extent: readonly [number, number] = diverging ? [-reach, reach] : [low, high];
  // Room for half of the last figure beside the bar.
  const width = Math.min(320, context.width - 100);
  const scale = axisScale({ axis: figure.value, extent, range: [0, width], tickCount: 4, system: context.system });
  const [from, to] = scale.domain;
  const family = diverging ? "d" : "w";
  return {
    scale,
    low: from,
    high: to,
    diverging,
    paintOf: (value) => {
      const step = Math.min(steps, Math.max(1, Math.ceil(((value - from) / (to - from)) * steps)));
      return `${family}-${step as 1}`;
    },
  };
}

function cell(
  figure: GridFigure,
  frame: PlotFrame,
  bands: ColourBands,
  [row, column]: readonly [number, number],
  context: DrawContext,
): SvgNode {
  const [x0, x1] = cellEdges(figure.xs, column).map(frame.x.place) as [number, number];
  const [y0, y1] = cellEdges(figure.ys, row).map(frame.y.place) as [number, number];
  const box = { x: Math.min(x0, x1), y: Math.min(y0, y1), width: Math.abs(x1 - x0), height: Math.abs(y1 - y0) };
  const value = figure.values[row * figure.xs.length + column] ?? null;
  if (value === null) return group("no-value", [hatching(box, context.paint("control-edge"))]);
  const paint = context.paint(context.stale ? "hairline" : bands.paintOf(value));
  return element("rect", { ...box, fill: paint, stroke: context.paint("ground"), "stroke-width": 0.5 });
}

/** Every tick, every second or third: as many as have room beside each other, zero among them where it is there. */
function readableTicks(ticks: AxisScale["ticks"]): AxisScale["ticks"] {
  const anchor = Math.max(
    0,
    ticks.findIndex((tick) => Number(tick.text) === 0),
  );
  const width = Math.max(0, ...ticks.map((tick) => textBlock([tick.text], textSize.small).width)) + 6;
  const apart = Math.abs((ticks[1]?.at ?? width) - (ticks[0]?.at ?? 0));
  const stride = Math.max(1, Math.ceil(width / Math.max(apart, 1)));
  return ticks.filter((_, index) => (index - anchor) % stride === 0);
}

function colourBar(figure: GridFigure, bands: ColourBands, frame: PlotFrame, context: DrawContext): SvgNode {
  const top = frame.bottom + axisRoom + 24;
  const [low, high] = bands.scale.domain;
  const unit = displayUnit(figure.value.quantity, Math.max(Math.abs(low), Math.abs(high)), { ...figure.value, system: context.system });
  const title = axisTitle(figure.value, unit);
  const parts: SvgNode[] = [];
  const titleBlock = textBlock([title], textSize.small);
  parts.push(label([title], { x: frame.left, y: top - 22, ...titleBlock }, "start", { size: textSize.small, fill: context.paint("ink") }));
  for (let step = 0; step < steps; step++) {
    const [from, to] = [low + (step / steps) * (high - low), low + ((step + 1) / steps) * (high - low)];
    const [x0, x1] = [frame.left + bands.scale.place(from), frame.left + bands.scale.place(to)];
    const fill = context.paint(context.stale ? "hairline" : bands.paintOf((from + to) / 2));
    parts.push(
      element("rect", { x: x0, y: top, width: x1 - x0, height: 12, fill, stroke: context.paint("control-edge"), "stroke-width": 0.5 }),
    );
  }
  for (const tick of readableTicks(bands.scale.ticks)) {
    const block = textBlock([tick.text], textSize.small);
    const box = { x: frame.left + tick.at - block.width / 2, y: top + 14, ...block };
    parts.push(label([tick.text], box, "middle", { size: textSize.small, fill: context.paint("ink-2") }));
  }
  return group("colour-bar", parts, { "data-low": inUnit(low, unit), "data-high": inUnit(high, unit) });
}
