import proj4 from "proj4";
import { describe, expect, it } from "vitest";
import { positionFromDegrees } from "../geodesy/index.ts";
import { type ElevationRaster, evenGround, type Terrain, terrainFromRaster, thinnedRelief } from "./index.ts";

/** A plane z = 100 + 3 column − 2 row: bilinear interpolation is exact on it. */
function plane(more: Partial<ElevationRaster> = {}): ElevationRaster {
  const width = 5;
  const height = 4;
  const values = Float32Array.from({ length: width * height }, (_, at) => 100 + 3 * (at % width) - 2 * Math.floor(at / width));
  return {
    path: "terrain/plane.tif",
    width,
    height,
    values,
    hole: new Uint8Array(width * height),
    origin: { x: -31, y: 41 },
    step: { x: 0.01, y: -0.01 },
    crs: { kind: "wgs84" },
    heightDatum: "mean-sea-level",
    ...more,
  };
}

function terrainOf(raster: ElevationRaster): Terrain {
  const result = terrainFromRaster(raster);
  if (result.kind === "refused") throw new Error(result.message);
  return result.terrain;
}

describe("terrain from a raster in longitude and latitude", () => {
  it("is bilinear between pixel centres", () => {
    const ground = terrainOf(plane()).elevationAt(positionFromDegrees([-31 + 0.0123, 41 - 0.0271]));
    expect(ground.kind === "elevation" && ground.value).toBeCloseTo(100 + 3 * 1.23 - 2 * 2.71, 5);
  });

  it("answers on the outermost centres and not beyond", () => {
    const terrain = terrainOf(plane());
    expect(terrain.elevationAt(positionFromDegrees([-31, 41]))).toMatchObject({ kind: "elevation" });
    expect(terrain.elevationAt(positionFromDegrees([-31 + 0.04, 41 - 0.03]))).toMatchObject({ kind: "elevation" });
    expect(terrain.elevationAt(positionFromDegrees([-31.001, 41]))).toEqual({ kind: "outside" });
    expect(terrain.elevationAt(positionFromDegrees([-31, 41.001]))).toEqual({ kind: "outside" });
  });

  it("a hole among the four neighbours is a hole, even at the far corner", () => {
    const hole = new Uint8Array(20);
    hole[1 * 5 + 2] = 1;
    const terrain = terrainOf(plane({ hole }));
    expect(terrain.elevationAt(positionFromDegrees([-31 + 0.0101, 41 - 0.0001]))).toEqual({ kind: "hole" });
    expect(terrain.elevationAt(positionFromDegrees([-31 + 0.0301, 41 - 0.0001]))).toMatchObject({ kind: "elevation" });
  });

  it("works across the 180° meridian", () => {
    const terrain = terrainOf(plane({ origin: { x: 179.98, y: 41 } }));
    const ground = terrain.elevationAt(positionFromDegrees([-179.99, 41]));
    expect(ground.kind === "elevation" && ground.value).toBeCloseTo(100 + 3 * 3, 4);
  });
});

describe("terrain from a raster in UTM", () => {
  it("meets the pixel that the projection says", () => {
    // Zone 25 north, 500 km east is the central meridian 33° west.
    const raster = plane({ crs: { kind: "utm", zone: 25, north: true }, origin: { x: 500_000, y: 4_540_000 }, step: { x: 30, y: -30 } });
    const inverse = proj4("+proj=utm +zone=25 +datum=WGS84 +units=m +no_defs").inverse([500_000 + 45, 4_540_000 - 60]) as [number, number];
    const ground = terrainOf(raster).elevationAt(positionFromDegrees(inverse));
    expect(ground.kind === "elevation" && ground.value).toBeCloseTo(100 + 3 * 1.5 - 2 * 2, 4);
  });

  it("puts the central meridian at 500 km east and scales it by 0.9996", () => {
    // The equator to 1° north along the central meridian is 110 574.4 m on the ellipsoid (computed by the geodesic package).
    const raster = plane({
      crs: { kind: "utm", zone: 25, north: true },
      origin: { x: 500_000, y: 110_530.2 + 15 },
      step: { x: 30, y: -30 },
    });
    const ground = terrainOf(raster).elevationAt(positionFromDegrees([-33, 1]));
    expect(ground.kind === "elevation" && ground.value).toBeCloseTo(100 - 2 * 0.5, 2);
  });

  it("southern zones count from 10 000 km", () => {
    const raster = plane({
      crs: { kind: "utm", zone: 25, north: false },
      origin: { x: 500_000, y: 10_000_000 - 110_530.2 + 15 },
      step: { x: 30, y: -30 },
    });
    const ground = terrainOf(raster).elevationAt(positionFromDegrees([-33, -1]));
    expect(ground.kind === "elevation" && ground.value).toBeCloseTo(100 - 2 * 0.5, 2);
  });

  it("the far side of the world is outside, not a number", () => {
    const raster = plane({ crs: { kind: "utm", zone: 25, north: true }, origin: { x: 500_000, y: 4_540_000 }, step: { x: 30, y: -30 } });
    expect(terrainOf(raster).elevationAt(positionFromDegrees([150, -40]))).toEqual({ kind: "outside" });
  });
});

describe("height datum", () => {
  it("heights above the ellipsoid become heights above mean sea level by the undulation", () => {
    const terrain = terrainOf(plane({ heightDatum: "ellipsoid", geoidUndulation: 52 }));
    const ground = terrain.elevationAt(positionFromDegrees([-31, 41]));
    expect(ground.kind === "elevation" && ground.value).toBeCloseTo(48, 5);
  });

  it("an unstated datum is refused and the message says the cure", () => {
    const result = terrainFromRaster(plane({ heightDatum: "unknown" }));
    expect(result).toMatchObject({ kind: "refused", because: "height-datum-unknown" });
    expect(result.kind === "refused" && result.message).toContain("project.yaml");
  });

  it("ellipsoid heights without undulation are refused", () => {
    expect(terrainFromRaster(plane({ heightDatum: "ellipsoid" }))).toMatchObject({ kind: "refused", because: "geoid-undulation-missing" });
  });

  it("a raster of one row cannot be interpolated", () => {
    expect(terrainFromRaster(plane({ height: 1 }))).toMatchObject({ kind: "refused", because: "too-small" });
  });
});

describe("thinned relief", () => {
  it("samples cell centres from the north-west and leaves unknown ground null", () => {
    const relief = thinnedRelief(terrainOf(plane()), { west: -31, east: -30.96, south: 40.96, north: 41 }, { width: 2, height: 2 });
    expect(relief?.elevation[0]).toBeCloseTo(100 + 3 - 2, 4);
    expect(relief?.elevation[1]).toBeCloseTo(100 + 9 - 2, 4);
    expect(relief?.elevation[2]).toBeCloseTo(100 + 3 - 6, 4);
    const beyond = thinnedRelief(terrainOf(plane()), { west: 0, east: 1, south: 0, north: 1 }, { width: 2, height: 2 });
    expect(beyond).toBeUndefined();
  });

  it("even ground is known everywhere", () => {
    expect(evenGround(12).elevationAt(positionFromDegrees([0, 0]))).toEqual({ kind: "elevation", value: 12 });
  });
});
