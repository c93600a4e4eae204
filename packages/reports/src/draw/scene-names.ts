import type { SceneLine } from "@wingseed/engine";
import { type DrawContext, mostHidden } from "./context.ts";
import { label, leader, textSize } from "./label.ts";
import { type Place, placeLabel } from "./label-placement.ts";
import type { SvgNode } from "./node.ts";
import type { PixelPoint } from "./polyline.ts";
import type { SharedNames, ViewCanvas, ViewPlace } from "./scene-canvas.ts";
import { isShown } from "./scene-projection.ts";

interface PlacedLine {
  readonly line: SceneLine;
  readonly points: readonly PixelPoint[];
}

/** Names of outlines, each once, in the view that shows most of it. */
export function namedAt(
  lines: readonly PlacedLine[],
  canvas: ViewCanvas,
  shared: SharedNames,
  context: DrawContext,
): { readonly nodes: readonly SvgNode[]; readonly unplaced: readonly string[] } {
  const nodes: SvgNode[] = [];
  const unplaced: string[] = [];
  for (const { line, points } of lines) {
    if (
      shared.named.has(line.name) ||
      points.length === 0 ||
      clearestPlace(line, shared.places) !== canvas.place ||
      line.meaning === "neutral"
    )
      continue;
    shared.named.add(line.name);
    const drawn = nameBeside(line.name, corners(points), canvas, context);
    if (drawn.length === 0) unplaced.push(line.name);
    nodes.push(...drawn);
  }
  return { nodes, unplaced };
}

/** A name near one of several points, the first where it hides least; a thin line ties it where it stands away. */
export function nameBeside(name: string, points: readonly PixelPoint[], { around }: ViewCanvas, context: DrawContext): readonly SvgNode[] {
  let found: { readonly place: Place; readonly point: PixelPoint } | undefined;
  for (const most of [0, 2, mostHidden(context)]) {
    for (const point of points) {
      const place = found ? undefined : placeLabel({ lines: [name], size: textSize.small, point, distance: 7 }, around, most);
      if (place) found = { place, point };
    }
  }
  if (!found) return [];
  const { place, point } = found;
  const near: PixelPoint = [
    Math.min(Math.max(point[0], place.box.x), place.box.x + place.box.width),
    Math.min(Math.max(point[1], place.box.y), place.box.y + place.box.height),
  ];
  const tie = Math.hypot(near[0] - point[0], near[1] - point[1]) > 12 ? [leader(point, near, context.paint("control-edge"))] : [];
  return [
    ...tie,
    label([name], place.box, place.anchor, { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") }),
  ];
}

/** Its outermost points: left, right, upper, lower. */
function corners(points: readonly PixelPoint[]): readonly PixelPoint[] {
  const by = (measure: (point: PixelPoint) => number) => points.toSorted((a, b) => measure(a) - measure(b))[0] as PixelPoint;
  return [by((point) => point[0]), by((point) => -point[0]), by((point) => point[1]), by((point) => -point[1])];
}

/** The view in which an outline covers most paper; the first one of equals. A detail that shows only a part of it does not count. */
function clearestPlace(line: SceneLine, places: readonly ViewPlace[]): ViewPlace | undefined {
  const shown = places.filter((place) => isShown(line, place.look.view) && isWhole(line, place));
  const sizes = shown.map(({ look, scale }) => {
    const { width, height } = span(line.points.map(look.place));
    return scale * scale * (width * height + 0.01 * Math.hypot(width, height));
  });
  return shown[sizes.indexOf(Math.max(...sizes))];
}

function isWhole(line: SceneLine, { look, extent, title }: ViewPlace): boolean {
  if (title === undefined) return true;
  return line.points
    .map(look.place)
    .every(([x, y]) => x >= extent.x && x <= extent.x + extent.width && y >= extent.y && y <= extent.y + extent.height);
}

function span(flat: readonly PixelPoint[]): { readonly width: number; readonly height: number } {
  const [xs, ys] = [flat.map((point) => point[0]), flat.map((point) => point[1])];
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
}
