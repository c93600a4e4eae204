import type { BodyVector } from "./moving-aircraft.ts";

/** Places in the state of a rigid body: velocity over ground and rates in body axes, quaternion to earth axes, place north, east, down. */
export const bodyState = { u: 0, v: 1, w: 2, p: 3, q: 4, r: 5, quaternion: 6, north: 10, east: 11, down: 12, size: 13 } as const;

/** Mass and inertia, made ready. */
export interface RigidBody {
  readonly mass: number;
  readonly inertia: Float64Array;
  readonly inverseInertia: Float64Array;
}

/** Undefined-free or an error: an inertia that is no body's is a mistake of the caller. */
export function rigidBody(mass: number, inertia: Float64Array): RigidBody {
  const [a, b, c, d, e, f, g, h, i] = inertia as unknown as readonly number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!(mass > 0) || !(determinant > 0))
    throw new RangeError(`mass ${mass} kg and this inertia (determinant ${determinant}) belong to no body`);
  const inverse = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  return { mass, inertia, inverseInertia: Float64Array.from(inverse, (entry) => entry / determinant) };
}

/**
 * Rates of change of a rigid body's thirteen states over a flat earth at rest, from force (without weight) and moment in body axes:
 *
 *     V' = F/m − ω × V + Rᵀ g      ω' = I⁻¹ (M − ω × I ω)      x' = R V
 *
 * and the quaternion's kinematics, its length left as it is.
 *
 * @param rotation body to earth of this state, row by row
 * @source etkin-reid-1996, chapter 4, Euler's equations in body axes, unchecked
 */
export function rigidBodyRates(
  body: RigidBody,
  gravity: number,
  state: Float64Array,
  rotation: Float64Array,
  force: BodyVector,
  moment: BodyVector,
  rate: Float64Array,
): void {
  const [u, v, w] = [state[0] as number, state[1] as number, state[2] as number];
  const [p, q, r] = [state[3] as number, state[4] as number, state[5] as number];
  const { mass, inertia: j, inverseInertia: k } = body;
  rate[0] = force[0] / mass - (q * w - r * v) + (rotation[6] as number) * gravity;
  rate[1] = force[1] / mass - (r * u - p * w) + (rotation[7] as number) * gravity;
  rate[2] = force[2] / mass - (p * v - q * u) + (rotation[8] as number) * gravity;
  const hx = (j[0] as number) * p + (j[1] as number) * q + (j[2] as number) * r;
  const hy = (j[3] as number) * p + (j[4] as number) * q + (j[5] as number) * r;
  const hz = (j[6] as number) * p + (j[7] as number) * q + (j[8] as number) * r;
  const mx = moment[0] - (q * hz - r * hy);
  const my = moment[1] - (r * hx - p * hz);
  const mz = moment[2] - (p * hy - q * hx);
  rate[3] = (k[0] as number) * mx + (k[1] as number) * my + (k[2] as number) * mz;
  rate[4] = (k[3] as number) * mx + (k[4] as number) * my + (k[5] as number) * mz;
  rate[5] = (k[6] as number) * mx + (k[7] as number) * my + (k[8] as number) * mz;
  const [a, b, c, d] = [state[6] as number, state[7] as number, state[8] as number, state[9] as number];
  rate[6] = (-b * p - c * q - d * r) / 2;
  rate[7] = (a * p + c * r - d * q) / 2;
  rate[8] = (a * q + d * p - b * r) / 2;
  rate[9] = (a * r + b * q - c * p) / 2;
  for (let i = 0; i < 3; i++) {
    const row = 3 * i;
    rate[10 + i] = (rotation[row] as number) * u + (rotation[row + 1] as number) * v + (rotation[row + 2] as number) * w;
  }
}

/** Kinetic energy of translation and turning, and energy of height (above where `down` is 0) [J]. */
export function bodyEnergy(
  { mass, inertia: j }: RigidBody,
  gravity: number,
  state: Float64Array,
): { readonly kinetic: number; readonly height: number } {
  const [u, v, w, p, q, r] = state as unknown as readonly number[] as [number, number, number, number, number, number];
  const turning =
    p * ((j[0] as number) * p + (j[1] as number) * q + (j[2] as number) * r) +
    q * ((j[3] as number) * p + (j[4] as number) * q + (j[5] as number) * r) +
    r * ((j[6] as number) * p + (j[7] as number) * q + (j[8] as number) * r);
  return { kinetic: (mass * (u * u + v * v + w * w) + turning) / 2, height: -mass * gravity * (state[bodyState.down] as number) };
}
