import type { MapFigure } from "@wingseed/engine";
import { contours } from "d3-contour";
import { scaleLinear } from "d3-scale";
import type { DrawContext } from "./context.ts";
import type { MapProjection } from "./map-projection.ts";
import { element, group, pathThrough, pixel, type SvgNode } from "./node.ts";
import type { PixelPoint } from "./polyline.ts";
import type { TokenName } from "./theme.ts";

type Relief = NonNullable<MapFigure["relief"]>;

/** Ground at or below this height [m] is drawn as water. */
const shore = 0.5;

/** What a relief shows, for the words beside the map. */
export interface DrawnRelief {
  readonly node: SvgNode;
  /** Height between contour lines [m]. */
  readonly interval: number;
  readonly hasWater: boolean;
  readonly hasHoles: boolean;
}

/** Grey ground in a few steps with contour lines, water as a flat tint, holes of the data as the bare ground colour. */
export function drawRelief(relief: Relief, projection: MapProjection, context: DrawContext): DrawnRelief {
  const known = relief.elevation.filter((value) => value !== null);
  const [low, high] = known.reduce(([least, most], value) => [Math.min(least, value), Math.max(most, value)], [Infinity, -Infinity]);
  const hasWater = low <= shore;
  const levels = scaleLinear()
    .domain([Math.max(0, low), Math.max(high, low + 1)])
    .ticks(7)
    .filter((level) => level > low && level > shore);
  const interval = (levels[1] ?? 0) - (levels[0] ?? 0);
  const shape = bandShapes(relief, projection);
  const base: TokenName = hasWater ? "water" : "relief-1";
  const below = Number.isFinite(low) ? low - 1 : 0;
  const parts = [shape(below, { fill: context.paint(base) })];
  if (hasWater) parts.push(shape(shore, { fill: context.paint("relief-1"), stroke: context.paint("control-edge"), "stroke-width": 1 }));
  levels.forEach((level, index) => {
    const step = 1 + Math.min(4, Math.floor((5 * (index + 1)) / (levels.length + 1)));
    const fill = context.paint(`relief-${step as 1}`);
    parts.push(shape(level, { fill, stroke: context.paint("control-edge"), "stroke-width": 0.5 }));
  });
  return { node: group("relief", parts), interval, hasWater, hasHoles: holeInside(relief, projection) };
}

/** True when a place inside the map's frame has no value. */
function holeInside(relief: Relief, { west, east, south, north }: MapProjection): boolean {
  const inside = (index: number) => {
    const longitude = relief.west + (((index % relief.width) + 0.5) / relief.width) * (relief.east - relief.west);
    const latitude = relief.north - ((Math.floor(index / relief.width) + 0.5) / relief.height) * (relief.north - relief.south);
    return longitude > west && longitude < east && latitude > south && latitude < north;
  };
  return relief.elevation.some((value, index) => value === null && inside(index));
}

function bandShapes(relief: Relief, projection: MapProjection) {
  // A hole counts as far below everything, so no band covers it.
  const values = relief.elevation.map((value) => value ?? Number.NEGATIVE_INFINITY);
  const generator = contours().size([relief.width, relief.height]).smooth(true);
  const place = ([column, row]: readonly number[]): PixelPoint =>
    projection.place([
      relief.west + ((column as number) / relief.width) * (relief.east - relief.west),
      relief.north - ((row as number) / relief.height) * (relief.north - relief.south),
    ]);
  return (level: number, look: Readonly<Record<string, string | number>>): SvgNode => {
    const rings = generator.contour(values, level).coordinates.flat();
    const d = rings
      .map((ring) =>
        pathThrough(
          ring.map((point) => place(point).map(pixel) as [number, number]),
          true,
        ),
      )
      .join("");
    return element("path", { d, "fill-rule": "evenodd", ...look });
  };
}
