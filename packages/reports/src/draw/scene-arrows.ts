import type { SceneArrow, SceneFigure } from "@wingseed/engine";
import { formatReading } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { markStyle } from "./meaning.ts";
import { element, group, pathThrough, type SvgNode } from "./node.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";
import type { ViewCanvas } from "./scene-canvas.ts";
import { nameBeside } from "./scene-names.ts";
import { forceScale, viewAxis, viewTitles } from "./scene-projection.ts";

/** Shorter arrows are a dot and are told in words [px]. */
const shortest = 5;
const turnRadius = 17;
/** The largest moment is drawn as this much of a turn [rad]. */
const widestTurn = 4.6;
/** Smaller shares of the largest moment are told in words. */
const smallestTurn = 0.03;
/** Shares of the largest force or moment that are told at all; smaller ones stand in the table. */
const smallestTold = 1e-3;

interface Arrow {
  readonly series: string;
  readonly name: string;
  readonly stroke: string;
  readonly points: readonly PixelPoint[];
  readonly head: PixelPoint;
  readonly meaning: SceneArrow["meaning"];
}

/** Forces as arrows from where they act, moments as arcs around it; each with its name and its size in this view. */
export function drawArrows(
  figure: SceneFigure,
  canvas: ViewCanvas,
  context: DrawContext,
): { readonly nodes: readonly SvgNode[]; readonly unplaced: readonly string[]; readonly told: readonly string[] } {
  const small: string[] = [];
  const arrows = [...forces(figure, canvas, small, context), ...moments(figure, canvas, small, context)];
  canvas.around.taken.push(...arrows.map(({ head: [x, y] }) => ({ x: x - 4, y: y - 4, width: 8, height: 8 })));
  const covered = arrows.flatMap((arrow) => pointsAlong(arrow.points, 6).map((each) => each.at));
  const wider = { ...canvas, around: { ...canvas.around, lines: [...canvas.around.lines, ...covered] } };
  const unplaced: string[] = [];
  const nodes = arrows.map((arrow) => {
    const name = nameBeside(arrow.name, [arrow.head, middle(arrow.points)], wider, context);
    if (name.length === 0) unplaced.push(arrow.name);
    return group("arrow", [...shaft(arrow), ...name], { "data-series": arrow.series, "data-meaning": arrow.meaning });
  });
  const told = small.length === 0 ? [] : [`Too small to draw ${viewTitles[canvas.look.view]}: ${small.join(", ")}.`];
  return { nodes, unplaced, told };
}

function forces(figure: SceneFigure, canvas: ViewCanvas, small: string[], context: DrawContext): readonly Arrow[] {
  const perNewton = forceScale(figure) * canvas.place.scale;
  const largest = Math.max(0, ...(figure.arrows ?? []).filter((each) => each.kind === "force").map((each) => Math.hypot(...each.vector)));
  return (figure.arrows ?? []).flatMap((each): readonly Arrow[] => {
    if (each.kind !== "force") return [];
    const [dx, dy] = canvas.look.direction(each.vector);
    const size = Math.hypot(dx, dy);
    const name = `${each.name} ${formatReading(size, "force", { system: context.system }).text}`;
    if (size * perNewton < shortest) {
      if (size > smallestTold * largest) small.push(name);
      return [];
    }
    const from = canvas.toPaper(canvas.look.place(each.at));
    const head: PixelPoint = [from[0] + dx * perNewton, from[1] + dy * perNewton];
    return [{ series: each.name, name, points: [from, head], head, stroke: paintOf(each, context), meaning: each.meaning }];
  });
}

function moments(figure: SceneFigure, canvas: ViewCanvas, small: string[], context: DrawContext): readonly Arrow[] {
  const all = (figure.arrows ?? []).filter((each) => each.kind === "moment");
  const largest = Math.max(0, ...all.flatMap((each) => each.vector.map(Math.abs)));
  const { index, clockwise } = viewAxis[canvas.look.view];
  return all.flatMap((each): readonly Arrow[] => {
    const value = each.vector[index];
    if (value === 0) return [];
    const name = `${each.name} ${formatReading(Math.abs(value), "torque", { system: context.system }).text}`;
    if (Math.abs(value) < smallestTurn * largest) {
      if (Math.abs(value) > smallestTold * largest) small.push(name);
      return [];
    }
    const [x, y] = canvas.toPaper(canvas.look.place(each.at));
    const sense = value > 0 === clockwise ? 1 : -1;
    const sweep = widestTurn * (Math.abs(value) / largest);
    const points = Array.from({ length: 25 }, (_, step): PixelPoint => {
      const angle = -Math.PI / 2 + sense * (step / 24) * sweep;
      return [x + turnRadius * Math.cos(angle), y + turnRadius * Math.sin(angle)];
    });
    return [{ series: each.name, name, points, head: points.at(-1) as PixelPoint, stroke: paintOf(each, context), meaning: each.meaning }];
  });
}

function paintOf(arrow: SceneArrow, context: DrawContext): string {
  return context.paint(markStyle(arrow.meaning, { stale: context.stale }).paint);
}

/** The line and its filled head. */
function shaft({ points, head, stroke }: Arrow): readonly SvgNode[] {
  const before = points.findLast((point) => Math.hypot(point[0] - head[0], point[1] - head[1]) > 3) ?? (points[0] as PixelPoint);
  return [
    element("path", { d: pathThrough(points), fill: "none", stroke, "stroke-width": 2.25 }),
    element("path", { d: arrowHead(before, head), fill: stroke }),
  ];
}

/** A filled head that ends at a point. */
export function arrowHead(from: PixelPoint, at: PixelPoint, size = 9): string {
  const length = Math.hypot(at[0] - from[0], at[1] - from[1]) || 1;
  const [x, y] = [(at[0] - from[0]) / length, (at[1] - from[1]) / length];
  const back: PixelPoint = [at[0] - size * x, at[1] - size * y];
  const half = size * 0.42;
  return pathThrough([at, [back[0] - half * y, back[1] + half * x], [back[0] + half * y, back[1] - half * x]], true);
}

function middle(points: readonly PixelPoint[]): PixelPoint {
  const [first, last] = [points[0] as PixelPoint, points.at(-1) as PixelPoint];
  return points.length > 2 ? (points[Math.floor(points.length / 2)] as PixelPoint) : [(first[0] + last[0]) / 2, (first[1] + last[1]) / 2];
}
