import type { Raster } from "@wingseed/engine";
import { fromArrayBuffer } from "geotiff";
import { installBlockDecoders } from "./block-decoders.ts";
import { type RasterHeader, rasterHeader } from "./raster-header.ts";
import { refused, type TiffRefusal } from "./tiff-refusal.ts";

/** A raster as the file has it, before the project says what its heights are measured from. */
export interface DecodedRaster {
  readonly kind: "raster";
  readonly grid: Pick<Raster, "width" | "height" | "values" | "hole" | "origin" | "step" | "crs">;
  readonly statedDatum?: "mean-sea-level" | "ellipsoid";
  /** Sentences on what was understood but deserves a look. */
  readonly cautions: readonly string[];
}

/** Most bytes of a file that are read. */
export const largestFile = 512 * 2 ** 20;

installBlockDecoders();

/**
 * Decodes a single-band GeoTIFF in WGS 84 or WGS 84 UTM: row 0 north, origin at the centre of the north-west pixel, values
 * and holes in shared memory. Never throws; what cannot be read comes back as a refusal.
 */
export async function readGeoTiff(bytes: Uint8Array): Promise<DecodedRaster | TiffRefusal> {
  try {
    const header = await rasterHeader(await fromArrayBuffer(arrayBuffer(bytes)));
    return header.kind === "refused" ? header : await decoded(header);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return refused("bytes that are no GeoTIFF", "a GeoTIFF of one band", `this cannot be read as a GeoTIFF: ${reason}`);
  }
}

function arrayBuffer(bytes: Uint8Array): ArrayBuffer {
  const { buffer, byteOffset, byteLength } = bytes;
  if (buffer instanceof ArrayBuffer && byteOffset === 0 && byteLength === buffer.byteLength) return buffer;
  return bytes.slice().buffer as ArrayBuffer;
}

async function decoded(header: RasterHeader): Promise<DecodedRaster> {
  const { image, width, height, reference, placement, noValue } = header;
  const pixels = (await image.readRasters({ samples: [0], interleave: true })) as ArrayLike<number>;
  const values = new Float32Array(new SharedArrayBuffer(4 * width * height));
  const hole = new Uint8Array(new SharedArrayBuffer(width * height));
  const southUp = placement.step.y > 0;
  // The tag is text: in a file of 32-bit values it means the nearest of those.
  const empty = noValue !== undefined && image.getSampleFormat() === 3 && image.getBitsPerSample() === 32 ? Math.fround(noValue) : noValue;
  let unreal = 0;
  for (let row = 0; row < height; row++) {
    const from = (southUp ? height - 1 - row : row) * width;
    for (let column = 0; column < width; column++) {
      const value = pixels[from + column] as number;
      const rounded = Math.fround(value);
      const missing = value === empty;
      if (missing || !Number.isFinite(rounded)) {
        hole[row * width + column] = 1;
        if (!missing && !Number.isNaN(empty ?? 0)) unreal += 1;
      } else values[row * width + column] = rounded;
    }
  }
  const { step, firstCentre } = placement;
  const north = southUp ? firstCentre.y + (height - 1) * step.y : firstCentre.y;
  const west = reference.crs.kind === "wgs84" && firstCentre.x >= 180 ? firstCentre.x - 360 : firstCentre.x;
  const grid = {
    width,
    height,
    values,
    hole,
    origin: { x: west, y: north },
    step: { x: step.x, y: -Math.abs(step.y) },
    crs: reference.crs,
  };
  const stated = reference.statedDatum === undefined ? {} : { statedDatum: reference.statedDatum };
  return { kind: "raster", grid, ...stated, cautions: cautions(header, unreal) };
}

function cautions({ noValue }: RasterHeader, unreal: number): readonly string[] {
  const found: string[] = [];
  if (noValue === undefined) found.push("the raster names no nodata value, so every value counts as measured");
  if (unreal > 0) found.push(`the raster has ${unreal} values that are no finite numbers; they count as holes`);
  return found;
}
