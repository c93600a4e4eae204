/** A vector in body axes: x forward, y right, z down. */
export type Vector = readonly [number, number, number];

/** Axes of a shaft or disc in body axes: aft, right, up along the thrust; right-handed in this order. */
export interface DiscAxes {
  readonly aft: Vector;
  readonly right: Vector;
  readonly up: Vector;
}

/** @derivation a × b */
export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** @derivation sum of products */
export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Axes of an upright shaft. */
export const upright: DiscAxes = { aft: [-1, 0, 0], right: [0, 1, 0], up: [0, 0, -1] };

/**
 * Axes tilted back, then right, relative to given ones.
 *
 * @param back top of the normal moves aft [rad]
 * @param right top of the normal moves right [rad]
 * @derivation rotation about the right axis, then about the aft axis
 */
export function tilted(axes: DiscAxes, back: number, right: number): DiscAxes {
  const sb = Math.sin(back);
  const cb = Math.cos(back);
  const sr = Math.sin(right);
  const cr = Math.cos(right);
  const { aft: a, right: r, up: u } = axes;
  // Tilting back turns the normal towards aft and the aft axis down.
  const ux = u[0] * cb + a[0] * sb;
  const uy = u[1] * cb + a[1] * sb;
  const uz = u[2] * cb + a[2] * sb;
  return {
    aft: [a[0] * cb - u[0] * sb, a[1] * cb - u[1] * sb, a[2] * cb - u[2] * sb],
    right: [r[0] * cr - ux * sr, r[1] * cr - uy * sr, r[2] * cr - uz * sr],
    up: [ux * cr + r[0] * sr, uy * cr + r[1] * sr, uz * cr + r[2] * sr],
  };
}
