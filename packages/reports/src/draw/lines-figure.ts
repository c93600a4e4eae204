import type { Axis, LinesFigure, RotorRibbon } from "@wingseed/engine";
import { type AxisScale, axisScale, extentOf } from "./axis-scale.ts";
import type { DrawContext } from "./context.ts";
import { gapsOf } from "./emptiness.ts";
import { endColumnHeight, endColumnWidth } from "./end-labels.ts";
import { ordersFour } from "./meaning.ts";
import type { SvgNode } from "./node.ts";
import { drawPanel, wordsUnder } from "./panel.ts";
import { picture } from "./picture.ts";
import { axisRoom, type PlotFrame, tickColumnWidth, ticksAlong, titleRoom, xAxis, yAxis } from "./plot-frame.ts";
import { ribbonRoom, rotorRibbon } from "./ribbon.ts";

/** Lines over one pair of axes, with limits, gaps, notable points and names at the ends of the lines. */
export function drawLines(figure: LinesFigure, context: DrawContext): SvgNode {
  const notable = figure.notable ?? [];
  const areas = [...(figure.borders ?? []), ...(figure.regions ?? [])];
  const xs = [...figure.series, ...areas].flatMap((each) => each.x);
  const ys = [...figure.series, ...areas].flatMap((each) => each.y);
  const isPlane = figure.plane === true;
  const gaps = gapsOf({ ...figure, xs, ys: isPlane ? [...ys, ...notable.map((point) => point.y)] : ys });
  const shared = sharedEnd(figure.series);
  const names = isPlane ? [] : endNames(figure.series, shared);
  const frame = plotFrame(
    {
      x: figure.x,
      y: figure.y,
      xs: withRoomFor(figure, "x", [
        ...xs,
        ...notable.map((point) => point.x),
        ...gaps.flatMap((gap) => [gap.from, gap.to]),
        ...boundValues(figure, "x"),
      ]),
      ys: withRoomFor(figure, "y", [...ys, ...notable.map((point) => point.y), ...boundValues(figure, "y")]),
      zeroBased: figure.zeroBased ?? false,
      names,
      lowest: isPlane ? 150 : 0,
    },
    context,
  );
  const panel = drawPanel(
    { ...figure, gaps, fourOrdered: ordersFour(figure), ...(shared === undefined ? {} : { sharedEnd: shared }) },
    frame,
    context,
  );
  const once = shared === undefined ? [] : [`Every line ends at the same limit: ${shared}.`];
  return finishPlot(figure, frame, { ribbon: figure.ribbon, parts: panel.parts, unplaced: [...once, ...panel.unplaced] }, context);
}

/** Over a plane, limits at the edge of the data keep some room beyond them for what they forbid; zero stays an edge. */
function withRoomFor<Value extends number | null>(
  figure: LinesFigure,
  axis: "x" | "y",
  values: readonly Value[],
): readonly (Value | number)[] {
  const extent = figure.plane ? extentOf(values) : undefined;
  if (!extent) return values;
  const [low, high] = extent;
  const limits = [...boundValues(figure, axis), ...(figure.borders ?? []).flatMap((border) => border[axis])];
  const room = 0.05 * (high - low);
  const beyond = [...(limits.includes(low) && low !== 0 ? [low - room] : []), ...(limits.includes(high) ? [high + room] : [])];
  return [...values, ...beyond];
}

function boundValues(figure: LinesFigure, axis: "x" | "y"): readonly number[] {
  return (figure.bounds ?? []).filter((bound) => bound.axis === axis).map((bound) => bound.value);
}

/** The limit at which all of several lines end: it is written once under the picture instead of at every line. */
function sharedEnd(series: LinesFigure["series"]): string | undefined {
  const limits = new Set(series.map((each) => each.end?.limit));
  const [limit] = limits;
  return series.length > 1 && limits.size === 1 ? limit : undefined;
}

/** The names that will stand at line ends, each once, with the limits that are not written elsewhere. */
export function endNames(
  series: readonly { readonly name: string; readonly end?: { readonly limit: string } }[],
  shared?: string,
): readonly { readonly name: string; readonly limit?: string }[] {
  const named = (each: (typeof series)[number]) =>
    each.end && each.end.limit !== shared ? { name: each.name, limit: each.end.limit } : { name: each.name };
  return [...new Map(series.filter((each) => each.name !== "").map((each) => [each.name, named(each)])).values()];
}

export interface FrameWish {
  readonly x: Axis;
  readonly y: Axis;
  readonly xs: readonly number[];
  readonly ys: readonly (number | null)[];
  readonly zeroBased: boolean;
  readonly names: readonly { readonly name: string; readonly limit?: string }[];
  /** Least height [px], whatever is wished. */
  readonly lowest?: number;
}

/** One plot as wide as the picture allows, tall enough for its end labels. */
export function plotFrame(wish: FrameWish, context: DrawContext): PlotFrame {
  const top = titleRoom;
  const own = Math.min(340, Math.max(200, context.width * 0.42));
  const wished = context.plotHeight === undefined ? own : Math.max(context.plotHeight, wish.lowest ?? 0);
  const bottom = top + Math.max(wished, endColumnHeight(wish.names, context.width) + 8);
  const extent = extentOf(wish.ys);
  const scale = axisScale({
    axis: wish.y,
    extent: extent ?? [0, 1],
    range: [bottom, top],
    tickCount: Math.max(3, Math.floor((bottom - top) / 52)),
    zeroBased: wish.zeroBased,
    system: context.system,
  });
  // Figures on an axis that nothing was measured on would be made up.
  const y = extent ? scale : { ...scale, ticks: [] };
  const left = tickColumnWidth(y);
  const right = context.width - endColumnWidth(wish.names, context.width);
  return { left, right, top, bottom, y, x: xScale(wish.x, wish.xs, [left, right], context) };
}

export function xScale(axis: Axis, xs: readonly number[], range: readonly [number, number], context: DrawContext): AxisScale {
  const extent = extentOf(xs);
  const scale = axisScale({ axis, extent: extent ?? [0, 1], range, tickCount: ticksAlong(range[1] - range[0]), system: context.system });
  return extent ? scale : { ...scale, ticks: [] };
}

interface PlotParts {
  readonly parts: readonly SvgNode[];
  readonly unplaced: readonly string[];
  readonly ribbon: RotorRibbon | undefined;
}

/** Adds axes, ribbon and the words that found no room, and closes the picture. */
export function finishPlot(figure: Parameters<typeof picture>[0], frame: PlotFrame, plot: PlotParts, context: DrawContext): SvgNode {
  const under = frame.bottom + axisRoom;
  const ribbon = plot.ribbon ? [rotorRibbon(plot.ribbon, { ...frame, top: under + 6 }, context)] : [];
  const below = under + (plot.ribbon ? ribbonRoom : 0);
  const words = wordsUnder(plot.unplaced, below + 4, context);
  const parts = [yAxis(frame, context), ...plot.parts, xAxis(frame, context), ...ribbon, words.node];
  return picture(figure, below + words.height + 4, parts, context, frame);
}
