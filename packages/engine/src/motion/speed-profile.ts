/** Airspeed and acceleration over time. */
export interface SpeedMoment {
  readonly time: number;
  readonly airspeed: number;
  readonly acceleration: number;
}

/** In which acceleration comes and goes [s]: common practice for calm flight. */
const rampTime = 1.5;

/**
 * From one speed to another with an acceleration that comes and goes over ramps of half a cosine and is constant in between; where
 * the change is too small for the whole acceleration, the ramps meet at a smaller one.
 *
 * @param acceleration largest, positive [m/s²]
 * @param interval between moments, or a little less [s]
 * @returns moments, the first and the last without acceleration
 * @derivation a half-cosine ramp gains as much speed as a straight one: a T/2
 */
export function speedProfile(from: number, to: number, acceleration: number, interval: number): readonly SpeedMoment[] {
  const change = Math.abs(to - from);
  if (change === 0) return [{ time: 0, airspeed: from, acceleration: 0 }];
  const sign = Math.sign(to - from);
  const most = Math.min(acceleration, change / rampTime);
  const level = change / most - rampTime;
  const duration = level + 2 * rampTime;
  const count = Math.max(2, Math.ceil(duration / interval));
  return Array.from({ length: count + 1 }, (_, i) => {
    const time = (duration * i) / count;
    const last = i === count;
    return {
      time,
      airspeed: last ? to : from + sign * gained(time, most, level),
      acceleration: i === 0 || last ? 0 : sign * rate(time, most, level),
    };
  });
}

function rate(time: number, most: number, level: number): number {
  const ramp = (along: number) => (most * (1 - Math.cos((Math.PI * along) / rampTime))) / 2;
  if (time < rampTime) return ramp(time);
  if (time <= rampTime + level) return most;
  return ramp(level + 2 * rampTime - time);
}

function gained(time: number, most: number, level: number): number {
  const ramp = (along: number) => (most * (along - (rampTime / Math.PI) * Math.sin((Math.PI * along) / rampTime))) / 2;
  if (time < rampTime) return ramp(time);
  if (time <= rampTime + level) return (most * rampTime) / 2 + most * (time - rampTime);
  return most * (rampTime + level) - ramp(level + 2 * rampTime - time);
}
