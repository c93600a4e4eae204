export {
  degreesOf,
  type GeodesicSegment,
  type GeodeticPosition,
  geodesicSegment,
  type PathPoint,
  positionFromDegrees,
} from "./geodesic.ts";
