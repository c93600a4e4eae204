import type { WindField } from "./flight-dynamics.ts";
import type { BodyVector } from "./moving-aircraft.ts";

/** A single gust of the shape 1 − cosine, met along the flight path. */
export interface DiscreteGust {
  /** Peak, toward which it blows: north, east, down [m/s]. */
  readonly peak: BodyVector;
  /** From its start to its peak [m]. */
  readonly gradientDistance: number;
  /** Airspeed at which it is flown through [m/s]: turns distance into time, in a hover too, where it is the speed of the air. */
  readonly speed: number;
  /** When it begins [s]. */
  readonly start: number;
}

/**
 * Wind of a gust over time: U/2 (1 − cos(π s/H)) over 0 ≤ s ≤ 2 H, with s the distance flown since its start. The whole aircraft is in it at
 * once: its length is taken as short against H.
 *
 * @source cs-25-341, shape of the discrete gust, from memory
 */
export function discreteGust({ peak, gradientDistance, speed, start }: DiscreteGust): WindField {
  if (!(gradientDistance > 0) || !(speed > 0)) throw new RangeError("a gust has a gradient distance and a speed above 0");
  return (time) => {
    const along = ((time - start) * speed) / gradientDistance;
    if (along <= 0 || along >= 2) return [0, 0, 0];
    const share = (1 - Math.cos(Math.PI * along)) / 2;
    return [peak[0] * share, peak[1] * share, peak[2] * share];
  };
}

/** A steady wind that sets in at a time and stays: a sharp-edged gust. */
export function sharpGust(peak: BodyVector, start: number): WindField {
  return (time) => (time < start ? [0, 0, 0] : peak);
}

/** Winds that blow together. */
export function addedWinds(...fields: readonly WindField[]): WindField {
  return (time, north, east, down) => {
    let [n, e, d] = [0, 0, 0];
    for (const field of fields) {
      const [a, b, c] = field(time, north, east, down);
      n += a;
      e += b;
      d += c;
    }
    return [n, e, d];
  };
}
