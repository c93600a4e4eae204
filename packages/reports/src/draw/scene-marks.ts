import type { SceneBound, SceneFigure, SceneMark } from "@wingseed/engine";
import type { DrawContext } from "./context.ts";
import { edgeTicks } from "./edge-ticks.ts";
import type { Box } from "./label.ts";
import { markStyle } from "./meaning.ts";
import { element, group, type SvgNode } from "./node.ts";
import type { PixelPoint } from "./polyline.ts";
import type { SharedNames, ViewCanvas } from "./scene-canvas.ts";
import { nameBeside } from "./scene-names.ts";

const radius = 6;
/** Half height of the line that bounds a mark, in a view and in a detail [px]. */
const reaches = { view: 13, detail: 48 } as const;

/** Named points with the bounds beside them; each name stands once. */
export function drawMarks(
  figure: SceneFigure,
  canvas: ViewCanvas,
  shared: SharedNames,
  context: DrawContext,
): { readonly nodes: readonly SvgNode[]; readonly unplaced: readonly string[] } {
  const { box, place } = canvas;
  const marks = (figure.marks ?? []).filter(
    (mark) => place.title === undefined || isInside(canvas.toPaper(canvas.look.place(mark.at)), box),
  );
  const at = (mark: SceneMark) => canvas.toPaper(canvas.look.place(mark.at));
  canvas.around.taken.push(...marks.map(at).map(([x, y]) => ({ x: x - radius, y: y - radius, width: 2 * radius, height: 2 * radius })));
  const unplaced: string[] = [];
  const bounds = (figure.bounds ?? []).flatMap((bound) => drawBound(bound, marks, canvas, context));
  const nodes = marks.map((mark) => {
    const shape = mark.shape === "centre" ? centre(at(mark), context) : point(mark, at(mark), context);
    if (shared.named.has(mark.name)) return group("mark", shape, { "data-mark": mark.name });
    shared.named.add(mark.name);
    const name = nameBeside(mark.name, [at(mark)], canvas, context);
    if (name.length === 0) unplaced.push(mark.name);
    return group("mark", [...shape, ...name], { "data-mark": mark.name });
  });
  return { nodes: [...bounds, ...nodes], unplaced };
}

function isInside([x, y]: PixelPoint, box: Box): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}

/** The draughtsman's sign of a centre of gravity: a circle in quarters, two of them filled. */
function centre([x, y]: PixelPoint, context: DrawContext): readonly SvgNode[] {
  const ink = context.paint(context.stale ? "ink-3" : "ink");
  const quarters = `M${x} ${y}V${y - radius}A${radius} ${radius} 0 0 1 ${x + radius} ${y}ZM${x} ${y}V${y + radius}A${radius} ${radius} 0 0 1 ${x - radius} ${y}Z`;
  return [
    element("circle", { cx: x, cy: y, r: radius, fill: context.paint("ground"), stroke: ink, "stroke-width": 1.5 }),
    element("path", { d: quarters, fill: ink }),
  ];
}

function point(mark: SceneMark, [x, y]: PixelPoint, context: DrawContext): readonly SvgNode[] {
  const stroke = context.paint(markStyle(mark.meaning, { stale: context.stale }).paint);
  return [element("circle", { cx: x, cy: y, r: 3.5, fill: context.paint("ground"), stroke, "stroke-width": 1.5 })];
}

/** A short line across the way of a mark, ticks where it must not go. */
function drawBound(bound: SceneBound, marks: readonly SceneMark[], canvas: ViewCanvas, context: DrawContext): readonly SvgNode[] {
  const mark = marks.find((each) => each.name === bound.mark);
  if (!mark) return [];
  const place = (value: number) =>
    canvas.toPaper(canvas.look.place(bound.axis === "x" ? [value, mark.at[1], mark.at[2]] : [mark.at[0], mark.at[1], value]));
  const [at, beyond] = [place(bound.value), place(bound.value + (bound.forbidden === "above" ? 1 : -1))];
  const length = Math.hypot(beyond[0] - at[0], beyond[1] - at[1]);
  if (length < 1e-6) return [];
  const out: PixelPoint = [(beyond[0] - at[0]) / length, (beyond[1] - at[1]) / length];
  const reach = reaches[canvas.place.title === undefined ? "view" : "detail"];
  // Walked so that the forbidden side lies to the left, as ticks want it.
  const edge: readonly [PixelPoint, PixelPoint] = [
    [at[0] - out[1] * reach, at[1] + out[0] * reach],
    [at[0] + out[1] * reach, at[1] - out[0] * reach],
  ];
  const name = canvas.place.title === undefined ? [] : nameBeside(bound.name, edge, canvas, context);
  const stroke = context.paint(context.stale ? "ink-3" : "ink");
  const line = element("line", { x1: edge[0][0], y1: edge[0][1], x2: edge[1][0], y2: edge[1][1], stroke, "stroke-width": 1.75 });
  return [group("bound", [line, edgeTicks(edge, -1, bound.family, stroke), ...name], { "data-bound": bound.name })];
}
