import type { MapFigure } from "@wingseed/engine";
import { roundNumberText } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { type Box, label, leader, textSize } from "./label.ts";
import { placeLabel, type Surroundings } from "./label-placement.ts";
import { mapCoordinates } from "./map-coordinates.ts";
import { mapCorners } from "./map-corners.ts";
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
  around.taken.push(...figure.sites.map((site) => markBox(projection.place(site.at))));
  const corner = mapCorners(figure, projection, around, context);
  const sites = figure.sites.map((site) => drawSite(site, projection, around, context));
  const lines = tracks.map(({ track, points }) => drawTrack(track, points, around, context));
  const coordinates = mapCoordinates(projection, context);
  const under = box.y + box.height + coordinates.height;
  const heights = relief?.interval
    ? [`Contour lines every ${roundNumberText(relief.interval, 3)}\u00a0m${relief.hasWater ? "; tinted: sea level or below" : ""}.`]
    : [];
  const holes = relief?.hasHoles ? ["Blank ground: the elevation file has no value there."] : [];
  const unplaced = [...sites, ...lines].flatMap((drawn) => drawn.unplaced ?? []);
  const words = wordsUnder([[coordinates.latitudes, ...heights, ...holes].join(" "), ...unplaced], under + 6, context);
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
  const outer = `M-1 -1H${context.width + 1}V3000H-1Z`;
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

/** Room that a site's mark takes. */
function markBox([x, y]: PixelPoint): Box {
  return { x: x - 6, y: y - 6, width: 12, height: 11 };
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
  const name = label(lines, place.box, place.anchor, { size: textSize.small, fill: stroke, rim: context.paint("ground") });
  return { node: group("site", [...hint, mark, name], { "data-site": site.name }) };
}

interface DrawnTrack {
  readonly mark: SvgNode;
  readonly name: SvgNode;
  readonly unplaced?: string;
}

/** The same surroundings with every other name grown sideways: two names in one line read like one. */
function withRoom(around: Surroundings, room: number): Surroundings {
  return { ...around, taken: around.taken.map((box) => ({ ...box, x: box.x - room, width: box.width + 2 * room })) };
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
  // By length, and not first at its middle: there a flight out and back turns, and rests at a named place.
  const along8 = pointsAlong(points, 8).map((point) => point.at);
  const places = [0.25, 0.35, 0.15, 0.75, 0.5, 0.9]
    .map((share) => along8[Math.floor(share * (along8.length - 1))])
    .filter((point) => point !== undefined);
  for (const [point, room] of [16, 0].flatMap((room) => places.map((point) => [point, room] as const))) {
    const place = placeLabel({ lines: [track.name], size: textSize.small, point, distance: 10 }, withRoom(around, room));
    if (!place) continue;
    around.taken.push(place.box);
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
