import type { Place } from "./placement.ts";

/** How an aircraft hangs from one point: the centre of gravity comes to rest below it. */
export interface HangingAttitude {
  /** Forward axis above the horizontal [rad]. */
  readonly noseUp: number;
  /** Right side down [rad]; near ±π it hangs upside down. */
  readonly rightDown: number;
}

/** Attitude of an aircraft that hangs still from a point, from its centre of gravity. */
export function hangingAttitude(from: Place, centre: Place): HangingAttitude {
  const x = centre.x - from.x;
  const y = centre.y - from.y;
  const z = centre.z - from.z;
  return { noseUp: Math.atan2(-x, Math.hypot(y, z)), rightDown: Math.atan2(y, z) };
}

/** How far forward [m] of the datum a centre of gravity lies that makes the aircraft hang at a measured angle, its height known. */
export function hangingCentre(from: Place, centreDepth: number, noseUp: number): number {
  return from.x - (centreDepth - from.z) * Math.tan(noseUp);
}
