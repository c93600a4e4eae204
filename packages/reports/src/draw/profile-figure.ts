import type { ProfileFigure, ProfilePanel } from "@wingseed/engine";
import { type AxisScale, axisScale, extentOf } from "./axis-scale.ts";
import type { DrawContext } from "./context.ts";
import { gapsOf } from "./emptiness.ts";
import { endColumnHeight, endColumnWidth } from "./end-labels.ts";
import { label, textBlock, textSize } from "./label.ts";
import { endNames, xScale } from "./lines-figure.ts";
import { ordersFour } from "./meaning.ts";
import { element, group, type SvgNode } from "./node.ts";
import { drawPanel, wordsUnder } from "./panel.ts";
import { picture } from "./picture.ts";
import { axisRoom, type PlotFrame, tickColumnWidth, titleRoom, xAxis, yAxis } from "./plot-frame.ts";
import { ribbonRoom, rotorRibbon } from "./ribbon.ts";

const panelGap = 8;
const nameRow = 19;

/** Several panels over one shared axis, with named places across all of them and the rotor ribbon below. */
export function drawProfile(figure: ProfileFigure, context: DrawContext): SvgNode {
  const columns = figure.panels.map((panel) => endColumnWidth(endNames(panel.series), context.width));
  const right = context.width - Math.max(20, ...columns);
  const rows = notableRows(figure, right, context);
  const frames = stackFrames(figure, right, rows.height, context);
  const last = frames.at(-1);
  if (!last) return picture(figure, 20, [], context);
  const whole: PlotFrame = { ...last, top: frames[0]?.top ?? last.top };
  const panels = figure.panels.map((panel, index) => drawOne(figure, panel, frames[index] as PlotFrame, context));
  const under = last.bottom + axisRoom;
  const ribbon = figure.ribbon ? [rotorRibbon(figure.ribbon, { ...last, top: under + 6 }, context)] : [];
  const below = under + (figure.ribbon ? ribbonRoom : 0);
  const words = wordsUnder(
    panels.flatMap((panel) => panel.unplaced),
    below + 4,
    context,
  );
  const parts = [
    group("places", rows.draw(frames)),
    ...panels.flatMap((panel, index) => [
      group("panel", [
        yAxis(frames[index] as PlotFrame, context),
        ...panel.parts,
        xAxis(frames[index] as PlotFrame, context, index === frames.length - 1),
      ]),
    ]),
    ...ribbon,
    words.node,
  ];
  return picture(figure, below + words.height + 4, parts, context, whole);
}

function drawOne(figure: ProfileFigure, panel: ProfilePanel, frame: PlotFrame, context: DrawContext) {
  const xs = figure.panels.flatMap((each) => each.series.flatMap((series) => series.x));
  const gaps = gapsOf({ x: figure.x, y: panel.y, xs, ys: panel.series.flatMap((series) => series.y) });
  const bounds = panel.bounds ? { bounds: panel.bounds } : {};
  return drawPanel({ series: panel.series, gaps, ...bounds, fourOrdered: ordersFour(figure) }, frame, context);
}

function stackFrames(figure: ProfileFigure, right: number, start: number, context: DrawContext): readonly PlotFrame[] {
  let top = start + titleRoom;
  const rough = figure.panels.map((panel, index) => {
    const height = Math.max(context.plotHeight ?? (index === 0 ? 150 : 104), endColumnHeight(endNames(panel.series), context.width) + 4);
    const place = { top, bottom: top + height, y: panelScale(panel, [top + height, top], context) };
    top += height + titleRoom + panelGap;
    return place;
  });
  const left = Math.max(...rough.map((place) => tickColumnWidth(place.y)));
  const xs = figure.panels.flatMap((panel) => panel.series.flatMap((series) => series.x));
  const x = xScale(figure.x, xs, [left, right], context);
  return rough.map((place) => ({ ...place, left, right, x }));
}

function panelScale(panel: ProfilePanel, range: readonly [number, number], context: DrawContext): AxisScale {
  const values = [
    ...panel.series.flatMap((series) => series.y),
    ...(panel.bounds ?? []).filter((each) => each.axis === "y").map((each) => each.value),
  ];
  const extent = extentOf(values);
  const scale = axisScale({
    axis: panel.y,
    extent: extent ?? [0, 1],
    range,
    tickCount: Math.max(2, Math.floor((range[0] - range[1]) / 44)),
    zeroBased: panel.zeroBased ?? false,
    system: context.system,
  });
  return extent ? scale : { ...scale, ticks: [] };
}

interface PlaceNames {
  readonly height: number;
  draw(frames: readonly PlotFrame[]): readonly SvgNode[];
}

/** Names of places over the picture, in as many rows as they need, each on an upright line through all panels. */
function notableRows(figure: ProfileFigure, right: number, context: DrawContext): PlaceNames {
  const names = (figure.notable ?? []).toSorted((a, b) => a.x - b.x);
  const rows = new Map<string, number>();
  const layOut = (scale: AxisScale) => {
    const ends: number[] = [];
    return names.map((each) => {
      const block = textBlock([each.name], textSize.small);
      const at = scale.place(each.x);
      const x = Math.max(0, Math.min(at - block.width / 2, context.width - block.width));
      const free = ends.findIndex((end) => end + 6 < x);
      const row = free < 0 ? ends.length : free;
      ends[row] = x + block.width;
      rows.set(each.name, row);
      return { name: each.name, at, row, box: { x, y: row * nameRow, ...block } };
    });
  };
  const xs = figure.panels.flatMap((panel) => panel.series.flatMap((series) => series.x));
  const used = layOut(xScale(figure.x, xs, [52, right], context)).reduce((most, each) => Math.max(most, each.row + 1), 0);
  const height = (used + (used > 1 ? 1 : 0)) * nameRow;
  return {
    height,
    draw: (frames) =>
      layOut((frames[0] as PlotFrame).x).flatMap(({ name, at, box }) => [
        upright(at, box.y + box.height, start(frames) - titleRoom + 2, context),
        ...frames.map((frame) => upright(at, frame.top, frame.bottom, context)),
        label([name], box, "middle", { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") }),
      ]),
  };
}

function start(frames: readonly PlotFrame[]): number {
  return (frames[0] as PlotFrame).top;
}

/** A thin upright line; titles between panels stay clear of it. */
function upright(x: number, y1: number, y2: number, context: DrawContext): SvgNode {
  return element("line", { x1: x, x2: x, y1, y2, stroke: context.paint("control-edge"), "stroke-width": 1 });
}
