import geodesy from "geographiclib-geodesic";

const { Geodesic } = geodesy;
const degree = Math.PI / 180;

/** A place on the WGS 84 ellipsoid: latitude and longitude [rad], north and east positive. */
export interface GeodeticPosition {
  readonly latitude: number;
  readonly longitude: number;
}

/** A place on a path and the direction of travel there [rad], clockwise from true north, 0 to 2π. */
export interface PathPoint extends GeodeticPosition {
  readonly course: number;
}

/** The shortest line between two places on the ellipsoid. */
export interface GeodesicSegment {
  /** Length on the ellipsoid [m]. */
  readonly length: number;
  /** Point at a distance [m] from its start; the longitude runs on across the 180° meridian. */
  at(distance: number): PathPoint;
}

/** A place from a GeoJSON coordinate: longitude, then latitude, in degrees (RFC 7946). */
export function positionFromDegrees(coordinate: readonly number[]): GeodeticPosition {
  const [longitude, latitude] = coordinate as readonly [number, number];
  return { latitude: latitude * degree, longitude: longitude * degree };
}

/** Longitude and latitude [°] in the order of RFC 7946. */
export function degreesOf(position: GeodeticPosition): readonly [longitude: number, latitude: number] {
  return [position.longitude / degree, position.latitude / degree];
}

/**
 * Geodesic from one place to another on WGS 84. Heights are ignored: at 300 m above the ellipsoid the true path is longer
 * by 5 parts in 100 000.
 *
 * @source geographiclib-geodesic, README, introduction: solves the direct and inverse problems for an ellipsoid
 */
export function geodesicSegment(from: GeodeticPosition, to: GeodeticPosition): GeodesicSegment {
  const line = Geodesic.WGS84.InverseLine(from.latitude / degree, from.longitude / degree, to.latitude / degree, to.longitude / degree);
  const wanted = Geodesic.LATITUDE | Geodesic.LONGITUDE | Geodesic.AZIMUTH | Geodesic.LONG_UNROLL;
  return {
    length: line.s13,
    at(distance) {
      const { lat2, lon2, azi2 } = line.Position(distance, wanted) as { lat2: number; lon2: number; azi2: number };
      return { latitude: lat2 * degree, longitude: lon2 * degree, course: (azi2 < 0 ? azi2 + 360 : azi2) * degree };
    },
  };
}
