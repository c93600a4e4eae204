import type { GeodeticPosition } from "../geodesy/index.ts";
import { gridLocation, pixelEdge, type RasterGrid } from "./raster-grid.ts";

/** Ground elevation above mean sea level [m], or why there is none. */
export type Elevation = { readonly kind: "elevation"; readonly value: number } | { readonly kind: "outside" } | { readonly kind: "hole" };

/** The ground under a flight. */
export interface Terrain {
  elevationAt(position: GeodeticPosition): Elevation;
  /** Distance between samples along a path that misses nothing the source knows [m]; undefined when ground is even. */
  readonly sampleSpacing?: number;
}

/** A raster of heights and what they are measured from. */
export interface ElevationRaster extends RasterGrid {
  readonly path: string;
  /** Row-major from the first row. */
  readonly values: ArrayLike<number>;
  /** 1 where the raster has no value. */
  readonly hole: ArrayLike<number>;
  readonly heightDatum: "mean-sea-level" | "ellipsoid" | "unknown";
  /** Height of the geoid above the ellipsoid [m]; needed with heights above the ellipsoid. */
  readonly geoidUndulation?: number;
}

export type TerrainFromRaster =
  | { readonly kind: "terrain"; readonly terrain: Terrain }
  | {
      readonly kind: "refused";
      readonly because: "height-datum-unknown" | "geoid-undulation-missing" | "too-small";
      readonly message: string;
    };

/** A place this close to the outermost pixel centres, in pixels, still counts as inside: rounding of coordinates. */
const edgeTolerance = 1e-6;

/**
 * Terrain from a raster: bilinear between the centres of four pixels, never beyond the outermost centres. Where one of the
 * four has no value there is no answer, however small its weight. Heights above the ellipsoid become heights above mean
 * sea level by h = h_ellipsoid − N.
 *
 * @derivation bilinear: linear along one axis, then along the other.
 */
export function terrainFromRaster(raster: ElevationRaster): TerrainFromRaster {
  const refused = refusal(raster);
  if (refused !== undefined) return refused;
  const { width, height, values, hole } = raster;
  const undulation = raster.heightDatum === "ellipsoid" ? (raster.geoidUndulation as number) : 0;
  const locate = gridLocation(raster);
  const elevationAt = (position: GeodeticPosition): Elevation => {
    const location = locate(position);
    if (location === undefined) return { kind: "outside" };
    const { column, row } = location;
    const within = (at: number, count: number) => at >= -edgeTolerance && at <= count - 1 + edgeTolerance;
    if (!within(column, width) || !within(row, height)) return { kind: "outside" };
    const west = Math.min(Math.max(Math.floor(column), 0), width - 2);
    const first = Math.min(Math.max(Math.floor(row), 0), height - 2);
    const at = first * width + west;
    if (hole[at] || hole[at + 1] || hole[at + width] || hole[at + width + 1]) return { kind: "hole" };
    const east = column - west;
    const down = row - first;
    const upper = (values[at] as number) * (1 - east) + (values[at + 1] as number) * east;
    const lower = (values[at + width] as number) * (1 - east) + (values[at + width + 1] as number) * east;
    return { kind: "elevation", value: upper * (1 - down) + lower * down - undulation };
  };
  return { kind: "terrain", terrain: { elevationAt, sampleSpacing: pixelEdge(raster) / 2 } };
}

/** Even ground at one elevation above mean sea level [m], everywhere: a stated simplification, never a stand-in for a raster. */
export function evenGround(elevation: number): Terrain {
  return { elevationAt: () => ({ kind: "elevation", value: elevation }) };
}

function refusal(raster: ElevationRaster): TerrainFromRaster | undefined {
  const refuse = (because: "height-datum-unknown" | "geoid-undulation-missing" | "too-small", message: string) =>
    ({ kind: "refused", because, message }) as const;
  if (raster.heightDatum === "unknown") {
    return refuse(
      "height-datum-unknown",
      `${raster.path} does not say what its heights are measured from. State it in project.yaml: ` +
        "heightDatum mean-sea-level, or ellipsoid with its geoidUndulation.",
    );
  }
  if (raster.heightDatum === "ellipsoid" && raster.geoidUndulation === undefined) {
    return refuse(
      "geoid-undulation-missing",
      `${raster.path} holds heights above the ellipsoid. State geoidUndulation beside it in project.yaml: ` +
        "the height of mean sea level above the ellipsoid there.",
    );
  }
  if (raster.width < 2 || raster.height < 2) {
    return refuse("too-small", `${raster.path} has ${raster.width} × ${raster.height} pixels; at least 2 × 2 are needed to interpolate.`);
  }
  return undefined;
}
