import proj4 from "proj4";
import type { GeodeticPosition } from "../geodesy/index.ts";

/** Coordinate reference systems that elevation rasters come in. */
export type RasterReference = { readonly kind: "wgs84" } | { readonly kind: "utm"; readonly zone: number; readonly north: boolean };

/** Where the pixels of a raster lie: centre of the north-west pixel and the steps to the next, in units of its reference. */
export interface RasterGrid {
  readonly width: number;
  readonly height: number;
  readonly origin: { readonly x: number; readonly y: number };
  /** x positive eastward; y negative when rows run southward. */
  readonly step: { readonly x: number; readonly y: number };
  readonly crs: RasterReference;
}

/** Fractional column and row of a place, 0 at the centre of the first pixel; undefined where the projection ends. */
export type GridLocation = (position: GeodeticPosition) => { readonly column: number; readonly row: number } | undefined;

const degree = Math.PI / 180;
/** Beyond this distance from the central meridian transverse Mercator coordinates are not used [rad]. */
const utmReach = 30 * degree;

/**
 * Locates places on a raster. WGS 84 rasters are met directly, also across the 180° meridian; UTM rasters by projection.
 *
 * @source proj4js, README, Using: transforms between coordinate systems named by PROJ strings
 */
export function gridLocation(grid: RasterGrid): GridLocation {
  const { origin, step, crs } = grid;
  if (crs.kind === "wgs84") {
    const eastmost = (grid.width - 1) * step.x;
    return (position) => {
      const offset = position.longitude / degree - origin.x;
      const wrapped = offset < 0 && offset + 360 <= eastmost ? offset + 360 : offset > eastmost && offset >= 360 ? offset - 360 : offset;
      return { column: wrapped / step.x, row: (position.latitude / degree - origin.y) / step.y };
    };
  }
  const definition = `+proj=utm +zone=${crs.zone} ${crs.north ? "" : "+south "}+datum=WGS84 +units=m +no_defs`;
  const projection = proj4(definition);
  const centralMeridian = (crs.zone * 6 - 183) * degree;
  return (position) => {
    const away = Math.abs(position.longitude - centralMeridian) % (2 * Math.PI);
    if (Math.min(away, 2 * Math.PI - away) > utmReach) return undefined;
    const [x, y] = projection.forward([position.longitude / degree, position.latitude / degree]) as [number, number];
    return { column: (x - origin.x) / step.x, row: (y - origin.y) / step.y };
  };
}

/** Shorter edge of a pixel on the ground [m], good to a few per cent: it only sets how densely a path is sampled. */
export function pixelEdge(grid: RasterGrid): number {
  if (grid.crs.kind === "utm") return Math.min(Math.abs(grid.step.x), Math.abs(grid.step.y));
  const meridianDegree = 111_000;
  const middle = (grid.origin.y + (grid.step.y * (grid.height - 1)) / 2) * degree;
  return Math.min(Math.abs(grid.step.x) * Math.cos(middle), Math.abs(grid.step.y)) * meridianDegree;
}
