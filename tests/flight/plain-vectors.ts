// Vectors of the plain recomputation: three numbers in body axes, x forward, y right, z down.

export type Vector = readonly [number, number, number];

export const vector = (place: { readonly x: number; readonly y: number; readonly z: number }): Vector => [place.x, place.y, place.z];

export const sum = (...terms: readonly Vector[]): Vector =>
  terms.reduce<Vector>((total, term) => [total[0] + term[0], total[1] + term[1], total[2] + term[2]], [0, 0, 0]);

export const scaled = (factor: number, v: Vector): Vector => [factor * v[0], factor * v[1], factor * v[2]];

export const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** Three directions that stand at right angles to each other, of a rotor or its disc. */
export interface Axes {
  readonly aft: Vector;
  readonly right: Vector;
  readonly up: Vector;
}

/** Tilted back about its right axis, then to the right about its aft axis [rad]. */
export function tilted(axes: Axes, back: number, right: number): Axes {
  const [cb, sb, cr, sr] = [Math.cos(back), Math.sin(back), Math.cos(right), Math.sin(right)];
  const aft = less(scaled(cb, axes.aft), scaled(sb, axes.up));
  const upBack = sum(scaled(cb, axes.up), scaled(sb, axes.aft));
  return { aft, up: sum(scaled(cr, upBack), scaled(sr, axes.right)), right: less(scaled(cr, axes.right), scaled(sr, upBack)) };
}

/** Upright: up against the down axis of the body. */
export const upright: Axes = { aft: [-1, 0, 0], right: [0, 1, 0], up: [0, 0, -1] };
