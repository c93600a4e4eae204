import type { SceneFigure } from "@wingseed/engine";
import { roundNumberText, roundStepBelow } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { type Box, label, leader, textBlock, textSize } from "./label.ts";
import { placeLabel, type Surroundings } from "./label-placement.ts";
import { markStyle } from "./meaning.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import { wordsUnder } from "./panel.ts";
import { picture } from "./picture.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";

type Point = SceneFigure["lines"][number]["points"][number];
interface View {
  readonly title: string;
  /** Right and down on paper, from body axes (x forward, y right, z down) [m]. */
  readonly flat: (point: Point) => PixelPoint;
}

const side: View = { title: "from the left", flat: ([x, , z]) => [-x, z] };
const front: View = { title: "from the front", flat: ([, y, z]) => [-y, z] };
const above: View = { title: "from above", flat: ([x, y]) => [-x, -y] };

const titleRoom = 24;
const gap = 28;

/** Three views of lines in space at one scale: from the left and from above under each other, from the front beside. */
export function drawScene(figure: SceneFigure, context: DrawContext): SvgNode {
  const views = [side, front, above].map((view) => ({ view, extent: viewExtent(figure, view) }));
  const [sideView, frontView, aboveView] = views as [ViewPlace, ViewPlace, ViewPlace];
  const usable = context.width - 2 * gap;
  const across = sideView.extent.width + frontView.extent.width;
  const alone = context.width < 480;
  const scale = alone ? usable / Math.max(...views.map((each) => each.extent.width)) : (usable - gap) / Math.max(across, 1e-9);
  const put = (place: ViewPlace, x: number, y: number) => drawView(figure, place, { scale, x, y }, context);
  const rowHeight = Math.max(sideView.extent.height, frontView.extent.height) * scale;
  const placed = alone
    ? columnOf([sideView, frontView, aboveView], scale, put)
    : [put(sideView, gap, 0), put(frontView, 2 * gap + sideView.extent.width * scale, 0), put(aboveView, gap, rowHeight + titleRoom + gap)];
  const bottom = Math.max(...placed.map((each) => each.bottom));
  const bar = scaleBar(scale, bottom + 12, context);
  const words = wordsUnder([...new Set(placed.flatMap((each) => each.unplaced))], bottom + 52, context);
  return picture(figure, bottom + 52 + words.height, [...placed.map((each) => each.node), bar, words.node], context);
}

interface ViewPlace {
  readonly view: View;
  readonly extent: Box;
}

interface DrawnView {
  readonly node: SvgNode;
  readonly bottom: number;
  readonly unplaced: readonly string[];
}

function columnOf(
  places: readonly ViewPlace[],
  scale: number,
  put: (place: ViewPlace, x: number, y: number) => DrawnView,
): readonly DrawnView[] {
  let top = 0;
  return places.map((place) => {
    const drawn = put(place, gap, top);
    top += place.extent.height * scale + titleRoom + gap;
    return drawn;
  });
}

function viewExtent(figure: SceneFigure, view: View): Box {
  const points = figure.lines.flatMap((line) => line.points.map(view.flat));
  const [xs, ys] = [points.map((point) => point[0]), points.map((point) => point[1])];
  const [x, y] = [Math.min(...xs, 0), Math.min(...ys, 0)];
  return { x, y, width: Math.max(...xs, 0) - x || 0.1, height: Math.max(...ys, 0) - y || 0.1 };
}

function drawView(
  figure: SceneFigure,
  { view, extent }: ViewPlace,
  at: { readonly scale: number; readonly x: number; readonly y: number },
  context: DrawContext,
): DrawnView {
  const top = at.y + titleRoom;
  const place = (point: Point): PixelPoint => {
    const [x, y] = view.flat(point);
    return [at.x + (x - extent.x) * at.scale, top + (y - extent.y) * at.scale];
  };
  const lines = figure.lines.map((line) => ({ line, points: line.points.map(place) }));
  const [width, height] = [extent.width * at.scale, extent.height * at.scale];
  const title = textBlock([view.title], textSize.small);
  const around: Surroundings = {
    inside: {
      x: Math.max(0, at.x - gap / 2),
      y: top - 2,
      width: Math.min(width + gap, context.width - at.x + gap / 2),
      height: height + gap,
    },
    taken: [],
    lines: lines.flatMap(({ points }) => pointsAlong(points, 8).map((point) => point.at)),
  };
  const parts = lines.map(({ line, points }) => {
    const style = markStyle(line.meaning, { stale: context.stale });
    const look = { stroke: context.paint(style.paint), "stroke-width": 1.5, fill: "none", "stroke-linejoin": "round" };
    return element("path", { d: pathThrough(points), ...look, "data-series": line.name, "data-meaning": line.meaning });
  });
  const names = view === above ? lineNames(lines, around, context) : { nodes: [], unplaced: [] };
  const head = label([view.title], { x: at.x, y: at.y, ...title }, "start", { size: textSize.small, fill: context.paint("ink-2") });
  const kept = view === above ? gap : 0;
  return {
    node: group("view", [head, ...parts, ...names.nodes], { "data-view": view.title }),
    bottom: top + height + kept,
    unplaced: names.unplaced,
  };
}

/** Names of the lines, once each, in the view from above. */
function lineNames(
  lines: readonly { readonly line: SceneFigure["lines"][number]; readonly points: readonly PixelPoint[] }[],
  around: Surroundings,
  context: DrawContext,
): { readonly nodes: readonly SvgNode[]; readonly unplaced: readonly string[] } {
  const nodes: SvgNode[] = [];
  const unplaced: string[] = [];
  const seen = new Set<string>();
  for (const { line, points } of lines) {
    if (seen.has(line.name) || points.length === 0) continue;
    seen.add(line.name);
    const point = points[Math.floor(points.length / 2)] as PixelPoint;
    const place = placeLabel({ lines: [line.name], size: textSize.small, point, distance: 7 }, around);
    if (!place) {
      unplaced.push(`Not named in the drawing for want of room: ${line.name}`);
      continue;
    }
    const near: PixelPoint = [
      Math.min(Math.max(point[0], place.box.x), place.box.x + place.box.width),
      Math.min(Math.max(point[1], place.box.y), place.box.y + place.box.height),
    ];
    if (Math.hypot(near[0] - point[0], near[1] - point[1]) > 12) nodes.push(leader(point, near, context.paint("control-edge")));
    nodes.push(
      label([line.name], place.box, place.anchor, { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") }),
    );
  }
  return { nodes, unplaced };
}

function scaleBar(scale: number, top: number, context: DrawContext): SvgNode {
  const length = roundStepBelow(160 / scale);
  const text = `${roundNumberText(length, 3)}\u00a0m`;
  const block = textBlock([text], textSize.small);
  const bar = element("path", {
    d: `M${gap} ${top + 3}V${top + 8}H${gap + length * scale}V${top + 3}`,
    fill: "none",
    stroke: context.paint("ink"),
    "stroke-width": 1.5,
  });
  return group("scale-bar", [
    bar,
    label([text], { x: gap, y: top + 12, ...block }, "start", { size: textSize.small, fill: context.paint("ink") }),
  ]);
}
