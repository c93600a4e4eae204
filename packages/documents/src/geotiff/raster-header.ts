import type { GeoTIFF, GeoTIFFImage } from "geotiff";
import { type PlacementReading, rasterPlacement } from "./raster-placement.ts";
import { type GeoKeys, type ReferenceReading, rasterReference } from "./raster-reference.ts";
import { refused, type TiffRefusal } from "./tiff-refusal.ts";

/** What a raster file says about itself, all of it readable. */
export interface RasterHeader {
  readonly kind: "header";
  readonly image: GeoTIFFImage;
  readonly width: number;
  readonly height: number;
  readonly reference: Extract<ReferenceReading, { readonly kind: "reference" }>;
  readonly placement: Extract<PlacementReading, { readonly kind: "placement" }>;
  /** The value that stands for "no value"; undefined when the file names none. */
  readonly noValue: number | undefined;
}

/** Most pixels that are read; each takes 5 bytes once read and up to 13 while reading. */
export const mostPixels = 64 * 2 ** 20;
const mostImages = 16;
const smallestTile = 16;

const compressions: Readonly<Record<number, string>> = { 1: "none", 5: "LZW", 8: "deflate", 32946: "deflate", 32773: "PackBits" };
const lossyNames: Readonly<Record<number, string>> = {
  6: "JPEG",
  7: "JPEG",
  34712: "JPEG 2000",
  34887: "LERC",
  34925: "LZMA",
  50000: "Zstandard",
  50001: "WebP",
};

/** Reads tags, not pixels; anything that would make the pixels mean something else than plain numbers is refused by name. */
export async function rasterHeader(tiff: GeoTIFF): Promise<RasterHeader | TiffRefusal> {
  const image = await tiff.getImage(0);
  const [width, height] = [image.getWidth(), image.getHeight()];
  const refusal = sizeRefusal(image, width, height) ?? sampleRefusal(image) ?? (await scaleRefusal(image)) ?? (await maskRefusal(tiff));
  if (refusal !== undefined) return refusal;
  const keys = image.getGeoKeys() as GeoKeys | null;
  const reference = rasterReference(keys);
  if (reference.kind === "refused") return reference;
  const placement = rasterPlacement({
    pixelScale: await image.fileDirectory.loadValue("ModelPixelScale"),
    tiepoint: await image.fileDirectory.loadValue("ModelTiepoint"),
    transformation: await image.fileDirectory.loadValue("ModelTransformation"),
    pixelIsPoint: keys?.GTRasterTypeGeoKey === 2,
  });
  if (placement.kind === "refused") return placement;
  const noValue = noValueOf(image);
  return typeof noValue === "object" ? noValue : { kind: "header", image, width, height, reference, placement, noValue };
}

function sizeRefusal(image: GeoTIFFImage, width: number, height: number): TiffRefusal | undefined {
  if (!(width >= 1 && height >= 1)) return refused("no pixels", "at least one pixel", "the raster has no pixels");
  if (width * height > mostPixels) {
    const memory = Math.ceil((width * height * 13) / 2 ** 20);
    const message = `the raster has ${width} × ${height} pixels and would need about ${memory} MiB while it is read; at most ${mostPixels} pixels (${(mostPixels * 13) / 2 ** 20} MiB) are read, so cut it to the area of the project or make it coarser`;
    return { ...refused(`${width} × ${height} pixels`, `${mostPixels} pixels`, message), code: "too-large" };
  }
  const tile = [image.getTileWidth(), image.getTileHeight()];
  const tiled = image.fileDirectory.hasTag("TileWidth");
  const odd = tile.some((edge) => !(edge >= (tiled ? smallestTile : 1) && edge * (tiled ? smallestTile : 1) <= mostPixels));
  return odd && tiled
    ? refused(
        `tiles of ${tile.join(" × ")} pixels`,
        "tiles of at least 16 × 16 pixels",
        `the raster is cut into tiles of ${tile.join(" × ")} pixels, which no writer makes`,
      )
    : undefined;
}

function sampleRefusal(image: GeoTIFFImage): TiffRefusal | undefined {
  const samples = image.getSamplesPerPixel();
  if (samples !== 1) return refused(`${samples} bands`, "one band", `the raster has ${samples} bands; one band of numbers is read`);
  const compression = Number(image.fileDirectory.getValue("Compression") ?? 1);
  if (compressions[compression] === undefined) {
    const name = lossyNames[compression] ?? `method ${compression}`;
    return refused(
      `${name} compression`,
      "none, deflate, LZW or PackBits",
      `the raster is compressed by ${name}; none, deflate, LZW and PackBits are read`,
    );
  }
  const bits = image.getBitsPerSample();
  const format = image.getSampleFormat();
  const integer = (format === 1 || format === 2) && [8, 16, 32].includes(bits);
  const real = format === 3 && [32, 64].includes(bits);
  if (integer || real) return undefined;
  const read = `${bits}-bit values of sample format ${format}`;
  return refused(
    read,
    "integers of 8, 16 or 32 bits, floating point of 32 or 64 bits",
    `the raster holds ${read}; integers of 8, 16 or 32 bits and floating point of 32 or 64 bits are read`,
  );
}

/** Scale, offset and units sit in the metadata of the writer most used; values under them are not what they seem. */
async function scaleRefusal(image: GeoTIFFImage): Promise<TiffRefusal | undefined> {
  const text: unknown = image.fileDirectory.hasTag("GDAL_METADATA") ? await image.fileDirectory.loadValue("GDAL_METADATA") : undefined;
  if (typeof text !== "string") return undefined;
  for (const [, attributes = "", value = ""] of text.matchAll(/<Item\b([^>]*)>([^<]*)<\/Item>/gu)) {
    const role = /role="([^"]*)"/u.exec(attributes)?.[1]?.toLowerCase();
    const neutral = role === "scale" ? Number(value) === 1 : role === "offset" ? Number(value) === 0 : true;
    if (!neutral) {
      const transform = `${role === "offset" ? "an offset" : "a scale"} of ${Number(Number(value).toPrecision(12))}`;
      return refused(transform, "plain values", `the values of the raster stand under ${transform}; write it with plain values first`);
    }
    const unit = role === "unittype" ? value.trim().toLowerCase() : "";
    if (!["", "m", "metre", "meter", "metres", "meters"].includes(unit)) {
      return refused(
        `values in "${value.trim()}"`,
        "meters",
        `the raster says that its values are in "${value.trim()}"; meters are read, so convert it first`,
      );
    }
  }
  return undefined;
}

/** A mask of its own inside the file would hide pixels that the values do not tell; overviews are of no concern. */
async function maskRefusal(tiff: GeoTIFF): Promise<TiffRefusal | undefined> {
  for (let index = 1; index < mostImages; index++) {
    const next = await nextImage(tiff, index);
    if (next === undefined) return undefined;
    const subtype = Number(next.fileDirectory.getValue("NewSubfileType") ?? 0);
    if ((subtype & 4) !== 0)
      return refused("a mask inside the file", "a nodata value", "the raster marks holes by a mask; write them as a nodata value first");
    if ((subtype & 1) === 0)
      return refused("several images", "one image", "the file holds several images; one is read, so keep each in a file of its own");
  }
  return undefined;
}

async function nextImage(tiff: GeoTIFF, index: number): Promise<GeoTIFFImage | undefined> {
  try {
    return await tiff.getImage(index);
  } catch {
    return undefined;
  }
}

function noValueOf(image: GeoTIFFImage): number | undefined | TiffRefusal {
  if (!image.fileDirectory.hasTag("GDAL_NODATA")) return undefined;
  const text = String(image.fileDirectory.getValue("GDAL_NODATA")).replaceAll("\0", "").trim();
  if (text === "") return undefined;
  if (/^[+-]?nan$/iu.test(text)) return Number.NaN;
  const value = /^[+-]?inf(inity)?$/iu.test(text)
    ? text.startsWith("-")
      ? Number.NEGATIVE_INFINITY
      : Number.POSITIVE_INFINITY
    : Number(text);
  return Number.isNaN(value)
    ? refused(`a nodata value of "${text}"`, "a number", `the raster's nodata value "${text}" is no number`)
    : value;
}
