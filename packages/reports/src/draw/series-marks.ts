import type { Series } from "@wingseed/engine";
import type { DrawContext } from "./context.ts";
import { type MarkStyle, markStyle } from "./meaning.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import type { PlotFrame } from "./plot-frame.ts";
import { type PixelPoint, pointsAlong, unbroken } from "./polyline.ts";

/** A series with its places in the picture. */
export interface PlacedSeries {
  readonly series: Series;
  readonly style: MarkStyle;
  readonly parts: readonly (readonly PixelPoint[])[];
  /** Last point with a value. */
  readonly end?: PixelPoint;
}

export function placeSeries(series: Series, frame: PlotFrame, context: DrawContext, fourOrdered = false): PlacedSeries {
  const points = series.x.map((x, index): PixelPoint | null => {
    const y = series.y[index];
    return y === null || y === undefined ? null : [frame.x.place(x), frame.y.place(y)];
  });
  const weight = series.weight ?? "full";
  const style = markStyle(series.meaning, { weight, coarse: context.coarse, stale: context.stale, fourOrdered });
  const parts = unbroken(points);
  const end = parts.at(-1)?.at(-1);
  return { series, style, parts, ...(end ? { end } : {}) };
}

/** The marks of one series: line, dash, rings, crosses or ground, by its meaning. */
export function seriesMarks(placed: PlacedSeries, frame: PlotFrame, context: DrawContext): SvgNode {
  const { series, style, parts } = placed;
  const stroke = context.paint(style.paint);
  const marks =
    series.shape === "points" && (style.shape === "line" || style.shape === "rings")
      ? parts.flat().map((point) => dot(point, { ...style, width: style.width + 1 }, stroke, context))
      : parts.flatMap((points) => partMarks(points, style, frame, context));
  return group("series", marks, { "data-series": series.name, "data-meaning": series.meaning });
}

function partMarks(points: readonly PixelPoint[], style: MarkStyle, frame: PlotFrame, context: DrawContext): readonly SvgNode[] {
  const stroke = context.paint(style.paint);
  if (style.shape === "crosses") return points.map((point) => cross(point, stroke));
  if (style.shape === "wedges") return points.map((point) => wedge(point, stroke));
  const [only, second] = points;
  if (only && !second) return [dot(only, style, stroke, context)];
  const line = element("path", {
    d: pathThrough(points),
    fill: "none",
    stroke,
    "stroke-width": style.width,
    "stroke-dasharray": style.dash,
    "stroke-linejoin": "round",
    "stroke-linecap": style.dash ? "butt" : "round",
  });
  if (style.shape === "rings") return [line, ...rings(points, stroke, context)];
  if (style.shape === "ground") return [groundUnder(points, frame, context), line];
  return [line];
}

function rings(points: readonly PixelPoint[], stroke: string, context: DrawContext): readonly SvgNode[] {
  return pointsAlong(points, 56, 28).map((point) => ring(point.at, stroke, context));
}

/** The open ring that says: the rotor turns free here. */
export function ring([cx, cy]: PixelPoint, stroke: string, context: DrawContext, radius = 3.2): SvgNode {
  return element("circle", { cx, cy, r: radius, fill: context.paint("ground"), stroke, "stroke-width": 1.5 });
}

function groundUnder(points: readonly PixelPoint[], frame: PlotFrame, context: DrawContext): SvgNode {
  const [first, last] = [points[0] as PixelPoint, points.at(-1) as PixelPoint];
  const closed: readonly PixelPoint[] = [[first[0], frame.bottom], ...points, [last[0], frame.bottom]];
  return element("path", { d: pathThrough(closed, true), fill: context.paint("relief-4") });
}

function cross([x, y]: PixelPoint, stroke: string): SvgNode {
  return element("path", { d: `M${x - 4} ${y}H${x + 4}M${x} ${y - 4}V${y + 4}`, stroke, "stroke-width": 1.5, fill: "none" });
}

/** A wedge that points down at a value. */
export function wedge([x, y]: PixelPoint, fill: string): SvgNode {
  const corners: readonly PixelPoint[] = [
    [x - 5, y - 9],
    [x + 5, y - 9],
    [x, y],
  ];
  return element("path", { d: pathThrough(corners, true), fill });
}

/** A value alone between gaps. */
function dot(at: PixelPoint, style: MarkStyle, stroke: string, context: DrawContext): SvgNode {
  return style.shape === "rings" ? ring(at, stroke, context) : element("circle", { cx: at[0], cy: at[1], r: style.width, fill: stroke });
}
