import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readGeoTiff } from "./read-raster.ts";

const fixture = (name: string) => new Uint8Array(readFileSync(new URL(`../../fixtures/geotiff/${name}.tif`, import.meta.url)));

/** What fixtures/make-geotiff.sh wrote at this row and column, counted from the north-west. */
const written = (row: number, column: number) => 10 * row + column - 50;
const holeAt = { row: 3, column: 5 };

async function rasterOf(name: string) {
  const raster = await readGeoTiff(fixture(name));
  if (raster.kind === "refused") throw new Error(raster.message);
  return raster;
}

describe("rasters by another writer", () => {
  test.each([
    "int16",
    "float32",
    "float64",
    "int32",
    "int16-deflate",
    "float32-deflate",
    "float32-deflate-strips",
    "int16-lzw",
    "float32-lzw",
    "int16-packbits",
    "int16-tiled",
    "float32-tiled-deflate",
    "int16-big-endian",
    "int16-bigtiff",
    "int16-pixel-is-point",
    "int16-south-up",
    "int16-south-up-point",
    "float32-utm-south",
    "float32-utm-north",
    "int16-egm96",
    "int16-overviews",
    "float32-nan-nodata",
  ])("%s holds every value that was written, north first, and the one hole", async (name) => {
    const { grid, cautions } = await rasterOf(name);
    expect([grid.width, grid.height]).toEqual([40, 20]);
    for (let row = 0; row < 20; row++) {
      for (let column = 0; column < 40; column++) {
        const hole = row === holeAt.row && column === holeAt.column;
        expect(grid.hole[40 * row + column]).toBe(hole ? 1 : 0);
        expect(grid.values[40 * row + column]).toBe(hole ? 0 : written(row, column));
      }
    }
    expect(cautions).toEqual([]);
    expect(grid.values.buffer).toBeInstanceOf(SharedArrayBuffer);
  });

  test.each(["int16", "int16-pixel-is-point", "int16-south-up", "int16-south-up-point", "int16-big-endian", "float32-tiled-deflate"])(
    "%s puts the centre of the north-west pixel half a pixel inside the corner",
    async (name) => {
      const { grid } = await rasterOf(name);
      expect(grid.crs).toEqual({ kind: "wgs84" });
      expect(grid.origin.x).toBeCloseTo(-123.9995, 9);
      expect(grid.origin.y).toBeCloseTo(-47.0005, 9);
      expect(grid.step.x).toBeCloseTo(0.001, 12);
      expect(grid.step.y).toBeCloseTo(-0.001, 12);
    },
  );

  test("UTM rasters keep zone, hemisphere and meters", async () => {
    const south = (await rasterOf("float32-utm-south")).grid;
    expect(south.crs).toEqual({ kind: "utm", zone: 10, north: false });
    expect(south.origin).toEqual({ x: 400015, y: 4699985 });
    expect(south.step).toEqual({ x: 30, y: -30 });
    expect((await rasterOf("float32-utm-north")).grid.crs).toEqual({ kind: "utm", zone: 32, north: true });
  });

  test("without a nodata value every value counts, and that is said", async () => {
    const { grid, cautions } = await rasterOf("int16-no-nodata");
    expect(grid.values[40 * holeAt.row + holeAt.column]).toBe(-9999);
    expect(grid.hole.some((flag) => flag === 1)).toBe(false);
    expect(cautions).toEqual(["the raster names no nodata value, so every value counts as measured"]);
  });

  test("bytes are read as numbers", async () => {
    const { grid } = await rasterOf("uint8");
    for (const [index, value] of grid.values.entries()) {
      const [row, column] = [Math.floor(index / 40), index % 40];
      const hole = row === holeAt.row && column === holeAt.column;
      expect(value).toBe(hole ? 0 : Math.max(0, written(row, column)));
    }
  });

  test("a vertical system that the file names is passed on", async () => {
    expect((await rasterOf("int16-egm96")).statedDatum).toBe("mean-sea-level");
    expect((await rasterOf("int16")).statedDatum).toBeUndefined();
  });
});

test.each([
  [
    "refused-other-system",
    /^the coordinates of the raster are in "CH1903\+ \/ LV95" \(EPSG 2056\); WGS 84 longitude and latitude .* convert it first$/,
  ],
  ["refused-other-datum", /in "ETRS89" \(EPSG 4258\)/],
  ["refused-web-mercator", /in "WGS 84 \/ Pseudo-Mercator" \(EPSG 3857\)/],
  ["refused-no-system", /^the raster does not say where on Earth it lies/],
  ["refused-scale", /^the values of the raster stand under a scale of 0\.1;/],
  ["refused-offset", /^the values of the raster stand under an offset of 100;/],
  ["refused-jpeg", /^the raster is compressed by JPEG;/],
  ["refused-zstandard", /^the raster is compressed by Zstandard;/],
  ["refused-two-bands", /^the raster has 2 bands;/],
  ["refused-complex", /^the raster holds 32-bit values of sample format 5;/],
  ["refused-mask", /^the raster marks holes by a mask;/],
  ["refused-rotated", /^the raster is rotated against its coordinates;/],
  ["refused-westward", /^the rows of the raster run from east to west;/],
  ["refused-feet", /^the raster says that its values are in "ft";/],
  ["refused-no-placement", /^the raster does not say where its pixels lie/],
])("%s is refused by name", async (name, sentence) => {
  const raster = await readGeoTiff(fixture(name));
  if (raster.kind !== "refused") throw new Error("was read");
  expect(raster.message).toMatch(sentence);
  expect(raster.read).not.toBe("");
  expect(raster.allowed).not.toBe("");
});

test("a raster too large to hold is refused with its size and memory", async () => {
  const bytes = fixture("int16");
  // ImageWidth (256) and ImageLength (257) stand first in the directory, as 16-bit values.
  const view = new DataView(bytes.buffer);
  const directory = view.getUint32(4, true);
  for (const entry of [0, 1]) view.setUint16(directory + 2 + 12 * entry + 8, 60000, true);
  const raster = await readGeoTiff(bytes);
  expect(raster).toMatchObject({ kind: "refused", code: "too-large" });
  if (raster.kind === "refused") expect(raster.message).toContain("60000 × 60000 pixels and would need about 44632 MiB");
});

test.each([[[]], [[1, 2, 3]], [[73, 73, 42, 0]], [[73, 73, 42, 0, 8, 0, 0, 0, 255, 255]]])("bytes %j are no GeoTIFF", async (bytes) => {
  const raster = await readGeoTiff(Uint8Array.from(bytes));
  expect(raster).toMatchObject({ kind: "refused", code: "raster" });
  if (raster.kind === "refused") expect(raster.message).toMatch(/^this cannot be read as a GeoTIFF: /);
});

test.each(["int16-lzw", "float32-lzw", "float32-deflate", "int16-packbits", "int16-tiled", "int16"])(
  "%s cut short is refused, not filled up",
  async (name) => {
    const whole = fixture(name);
    const raster = await readGeoTiff(whole.slice(0, whole.length - (name === "int16-tiled" ? 450 : 40)));
    if (raster.kind !== "refused") throw new Error("was read");
    expect(raster.message).toMatch(/^this cannot be read as a GeoTIFF: /);
  },
);
