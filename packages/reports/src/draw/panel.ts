import type { Border, Bound, Gap, NotablePoint, Region, Series } from "@wingseed/engine";
import { readAt } from "./axis-scale.ts";
import { borderPoints, drawBorder, nameAlong, tieTo } from "./borders.ts";
import { drawBound } from "./bounds.ts";
import { type DrawContext, mostHidden } from "./context.ts";
import { drawEndLabels, type EndLabel } from "./end-labels.ts";
import { drawGap } from "./gaps.ts";
import { type Box, label, textBlock, textSize } from "./label.ts";
import { placeLabel, type Surroundings } from "./label-placement.ts";
import { markStyle } from "./meaning.ts";
import { element, group, type SvgNode } from "./node.ts";
import { frameBox, type PlotFrame } from "./plot-frame.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";
import { drawRegion, regionName } from "./regions.ts";
import { type PlacedSeries, placeSeries, seriesMarks } from "./series-marks.ts";
import { wrapText } from "./text-width.ts";

/** What stands inside one pair of axes. */
export interface PanelContent {
  readonly series: readonly Series[];
  readonly bounds?: readonly Bound[];
  readonly borders?: readonly Border[];
  readonly regions?: readonly Region[];
  readonly gaps?: readonly Gap[];
  readonly notable?: readonly NotablePoint[];
  /** Further names for the column on the right, for example of bands. */
  readonly ends?: readonly EndLabel[];
  /** Lines already drawn that labels should not cover. */
  readonly obstacles?: readonly PixelPoint[];
  readonly fourOrdered?: boolean;
  /** True where lines are paths over a plane: their names stand beside them. */
  readonly plane?: boolean;
  /** The limit at which every line ends, written elsewhere. */
  readonly sharedEnd?: string;
}

/** Drawn parts, and the words that found no room and must stand under the picture. */
export interface DrawnPanel {
  readonly parts: readonly SvgNode[];
  readonly unplaced: readonly string[];
}

/** Draws series, limits, gaps, notable points and their names inside a frame. */
export function drawPanel(content: PanelContent, frame: PlotFrame, context: DrawContext): DrawnPanel {
  const placed = content.series.map((series) => placeSeries(series, frame, context, content.fourOrdered));
  const ends = drawEndLabels(
    content.plane ? [] : [...(content.ends ?? []), ...seriesEnds(placed, content.sharedEnd)],
    { left: frame.right, top: frame.top - 10, bottom: frame.bottom },
    context,
  );
  const [borders, regions] = [content.borders ?? [], content.regions ?? []];
  const around: Surroundings = {
    inside: grown(frameBox(frame), 2),
    taken: (content.notable ?? []).map((point) => markBox(point, frame)),
    lines: [
      ...placed.flatMap(linePoints),
      ...borders.flatMap((border) => pointsAlong(borderPoints(border, frame), 6).map((point) => point.at)),
      ...ends.leaders,
      ...(content.obstacles ?? []),
    ],
  };
  const bounds = (content.bounds ?? []).map((bound) => drawBound(bound, frame, around, context)).filter((drawn) => drawn !== undefined);
  const edges = borders.map((border) => drawBorder(border, frame, around, context));
  const gaps = (content.gaps ?? []).map((gap) => drawGap(gap, frame, around, context));
  const notable = (content.notable ?? []).map((point) => drawNotable(point, frame, around, context));
  const paths = content.plane ? firstOfEachName(placed, content.notable ?? []).map((each) => pathName(each, around, context)) : [];
  const names = [...paths, ...regions.map((region, index) => regionName(region, regions.slice(index + 1), frame, around, context))];
  const lines = placed.map((each) => seriesMarks(each, frame, context));
  return {
    parts: [
      ...regions.map((region) => drawRegion(region, frame, around.taken, context)),
      ...gaps.map((drawn) => drawn.node),
      group("lines", lines),
      ends.node,
      ...[...bounds, ...edges, ...notable].map((drawn) => drawn.node),
      ...names.flatMap((drawn) => drawn.node ?? []),
      ...gaps.flatMap((drawn) => drawn.words ?? []),
      ...(context.cursor === undefined ? [] : [cursor(context.cursor, placed, frame, context)]),
    ],
    unplaced: [...bounds, ...edges, ...gaps, ...notable, ...names].flatMap((drawn) => drawn.unplaced ?? []),
  };
}

/** Lines in parts bear their name once, and none where a point of theirs bears it. */
function firstOfEachName(placed: readonly PlacedSeries[], points: readonly NotablePoint[]): readonly PlacedSeries[] {
  const named = new Set(["", ...points.map((point) => point.name)]);
  return placed.filter(
    ({ series: { name } }, index) => !named.has(name) && placed.findIndex((other) => other.series.name === name) === index,
  );
}

/** The name of a path beside it. */
function pathName(
  { series, parts }: PlacedSeries,
  around: Surroundings,
  context: DrawContext,
): { readonly node?: SvgNode; readonly unplaced?: string } {
  const name = nameAlong(series.name, parts.flat(), around, context, 600);
  return name.length > 0 ? { node: group("path-name", name) } : { unplaced: `Line without room for its name: ${series.name}` };
}

/** One end label a name, at the last value of the last series that bears it. */
function seriesEnds(placed: readonly PlacedSeries[], shared: string | undefined): readonly EndLabel[] {
  const byName = new Map<string, EndLabel>();
  for (const { series, style, end } of placed) {
    if (!end || series.name === "") continue;
    const written = series.end && series.end.limit !== shared ? { name: series.end.limit } : {};
    const limit = series.end ? { limit: { ...written, family: series.end.family } } : {};
    byName.set(series.name, { name: series.name, paint: style.paint, at: end, ...limit });
  }
  return [...byName.values()];
}

function markBox(point: NotablePoint, frame: PlotFrame): Box {
  return { x: frame.x.place(point.x) - 2, y: frame.y.place(point.y) - 2, width: 4, height: 4 };
}

interface DrawnNotable {
  readonly node: SvgNode;
  readonly unplaced?: string;
}

/** A named point: a small open circle, its name and its place along x. */
function drawNotable(point: NotablePoint, frame: PlotFrame, around: Surroundings, context: DrawContext): DrawnNotable {
  const at: PixelPoint = [frame.x.place(point.x), frame.y.place(point.y)];
  const paint = context.paint(context.stale ? "ink-3" : markStyle(point.meaning ?? "mode.driven").paint);
  const mark = element("circle", { cx: at[0], cy: at[1], r: 4, fill: context.paint("ground"), stroke: paint, "stroke-width": 1.75 });
  const bars = intervalBars(point, frame, paint);
  for (const width of [170, 120]) {
    const lines = wrapText(point.name, textSize.small, width);
    const place = placeLabel({ lines, size: textSize.small, point: at }, around, mostHidden(context));
    if (!place) continue;
    const style = { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") };
    const tie = tieTo(place.box, at, context);
    return {
      node: group("notable", [...tie, ...bars, mark, label(lines, place.box, place.anchor, style)], { "data-notable": point.name }),
    };
  }
  const where = readAt(frame.x, point.x);
  return { node: group("notable", [...bars, mark], { "data-notable": point.name }), unplaced: `at ${where}: ${point.name}` };
}

/** Thin strokes as wide as a point's interval. */
function intervalBars({ x, y, halfWidth = {} }: NotablePoint, frame: PlotFrame, stroke: string): readonly SvgNode[] {
  const stretch = (along: "x" | "y", half: number) => {
    const [low, high] =
      along === "x" ? [frame.x.place(x - half), frame.x.place(x + half)] : [frame.y.place(y - half), frame.y.place(y + half)];
    const at = along === "x" ? frame.y.place(y) : frame.x.place(x);
    const ends = along === "x" ? { x1: low, x2: high, y1: at, y2: at } : { x1: at, x2: at, y1: low, y2: high };
    return element("line", { ...ends, stroke, "stroke-width": 1.5, "data-part": "interval" });
  };
  return (["x", "y"] as const).flatMap((along) => (halfWidth[along] ? [stretch(along, halfWidth[along])] : []));
}

function linePoints(placed: PlacedSeries): readonly PixelPoint[] {
  return placed.parts.flatMap((part) => [...part, ...pointsAlong(part, 8).map((point) => point.at)]);
}

function cursor(x: number, placed: readonly PlacedSeries[], frame: PlotFrame, context: DrawContext): SvgNode {
  const at = frame.x.place(x);
  const stroke = context.paint("handle");
  const line = element("line", { x1: at, x2: at, y1: frame.top, y2: frame.bottom, stroke, "stroke-width": 1 });
  const dots = placed.flatMap(({ parts }) => parts.flatMap((part) => heightAt(part, at) ?? []));
  return group("cursor", [line, ...dots.map((y) => element("circle", { cx: at, cy: y, r: 3.5, fill: stroke }))]);
}

function heightAt(part: readonly PixelPoint[], at: number): number | undefined {
  for (let index = 1; index < part.length; index++) {
    const [[x0, y0], [x1, y1]] = [part[index - 1] as PixelPoint, part[index] as PixelPoint];
    if (at >= Math.min(x0, x1) && at <= Math.max(x0, x1) && x0 !== x1) return y0 + ((at - x0) / (x1 - x0)) * (y1 - y0);
  }
  return undefined;
}

function grown(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, width: box.width + 2 * by, height: box.height + 2 * by };
}

/** Lines of words under a picture, for what found no room in it. */
export function wordsUnder(
  words: readonly string[],
  top: number,
  context: DrawContext,
): { readonly node: SvgNode; readonly height: number } {
  const lines = words.flatMap((each) => wrapText(each, textSize.small, context.width - 4));
  if (lines.length === 0) return { node: group("words-under", []), height: 0 };
  const block = textBlock(lines, textSize.small);
  const node = group("words-under", [
    label(lines, { x: 0, y: top, ...block }, "start", { size: textSize.small, fill: context.paint("ink-2") }),
  ]);
  return { node, height: block.height + 6 };
}
