/** A raster before it is written: corner and pixel size in degrees, north row first. */
export interface DrawnRaster {
  readonly west: number;
  readonly south: number;
  readonly step: number;
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}
export function demoElevation(): DrawnRaster;
export function demoPopulation(): DrawnRaster;
