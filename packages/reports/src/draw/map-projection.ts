import type { MapFigure, Position } from "@wingseed/engine";
import type { Box } from "./label.ts";
import type { PixelPoint } from "./polyline.ts";

/** A flat map: degrees of longitude shrunk by the cosine of the middle latitude, so that lengths compare. */
export interface MapProjection {
  readonly frame: Box;
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
  readonly pixelsPerMetre: number;
  place(position: Position): PixelPoint;
}

/** Mean radius of the WGS 84 ellipsoid [m], good enough for a scale bar. */
const earthRadius = 6_371_008.8;
const metresPerDegree = (Math.PI / 180) * earthRadius;

/** Fits everything a map shows into a frame of a given width, no taller than `tallest` [px]. */
export function mapProjection(
  figure: MapFigure,
  frame: { readonly x: number; readonly y: number; readonly width: number },
  tallest: number,
): MapProjection {
  const bounds = croppedBounds(figure, mapBounds(figure), tallest / frame.width, frame.width);
  const cosine = Math.cos((((bounds.south + bounds.north) / 2) * Math.PI) / 180);
  const [spanX, spanY] = [(bounds.east - bounds.west) * cosine, bounds.north - bounds.south];
  const height = Math.min(tallest, Math.max(140, (frame.width * spanY) / spanX));
  const scale = Math.min(frame.width / spanX, height / spanY);
  const middle = { longitude: (bounds.west + bounds.east) / 2, latitude: (bounds.south + bounds.north) / 2 };
  const centre: PixelPoint = [frame.x + frame.width / 2, frame.y + height / 2];
  const halfX = frame.width / 2 / (scale * cosine);
  const halfY = height / 2 / scale;
  return {
    frame: { ...frame, height },
    west: middle.longitude - halfX,
    east: middle.longitude + halfX,
    south: middle.latitude - halfY,
    north: middle.latitude + halfY,
    pixelsPerMetre: scale / metresPerDegree,
    place: ([longitude, latitude]) => [
      centre[0] + (longitude - middle.longitude) * cosine * scale,
      centre[1] - (latitude - middle.latitude) * scale,
    ],
  };
}

/** Room kept above and below what a map shows when it is cropped [px]. */
const leastRim = 30;

/** A map that would be too tall for its width loses ground in the north and south, but nothing that it shows. */
function croppedBounds(figure: MapFigure, bounds: Bounds, tallestRatio: number, width: number): Bounds {
  const shown = shownBounds(figure);
  const cosine = Math.cos((((bounds.south + bounds.north) / 2) * Math.PI) / 180);
  const spanX = (bounds.east - bounds.west) * cosine;
  const spanY = bounds.north - bounds.south;
  if (!shown || spanY <= spanX * tallestRatio) return bounds;
  const needed = shown.north - shown.south + (2 * leastRim * spanX) / width;
  const span = Math.max(spanX * tallestRatio, Math.min(spanY, needed));
  const middle = (shown.south + shown.north) / 2;
  const south = Math.min(Math.max(bounds.south, middle - span / 2), bounds.north - span);
  return { ...bounds, south, north: south + span };
}

interface Bounds {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** What the tracks and sites span; nothing when there are none. */
function shownBounds(figure: MapFigure): Bounds | undefined {
  const points = [...figure.tracks.flatMap((track) => track.points), ...figure.sites.map((site) => site.at)];
  if (points.length === 0) return undefined;
  return {
    west: Math.min(...points.map((point) => point[0])),
    east: Math.max(...points.map((point) => point[0])),
    south: Math.min(...points.map((point) => point[1])),
    north: Math.max(...points.map((point) => point[1])),
  };
}

/** The tracks and sites with a rim around them, no wider than the relief where there is one. */
function mapBounds(figure: MapFigure): Bounds {
  const relief = figure.relief;
  const shown = shownBounds(figure);
  if (!shown) return relief ?? { west: -0.1, east: 0.1, south: -0.1, north: 0.1 };
  const { west, east, south, north } = shown;
  const rim = Math.max(0.12 * Math.max(east - west, north - south), 0.002);
  const framed = { west: west - rim, east: east + rim, south: south - rim, north: north + rim };
  if (!relief) return framed;
  return {
    west: Math.min(west, Math.max(relief.west, framed.west)),
    east: Math.max(east, Math.min(relief.east, framed.east)),
    south: Math.min(south, Math.max(relief.south, framed.south)),
    north: Math.max(north, Math.min(relief.north, framed.north)),
  };
}
