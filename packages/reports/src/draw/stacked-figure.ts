import type { Series, StackedFigure } from "@wingseed/engine";
import { area, type SeriesPoint, stack } from "d3-shape";
import { bandOpacity, type DrawContext } from "./context.ts";
import { gapsOf } from "./emptiness.ts";
import type { EndLabel } from "./end-labels.ts";
import { endNames, finishPlot, plotFrame } from "./lines-figure.ts";
import { markStyle } from "./meaning.ts";
import { element, group, type SvgNode } from "./node.ts";
import { drawPanel } from "./panel.ts";
import type { PlotFrame } from "./plot-frame.ts";
import type { PixelPoint } from "./polyline.ts";

type Row = Readonly<Record<string, number>>;
interface Band {
  readonly name: string;
  readonly meaning: Series["meaning"];
  /** Lower and upper edge at each x [SI]; null where a part is unknown. */
  readonly edges: readonly (readonly [number, number] | null)[];
}

/** Bands that add up, from zero, parted by the ground's colour and named at their right end; other lines over them. */
export function drawStacked(figure: StackedFigure, context: DrawContext): SvgNode {
  const bands = stackedBands(figure);
  const overlays = figure.overlays ?? [];
  const ends = bands.flatMap((band) => band.edges.flatMap((edge) => (edge ? [edge[1]] : [])));
  const xs = [...figure.at, ...overlays.flatMap((series) => series.x)];
  const ys = [...ends, ...overlays.flatMap((series) => series.y)];
  const gaps = gapsOf({ ...figure, xs, ys });
  const frame = plotFrame(
    {
      x: figure.x,
      y: figure.y,
      xs: [...xs, ...gaps.flatMap((gap) => [gap.from, gap.to])],
      ys,
      zeroBased: true,
      names: [...endNames(overlays), ...bands.filter(reachesEnd).map((band) => ({ name: band.name }))],
    },
    context,
  );
  const drawn = bands.map((band) => bandArea(band, figure.at, frame, context));
  const panel = drawPanel(
    {
      series: overlays,
      gaps,
      ...(figure.notable ? { notable: figure.notable } : {}),
      ends: bandEnds(bands, figure.at, frame, context),
      obstacles: filledPoints(bands, figure.at, frame),
    },
    frame,
    context,
  );
  return finishPlot(figure, frame, { ribbon: figure.ribbon, ...panel, parts: [group("bands", drawn), ...panel.parts] }, context);
}

/** Lower and upper edges of every layer; a place where any layer is unknown has no sum and so no band. */
export function stackedBands(figure: StackedFigure): readonly Band[] {
  const known = figure.at.map((_, index) => figure.layers.every((layer) => typeof layer.values[index] === "number"));
  const rows = figure.at.map(
    (_, index): Row => Object.fromEntries(figure.layers.map((layer, order) => [String(order), layer.values[index] ?? 0])),
  );
  const stacked = stack<Row>().keys(figure.layers.map((_, order) => String(order)))(rows);
  return figure.layers.map((layer, order) => ({
    name: layer.name,
    meaning: layer.meaning,
    edges: (stacked[order] ?? []).map((edge: SeriesPoint<Row>, index) => (known[index] ? ([edge[0], edge[1]] as const) : null)),
  }));
}

function bandArea(band: Band, at: readonly number[], frame: PlotFrame, context: DrawContext): SvgNode {
  const style = markStyle(band.meaning, { stale: context.stale });
  const outline = area<number>()
    .defined((index) => band.edges[index] !== null)
    .x((index) => frame.x.place(at[index] as number))
    .y0((index) => frame.y.place(band.edges[index]?.[0] ?? 0))
    .y1((index) => frame.y.place(band.edges[index]?.[1] ?? 0))
    .digits(2);
  return element("path", {
    d: outline(at.map((_, index) => index)) ?? "",
    fill: context.paint(style.paint),
    "fill-opacity": bandOpacity(context),
    stroke: context.paint("ground"),
    "stroke-width": 1.5,
    "data-series": band.name,
    "data-meaning": band.meaning,
  });
}

function reachesEnd(band: Band): boolean {
  return band.edges.some((edge) => edge !== null);
}

function bandEnds(bands: readonly Band[], at: readonly number[], frame: PlotFrame, context: DrawContext): readonly EndLabel[] {
  return bands.flatMap((band) => {
    const last = band.edges.findLastIndex((edge) => edge !== null);
    const edge = band.edges[last];
    if (!edge) return [];
    const middle = frame.y.place((edge[0] + edge[1]) / 2);
    return [
      {
        name: band.name,
        paint: markStyle(band.meaning, { stale: context.stale }).paint,
        at: [frame.x.place(at[last] as number), middle] as const,
        swatch: true,
      },
    ];
  });
}

/** Points spread over the bands: names are put on bare ground where there is room. */
function filledPoints(bands: readonly Band[], at: readonly number[], frame: PlotFrame): readonly PixelPoint[] {
  const edges = bands.at(-1)?.edges ?? [];
  const points: PixelPoint[] = [];
  edges.forEach((edge, index) => {
    if (!edge) return;
    const x = frame.x.place(at[index] as number);
    for (let y = frame.y.place(edge[1]); y < frame.bottom; y += 14) points.push([x, y]);
  });
  return points;
}
