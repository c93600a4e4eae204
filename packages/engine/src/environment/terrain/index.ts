export type { RasterGrid, RasterReference } from "./raster-grid.ts";
export { type DegreeBounds, type Relief, thinnedRelief } from "./relief.ts";
export { type Elevation, type ElevationRaster, evenGround, type Terrain, type TerrainFromRaster, terrainFromRaster } from "./terrain.ts";
