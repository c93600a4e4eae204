import type { MapFigure, Position } from "@wingseed/engine";
import { scaleLinear } from "d3-scale";
import { fixedText, formatReading } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { type Box, label, leader, textBlock, textSize } from "./label.ts";
import { placeLabel, type Surroundings } from "./label-placement.ts";
import { type MapProjection, mapProjection } from "./map-projection.ts";
import { drawRelief } from "./map-relief.ts";
import { markStyle } from "./meaning.ts";
import { element, group, pathThrough, type SvgNode, textElement } from "./node.ts";
import { wordsUnder } from "./panel.ts";
import { picture } from "./picture.ts";
import { type PixelPoint, pointsAlong } from "./polyline.ts";
import { ring } from "./series-marks.ts";

/** A map with equal scales: grey relief, tracks, named sites, wind, scale bar and coordinates. */
export function drawMap(figure: MapFigure, context: DrawContext): SvgNode {
  const frame = { x: 1, y: 1, width: context.width - 2 };
  const projection = mapProjection(figure, frame, context.plotHeight ?? Math.min(560, Math.max(280, context.width * 0.62)));
  const box = projection.frame;
  const relief = figure.relief ? drawRelief(figure.relief, projection, context) : undefined;
  const tracks = figure.tracks.map((track) => ({ track, points: track.points.map(projection.place) }));
  const around: Surroundings = {
    inside: { x: box.x + 4, y: box.y + 4, width: box.width - 8, height: box.height - 8 },
    taken: [],
    lines: tracks.flatMap(({ points }) => pointsAlong(points, 8).map((point) => point.at)),
  };
  const corner = corners(figure, projection, around, context);
  const sites = figure.sites.map((site) => drawSite(site, projection, around, context));
  const lines = tracks.map(({ track, points }) => drawTrack(track, points, around, context));
  const coordinates = drawCoordinates(projection, context);
  const under = box.y + box.height + coordinates.height;
  const heights = relief?.interval
    ? [`Contour lines every ${formatReading(relief.interval, "length").text}${relief.hasWater ? "; tinted: sea level or below" : ""}.`]
    : [];
  const holes = relief?.hasHoles ? ["Blank ground: the elevation file has no value there."] : [];
  const unplaced = [...sites, ...lines].flatMap((drawn) => drawn.unplaced ?? []);
  const words = wordsUnder([...heights, ...holes, ...unplaced], under + 6, context);
  const clipped = group("ground", relief ? [relief.node] : []);
  const cover = maskOutside(box, context);
  const parts = [
    clipped,
    ...lines.map((line) => line.mark),
    ...cover,
    ...sites.map((site) => site.node),
    ...lines.map((line) => line.name),
    corner,
    coordinates.node,
    words.node,
  ];
  return picture(figure, under + words.height + 8, parts, context);
}

/** A frame of the ground's colour over what sticks out of the map, and the map's edge. */
function maskOutside(box: Box, context: DrawContext): readonly SvgNode[] {
  const far = 4000;
  const outer = `M${-far} ${-far}H${far}V${far}H${-far}Z`;
  const inner = `M${box.x} ${box.y}V${box.y + box.height}H${box.x + box.width}V${box.y}Z`;
  return [
    element("path", { d: outer + inner, fill: context.paint("ground"), "fill-rule": "evenodd" }),
    element("rect", { ...box, fill: "none", stroke: context.paint("control-edge") }),
  ];
}

interface DrawnName {
  readonly node: SvgNode;
  readonly unplaced?: string;
}

function drawSite(site: MapFigure["sites"][number], projection: MapProjection, around: Surroundings, context: DrawContext): DrawnName {
  const at = projection.place(site.at);
  const [x, y] = at;
  const stroke = context.paint("ink");
  const triangle: readonly PixelPoint[] = [
    [x, y - 6],
    [x + 6, y + 5],
    [x - 6, y + 5],
  ];
  const mark = element("path", {
    d: pathThrough(triangle, true),
    fill: context.paint("ground"),
    stroke,
    "stroke-width": 1.5,
    "stroke-linejoin": "round",
  });
  const hint = site.note === undefined ? [] : [textElement("title", {}, `${site.name}: ${site.note}`)];
  const lines = [site.name];
  const place = placeLabel({ lines, size: textSize.small, point: at, distance: 10 }, around);
  if (!place) return { node: group("site", [...hint, mark], { "data-site": site.name }), unplaced: `Unlabelled site: ${site.name}` };
  around.taken.push({ x: x - 7, y: y - 7, width: 14, height: 14 });
  const name = label(lines, place.box, place.anchor, { size: textSize.small, fill: stroke, rim: context.paint("ground") });
  return { node: group("site", [...hint, mark, name], { "data-site": site.name }) };
}

interface DrawnTrack {
  readonly mark: SvgNode;
  readonly name: SvgNode;
  readonly unplaced?: string;
}

/** A track over a rim of the ground's colour, with its name near its middle. */
function drawTrack(
  track: MapFigure["tracks"][number],
  points: readonly PixelPoint[],
  around: Surroundings,
  context: DrawContext,
): DrawnTrack {
  const style = markStyle(track.meaning, { coarse: context.coarse, stale: context.stale });
  const d = pathThrough(points);
  const base = { d, fill: "none", "stroke-linejoin": "round", "stroke-linecap": "round" };
  const rim = element("path", { ...base, stroke: context.paint("ground"), "stroke-width": style.width + 3 });
  const line = element("path", {
    ...base,
    stroke: context.paint(style.paint),
    "stroke-width": style.width,
    "stroke-dasharray": style.dash,
  });
  const along = pointsAlong(points, 56, 28);
  const rings = style.shape === "rings" ? along.map((point) => ring(point.at, context.paint(style.paint), context)) : [];
  const mark = group("track", [rim, line, ...rings], { "data-series": track.name, "data-meaning": track.meaning });
  const places = [0.5, 0.3, 0.7, 0.15, 0.85]
    .map((share) => points[Math.floor(share * (points.length - 1))])
    .filter((point) => point !== undefined);
  for (const point of places) {
    const place = placeLabel({ lines: [track.name], size: textSize.small, point, distance: 10 }, around);
    if (!place) continue;
    const [x, y] = [
      Math.min(Math.max(point[0], place.box.x), place.box.x + place.box.width),
      Math.min(Math.max(point[1], place.box.y), place.box.y + place.box.height),
    ];
    const tie = Math.hypot(x - point[0], y - point[1]) > 20 ? [leader(point, [x, y], context.paint("ink-3"))] : [];
    const name = label([track.name], place.box, place.anchor, {
      size: textSize.small,
      fill: context.paint("ink"),
      rim: context.paint("ground"),
    });
    return { mark, name: group("track-name", [...tie, name]) };
  }
  return { mark, name: group("track-name", []), unplaced: `Unlabelled line: ${track.name}` };
}

/** Scale bar lower left, wind upper right with north; both keep other names away. */
function corners(figure: MapFigure, projection: MapProjection, around: Surroundings, context: DrawContext): SvgNode {
  const { frame } = projection;
  const parts = [scaleBar(projection, around, context)];
  const ink = context.paint("ink");
  const north = { x: frame.x + frame.width - 26, y: frame.y + 8, ...textBlock(["N"], textSize.small) };
  around.taken.push({ x: north.x - 4, y: north.y, width: 26, height: 44 });
  const tip: PixelPoint = [north.x + north.width / 2, north.y + north.height + 2];
  parts.push(
    label(["N"], north, "middle", { size: textSize.small, fill: ink, rim: context.paint("ground") }),
    element("path", { d: `M${tip[0]} ${tip[1]}l-5 16l5 -4l5 4Z`, fill: ink }),
  );
  if (figure.wind) parts.push(windArrow(figure.wind, frame, around, context));
  return group("map-corners", parts);
}

function windArrow(wind: NonNullable<MapFigure["wind"]>, frame: Box, around: Surroundings, context: DrawContext): SvgNode {
  const degrees = ((Math.round((wind.from * 180) / Math.PI) % 360) + 360) % 360;
  const speed = formatReading(wind.speed, "speed", { system: context.system }).text;
  const calm = wind.speed === 0;
  const text = calm ? "no wind" : `wind ${speed} from ${String(degrees).padStart(3, "0")}°`;
  const block = textBlock([text], textSize.small);
  const box = { x: frame.x + frame.width - 48 - block.width - 36, y: frame.y + 8, ...block };
  around.taken.push({ ...box, width: box.width + 40, height: 36 });
  const name = label([text], box, "end", { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") });
  if (calm) return name;
  const centre: PixelPoint = [box.x + box.width + 22, frame.y + 20];
  const toward: PixelPoint = [-Math.sin(wind.from), Math.cos(wind.from)];
  const across: PixelPoint = [-toward[1], toward[0]];
  const point = (forward: number, side: number): PixelPoint => [
    centre[0] + forward * toward[0] + side * across[0],
    centre[1] + forward * toward[1] + side * across[1],
  ];
  const shaft = pathThrough([point(-13, 0), point(13, 0)]) + pathThrough([point(6, 5), point(13, 0), point(6, -5)]);
  const arrow = element("path", { d: shaft, fill: "none", stroke: context.paint("ink"), "stroke-width": 1.75, "stroke-linejoin": "round" });
  return group("wind", [name, arrow]);
}

function scaleBar(projection: MapProjection, around: Surroundings, context: DrawContext): SvgNode {
  const { frame, pixelsPerMetre } = projection;
  const steps = scaleLinear()
    .domain([0, Math.min(180, frame.width / 3) / pixelsPerMetre])
    .ticks(1);
  const length = steps.at(-1) || 1000;
  const width = length * pixelsPerMetre;
  const text =
    formatReading(length, "length", { unit: length >= 1000 ? "km" : "m" }).number.replace(/\.0+$/, "") +
    (length >= 1000 ? "\u00a0km" : "\u00a0m");
  const block = textBlock([text], textSize.small);
  const [x, y] = [frame.x + 12, frame.y + frame.height - 14];
  const box = { x, y: y - 6 - block.height, ...block };
  around.taken.push({ x: x - 4, y: box.y, width: Math.max(width, block.width) + 10, height: y - box.y + 8 });
  const bar = element("path", {
    d: `M${x} ${y - 5}V${y}H${x + width}V${y - 5}`,
    fill: "none",
    stroke: context.paint("ink"),
    "stroke-width": 1.5,
  });
  return group("scale-bar", [
    bar,
    label([text], box, "start", { size: textSize.small, fill: context.paint("ink"), rim: context.paint("ground") }),
  ]);
}

/** Longitudes under the map and latitudes just inside its left edge. */
function drawCoordinates(projection: MapProjection, context: DrawContext): { readonly node: SvgNode; readonly height: number } {
  const { frame } = projection;
  const bottom = frame.y + frame.height;
  const ticks = scaleLinear()
    .domain([projection.west, projection.east])
    .ticks(Math.max(2, Math.floor(frame.width / 190)));
  const style = { size: textSize.small, fill: context.paint("ink-2") };
  const parts = ticks.flatMap((longitude) => {
    const x = projection.place([longitude, projection.south])[0];
    const text = degreesText(longitude, ticks, ["E", "W"]);
    const block = textBlock([text], textSize.small);
    const left = Math.min(Math.max(0, x - block.width / 2), context.width - block.width);
    return [
      element("line", { x1: x, x2: x, y1: bottom, y2: bottom + 5, stroke: context.paint("control-edge") }),
      label([text], { x: left, y: bottom + 6, ...block }, "middle", style),
    ];
  });
  const middle: Position = [projection.west, (projection.south + projection.north) / 2];
  const latitudes = scaleLinear().domain([projection.south, projection.north]).ticks(3);
  const ticksLeft = latitudes.map((latitude) => {
    const y = projection.place([middle[0], latitude])[1];
    return element("line", { x1: frame.x, x2: frame.x + 6, y1: y, y2: y, stroke: context.paint("ink-2") });
  });
  const range = `Latitude ${degreesText(projection.south, latitudes, ["N", "S"])} to ${degreesText(projection.north, latitudes, ["N", "S"])}, ticks every ${fixedText(step(latitudes), decimalsOf(latitudes))}°`;
  const block = textBlock([range], textSize.small);
  parts.push(...ticksLeft, label([range], { x: 0, y: bottom + 25, ...block }, "start", style));
  return { node: group("coordinates", parts), height: 44 };
}

function degreesText(value: number, ticks: readonly number[], [positive, negative]: readonly [string, string]): string {
  const sign = value === 0 ? "" : `\u00a0${value > 0 ? positive : negative}`;
  return `${fixedText(Math.abs(value), decimalsOf(ticks))}°${sign}`;
}

function step(ticks: readonly number[]): number {
  return Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0));
}

function decimalsOf(ticks: readonly number[]): number {
  return Math.max(0, -Math.floor(Math.log10(step(ticks) || 1) + 1e-9));
}
