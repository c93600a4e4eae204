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
  const bounds = mapBounds(figure);
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

interface Bounds {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** The tracks and sites with a rim around them, no wider than the relief where there is one. */
function mapBounds(figure: MapFigure): Bounds {
  const points = [...figure.tracks.flatMap((track) => track.points), ...figure.sites.map((site) => site.at)];
  const relief = figure.relief;
  if (points.length === 0) return relief ?? { west: -0.1, east: 0.1, south: -0.1, north: 0.1 };
  const [west, east] = [Math.min(...points.map((point) => point[0])), Math.max(...points.map((point) => point[0]))];
  const [south, north] = [Math.min(...points.map((point) => point[1])), Math.max(...points.map((point) => point[1]))];
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
