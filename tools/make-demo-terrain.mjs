// Writes the rasters of the demo project: node tools/make-demo-terrain.mjs [--survey FILE]
// The ground is invented and lies in open ocean. One seed makes one archipelago, the same on every machine.
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { deflateSync } from "node:zlib";
import { writeArrayBuffer } from "geotiff";
import { archipelago, lowIslands, settlement } from "./demo-relief.mjs";

export const seed = 20310430;
const noValue = -9999;
/** Kilometers in a degree at 47.5° south on a sphere; the relief is drawn in kilometers, so this need not be exact. */
const kilometersPerDegree = { x: 75.12, y: 111.19 };

/** Corner in the south-west [degrees], pixel size [degrees], size [pixels]. */
const archipelagoArea = { west: -124.32, south: -47.6, step: 0.0005, width: 840, height: 400 };
const peopleArea = { west: -124.32, south: -47.6, step: 0.002, width: 210, height: 100 };
const surveyArea = { west: -123.86, south: -47.78, step: 0.0005, width: 480, height: 260 };

/** Elevation of the archipelago in steps of 0.1 m, north row first. */
export function demoElevation() {
  return sampled(archipelagoArea, archipelago(seed), 10);
}

/** People per square kilometer in whole numbers, north row first. */
export function demoPopulation() {
  return sampled(peopleArea, settlement(seed), 1);
}

/** Ground of the second survey in steps of 0.1 m, before other software projects and writes it. */
export function surveyElevation() {
  return sampled(surveyArea, lowIslands(seed + 1), 10);
}

function sampled(area, height, perUnit) {
  const values = new Float32Array(area.width * area.height);
  for (let row = 0; row < area.height; row++) {
    for (let column = 0; column < area.width; column++) {
      const x = (column + 0.5) * area.step * kilometersPerDegree.x;
      const y = (area.height - row - 0.5) * area.step * kilometersPerDegree.y;
      values[row * area.width + column] = Math.round(perUnit * height(x, y)) / perUnit;
    }
  }
  return { ...area, values };
}

/** GeoTIFF in WGS 84, one strip of deflated 32-bit values; the library writes what we hand it, so the strip is packed here. */
function geoTiff({ west, south, step, width, height, values }) {
  const packed = new Uint8Array(deflateSync(bigEndian(values), { level: 9 }));
  const bytes = writeArrayBuffer(packed, {
    ImageWidth: width,
    ImageLength: height,
    BitsPerSample: [32],
    SampleFormat: [3],
    SamplesPerPixel: [1],
    Compression: 8,
    RowsPerStrip: height,
    StripByteCounts: [packed.length],
    ModelPixelScale: [step, step, 0],
    ModelTiepoint: [0, 0, 0, west, south + height * step, 0],
    GeographicTypeGeoKey: 4326,
    GeogCitationGeoKey: "WGS 84",
    GTModelTypeGeoKey: 2,
    GTRasterTypeGeoKey: 1,
    GDAL_NODATA: String(noValue),
  });
  return new Uint8Array(bytes);
}

/** The library writes big-endian files. */
function bigEndian(values) {
  const view = new DataView(new ArrayBuffer(4 * values.length));
  for (const [index, value] of values.entries()) view.setFloat32(4 * index, value, false);
  return new Uint8Array(view.buffer);
}

function main(arguments_) {
  const survey = arguments_.indexOf("--survey");
  if (survey >= 0) return writeFileSync(arguments_[survey + 1], geoTiff(surveyElevation()));
  const folder = new URL("../demo/terrain/", import.meta.url);
  writeFileSync(new URL("elevation.tif", folder), geoTiff(demoElevation()));
  writeFileSync(new URL("population.tif", folder), geoTiff(demoPopulation()));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main(process.argv.slice(2));
