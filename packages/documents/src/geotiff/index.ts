export { type DecodedRaster, largestFile, readGeoTiff } from "./read-raster.ts";
export type { TiffRefusal } from "./tiff-refusal.ts";
