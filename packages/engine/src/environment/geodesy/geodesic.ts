import geodesy from "geographiclib-geodesic";

const { Geodesic } = geodesy;
const degree = Math.PI / 180;

/** A place on the WGS 84 ellipsoid: latitude and longitude [rad], north and east positive. */
export interface GeodeticPosition {
  readonly latitude: number;
  readonly longitude: number;
}

/** The shortest line between two places on the ellipsoid. */
export interface GeodesicSegment {
  /** Length on the ellipsoid [m]. */
  readonly length: number;
  /** Place at a distance [m] from its start. */
  positionAt(distance: number): GeodeticPosition;
  /** Direction of travel [rad], clockwise from true north, at a distance [m] from its start. */
  courseAt(distance: number): number;
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
  return {
    length: line.s13,
    positionAt(distance) {
      const at = line.Position(distance, Geodesic.LATITUDE | Geodesic.LONGITUDE);
      return { latitude: (at.lat2 as number) * degree, longitude: (at.lon2 as number) * degree };
    },
    courseAt(distance) {
      const at = line.Position(distance, Geodesic.AZIMUTH);
      const course = (at.azi2 as number) * degree;
      return course < 0 ? course + 2 * Math.PI : course;
    },
  };
}
