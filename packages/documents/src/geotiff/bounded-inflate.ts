import { inflateSync } from "node:zlib";
import { addDecoder, BaseDecoder } from "geotiff";

/** Inflates one strip or tile and never more than the pixels that it must hold, whatever the file claims. */
class BoundedInflate extends BaseDecoder {
  override decodeBlock(block: ArrayBuffer): ArrayBuffer {
    const { tileWidth, tileHeight, bitsPerSample } = this.parameters;
    const bits = typeof bitsPerSample === "number" ? bitsPerSample : Number(bitsPerSample[0] ?? 8);
    const size = Math.ceil((tileWidth * tileHeight * bits) / 8);
    const bytes = inflateSync(new Uint8Array(block), { maxOutputLength: Math.max(1, Math.min(size, 2 ** 30)) });
    return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
  }
}

/** Puts the bounded decoder in the place of the library's own, which inflates without end. */
export function installBoundedInflate(): void {
  addDecoder(
    [8, 32946],
    () => Promise.resolve(BoundedInflate),
    async (directory) => {
      const width = Number(await directory.loadValue("ImageWidth"));
      const height = Number(await directory.loadValue("ImageLength"));
      const tiled = directory.hasTag("TileWidth");
      return {
        tileWidth: tiled ? Number(await directory.loadValue("TileWidth")) : width,
        tileHeight: tiled
          ? Number(await directory.loadValue("TileLength"))
          : Math.min(height, Number((await directory.loadValue("RowsPerStrip")) ?? height)),
        predictor: Number((await directory.loadValue("Predictor")) ?? 1),
        bitsPerSample: (await directory.loadValue("BitsPerSample")) ?? [8],
        planarConfiguration: Number((await directory.loadValue("PlanarConfiguration")) ?? 1),
      };
    },
    false,
  );
}
