export { readGeoJson } from "./read-geojson.ts";
