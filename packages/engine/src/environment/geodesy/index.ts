export { degreesOf, type GeodesicSegment, type GeodeticPosition, geodesicSegment, positionFromDegrees } from "./geodesic.ts";
