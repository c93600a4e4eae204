/** Attitude as three turns: about down, then right, then forward [rad]. */
export interface EulerAngles {
  readonly roll: number;
  readonly pitch: number;
  readonly yaw: number;
}

/** Writes the unit quaternion of an attitude (body to earth: scalar first) to `into` from `at` on. */
export function writeQuaternion({ roll, pitch, yaw }: EulerAngles, into: Float64Array, at: number): void {
  const [cr, sr] = [Math.cos(roll / 2), Math.sin(roll / 2)];
  const [cp, sp] = [Math.cos(pitch / 2), Math.sin(pitch / 2)];
  const [cy, sy] = [Math.cos(yaw / 2), Math.sin(yaw / 2)];
  into[at] = cr * cp * cy + sr * sp * sy;
  into[at + 1] = sr * cp * cy - cr * sp * sy;
  into[at + 2] = cr * sp * cy + sr * cp * sy;
  into[at + 3] = cr * cp * sy - sr * sp * cy;
}

/** Attitude of a quaternion: pitch within ±90°, where roll and yaw run into one another and roll is then 0. */
export function eulerAngles(state: Float64Array, at: number): EulerAngles {
  const [a, b, c, d] = [state[at] as number, state[at + 1] as number, state[at + 2] as number, state[at + 3] as number];
  const scale = 2 / (a * a + b * b + c * c + d * d);
  const sine = scale * (a * c - b * d);
  if (Math.abs(sine) > 1 - 1e-12) {
    return { roll: 0, pitch: Math.sign(sine) * (Math.PI / 2), yaw: Math.atan2(scale * (a * d - b * c), 1 - scale * (b * b + d * d)) };
  }
  return {
    roll: Math.atan2(scale * (c * d + a * b), 1 - scale * (b * b + c * c)),
    pitch: Math.asin(sine),
    yaw: Math.atan2(scale * (b * c + a * d), 1 - scale * (c * c + d * d)),
  };
}

/** Rotation from body to earth axes (north, east, down), row by row, of the quaternion from `at` on, whatever its length. */
export function writeRotation(state: Float64Array, at: number, into: Float64Array): void {
  const [a, b, c, d] = [state[at] as number, state[at + 1] as number, state[at + 2] as number, state[at + 3] as number];
  const scale = 2 / (a * a + b * b + c * c + d * d);
  into[0] = 1 - scale * (c * c + d * d);
  into[1] = scale * (b * c - a * d);
  into[2] = scale * (b * d + a * c);
  into[3] = scale * (b * c + a * d);
  into[4] = 1 - scale * (b * b + d * d);
  into[5] = scale * (c * d - a * b);
  into[6] = scale * (b * d - a * c);
  into[7] = scale * (c * d + a * b);
  into[8] = 1 - scale * (b * b + c * c);
}
