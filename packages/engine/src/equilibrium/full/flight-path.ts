import { standardGravity } from "../../aircraft/index.ts";
import type { Vector } from "../../airframe/index.ts";

/** A steady flight seen from the body. */
export interface BodyFlight {
  /** Through the air, body axes [m/s]. */
  readonly velocity: Vector;
  /** [rad/s] */
  readonly rates: Vector;
  /** Gravity less the acceleration of a turn, body axes [m/s²]: what loads must balance, with its sign turned, per mass. */
  readonly apparentGravity: Vector;
}

/**
 * Velocity, rates and apparent gravity in body axes.
 *
 * Attitude: nose up by pitch, then right side down by roll. The path lies at the sideslip angle to the right of the nose; in a
 * turn about the vertical the acceleration is turn rate times horizontal speed, across the path.
 *
 * @param pitch, roll [rad]
 * @param sideslip air from the right positive [rad]
 * @param turnRate [rad/s]
 * @param acceleration horizontal, along the heading [m/s²]: the flight as it stands at one instant
 * @derivation rotation of axes; circular motion
 */
export function bodyFlight(flight: {
  readonly pitch: number;
  readonly roll: number;
  readonly sideslip: number;
  readonly airspeed: number;
  readonly climbRate: number;
  readonly turnRate: number;
  readonly acceleration?: number;
}): BodyFlight {
  const { pitch, roll, sideslip, airspeed, climbRate, turnRate, acceleration = 0 } = flight;
  const st = Math.sin(pitch);
  const ct = Math.cos(pitch);
  const sp = Math.sin(roll);
  const cp = Math.cos(roll);
  const turned = (x: number, y: number, z: number): Vector => {
    const forward = x * ct - z * st;
    const down = x * st + z * ct;
    return [forward, y * cp + down * sp, down * cp - y * sp];
  };
  const ahead = airspeed * Math.cos(sideslip);
  const right = airspeed * Math.sin(sideslip);
  return {
    velocity: turned(ahead, right, -climbRate),
    rates: turned(0, 0, turnRate),
    apparentGravity: turned(turnRate * right - acceleration, -turnRate * ahead, standardGravity),
  };
}
