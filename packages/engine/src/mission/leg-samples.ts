import { type GeodeticPosition, geodesicSegment } from "../environment/geodesy/index.ts";
import type { Terrain } from "../environment/terrain/index.ts";

/** A leg cut into equal pieces, with the ground under every cut. */
export interface LegSamples {
  /** Length of the leg [m]. */
  readonly length: number;
  /** Number of pieces; the arrays below hold one more, but for `course`. */
  readonly pieces: number;
  /** [rad] */
  readonly latitude: Float64Array;
  /** [rad] */
  readonly longitude: Float64Array;
  /** Ground elevation above mean sea level [m]. */
  readonly ground: Float64Array;
  /** Direction of travel over each piece [rad], clockwise from true north. */
  readonly course: Float64Array;
}

export type LegSampling =
  | { readonly kind: "samples"; readonly samples: LegSamples }
  | {
      readonly kind: "no-ground";
      readonly because: "outside" | "hole";
      readonly at: GeodeticPosition;
      /** From the start of the leg [m]. */
      readonly distance: number;
    };

/** Pieces are no longer than this [m], and no leg has fewer pieces than that. */
const longestPiece = 50;
const shortestPiece = 5;
const fewestPieces = 8;

/** Samples the geodesic between two places, at half the pixel edge of the terrain where that is finer than 50 m. */
export function sampleLeg(from: GeodeticPosition, to: GeodeticPosition, terrain: Terrain): LegSampling {
  const segment = geodesicSegment(from, to);
  const spacing = Math.min(longestPiece, Math.max(shortestPiece, terrain.sampleSpacing ?? longestPiece));
  const pieces = Math.max(fewestPieces, Math.ceil(segment.length / spacing));
  const latitude = new Float64Array(pieces + 1);
  const longitude = new Float64Array(pieces + 1);
  const ground = new Float64Array(pieces + 1);
  const course = new Float64Array(pieces);
  let before = 0;
  for (let cut = 0; cut <= pieces; cut++) {
    const distance = (segment.length * cut) / pieces;
    const point = segment.at(distance);
    const elevation = terrain.elevationAt(point);
    if (elevation.kind !== "elevation") return { kind: "no-ground", because: elevation.kind, at: point, distance };
    latitude[cut] = point.latitude;
    longitude[cut] = point.longitude;
    ground[cut] = elevation.value;
    if (cut > 0) course[cut - 1] = middleCourse(before, point.course);
    before = point.course;
  }
  return { kind: "samples", samples: { length: segment.length, pieces, latitude, longitude, ground, course } };
}

/** The direction half way between two neighbouring courses, also across north. */
function middleCourse(first: number, second: number): number {
  const turn = 2 * Math.PI;
  const difference = ((second - first + 3 * Math.PI) % turn) - Math.PI;
  return (first + difference / 2 + turn) % turn;
}
