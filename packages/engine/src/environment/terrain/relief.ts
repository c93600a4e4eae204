import type { Terrain } from "./terrain.ts";

/** A rectangle of longitude and latitude [°]. */
export interface DegreeBounds {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** Elevations on an even grid of longitude and latitude, first row northernmost, null where the ground is not known. */
export interface Relief extends DegreeBounds {
  readonly width: number;
  readonly height: number;
  readonly elevation: readonly (number | null)[];
}

const degree = Math.PI / 180;

/** A thinned picture of the ground: elevation [m] sampled at the centres of `width` × `height` equal cells. Undefined when nothing is known there. */
export function thinnedRelief(
  terrain: Terrain,
  bounds: DegreeBounds,
  size: { readonly width: number; readonly height: number },
): Relief | undefined {
  const elevation: (number | null)[] = [];
  let known = 0;
  for (let row = 0; row < size.height; row++) {
    const latitude = bounds.north + ((bounds.south - bounds.north) * (row + 0.5)) / size.height;
    for (let column = 0; column < size.width; column++) {
      const longitude = bounds.west + ((bounds.east - bounds.west) * (column + 0.5)) / size.width;
      const ground = terrain.elevationAt({ latitude: latitude * degree, longitude: longitude * degree });
      if (ground.kind === "elevation") known++;
      elevation.push(ground.kind === "elevation" ? ground.value : null);
    }
  }
  return known > 0 ? { ...bounds, ...size, elevation } : undefined;
}
