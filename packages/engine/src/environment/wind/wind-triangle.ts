import type { WindVelocity } from "./wind.ts";

/** What it takes to stay on a track in wind, or why that is impossible. */
export type TrackKeeping =
  | {
      readonly kind: "holds";
      /** Speed over ground along the track [m/s], positive. */
      readonly groundSpeed: number;
      /** Direction of the airspeed vector [rad], clockwise from true north, 0 to 2π. */
      readonly heading: number;
      /** Heading minus course [rad], positive to the right. */
      readonly crab: number;
      /** Part of the wind against the direction of travel [m/s], negative for a tail wind. */
      readonly headwind: number;
    }
  | {
      readonly kind: "cannot-hold-track";
      readonly because: "cross-wind" | "head-wind";
      /** Smallest horizontal airspeed [m/s] that would do: just more than this. */
      readonly airspeedNeeded: number;
    };

/**
 * Wind triangle: the heading that keeps a horizontal airspeed on a course, and the ground speed that remains.
 *
 *     cross-wind cancelled:   V sin(crab) = −w_right
 *     along the track:        G = V cos(crab) + w_along
 *
 * @derivation ground velocity = air velocity + wind velocity, resolved along and across the track.
 * @param course Direction of travel over ground [rad], clockwise from true north.
 * @param airspeed Horizontal true airspeed V [m/s].
 */
export function windTriangle(course: number, airspeed: number, wind: WindVelocity): TrackKeeping {
  const along = wind.north * Math.cos(course) + wind.east * Math.sin(course);
  const toRight = -wind.north * Math.sin(course) + wind.east * Math.cos(course);
  const remaining = (airspeed - toRight) * (airspeed + toRight);
  if (remaining < 0) return { kind: "cannot-hold-track", because: "cross-wind", airspeedNeeded: Math.abs(toRight) };
  const groundSpeed = Math.sqrt(remaining) + along;
  if (!(groundSpeed > 0)) return { kind: "cannot-hold-track", because: "head-wind", airspeedNeeded: Math.hypot(toRight, along) };
  const crab = airspeed > 0 ? Math.asin(-toRight / airspeed) : 0;
  const turn = 2 * Math.PI;
  return { kind: "holds", groundSpeed, heading: (((course + crab) % turn) + turn) % turn, crab, headwind: -along };
}

/** Horizontal airspeed [m/s] that goes with a ground speed [m/s] along a course [rad] in a wind. Zero ground speed: a hover in wind. */
export function airspeedForGroundSpeed(course: number, groundSpeed: number, wind: WindVelocity): number {
  return Math.hypot(groundSpeed * Math.cos(course) - wind.north, groundSpeed * Math.sin(course) - wind.east);
}
