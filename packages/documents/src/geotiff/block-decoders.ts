import { inflateSync } from "node:zlib";
import { addDecoder, BaseDecoder, type ImageFileDirectory } from "geotiff";
import { type Unpack, unpackBits, unpackLzw } from "./unpacked-bytes.ts";

const largestBlock = 2 ** 30;

const unpackDeflate: Unpack = (packed, size) => inflateSync(packed, { maxOutputLength: Math.max(1, size) });

/**
 * Puts decoders that never make more than the pixels a strip or tile must hold, and end on every input, in the place of the
 * library's own, which inflate without end and may loop on damaged data.
 */
export function installBlockDecoders(): void {
  install([5], unpackLzw);
  install([8, 32946], unpackDeflate);
  install([32773], unpackBits);
}

type NumberTag = "ImageWidth" | "ImageLength" | "TileWidth" | "TileLength" | "RowsPerStrip" | "Predictor" | "PlanarConfiguration";
type Parameters = ConstructorParameters<typeof BaseDecoder>[0];

function install(methods: number[], unpack: Unpack): void {
  class BoundedDecoder extends BaseDecoder {
    override decodeBlock(block: ArrayBuffer): ArrayBuffer {
      const { tileWidth, tileHeight, bitsPerSample } = this.parameters;
      const bits = typeof bitsPerSample === "number" ? bitsPerSample : Number(bitsPerSample[0] ?? 8);
      const size = Math.ceil((tileWidth * tileHeight * bits) / 8);
      if (!(size <= largestBlock)) throw new Error("one of its strips or tiles is larger than 1 GiB");
      return unpack(new Uint8Array(block), size).slice().buffer as ArrayBuffer;
    }
  }
  addDecoder(methods, () => Promise.resolve(BoundedDecoder), blockParameters, false);
}

/** Size and form of a strip or tile; a strip is never higher than the image, whatever its tag says. */
async function blockParameters(directory: ImageFileDirectory): Promise<Parameters> {
  const number = async (tag: NumberTag, otherwise: number) => Number((await directory.loadValue(tag)) ?? otherwise);
  const width = await number("ImageWidth", 0);
  const height = await number("ImageLength", 0);
  const tiled = directory.hasTag("TileWidth");
  return {
    tileWidth: tiled ? await number("TileWidth", width) : width,
    tileHeight: tiled ? await number("TileLength", height) : Math.min(height, await number("RowsPerStrip", height)),
    predictor: await number("Predictor", 1),
    bitsPerSample: ((await directory.loadValue("BitsPerSample")) ?? [8]) as Parameters["bitsPerSample"],
    planarConfiguration: await number("PlanarConfiguration", 1),
  };
}
