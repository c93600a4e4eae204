/**
 * Pitch angle of a blade that screws itself forward by the same length at every radius [rad].
 *
 *     β = atan(p/(π D x))
 *
 * @param pitch advance per turn without slip [m]
 * @param diameter D [m]
 * @param radiusFraction x, above 0 [1]
 * @derivation geometry of a helix
 */
export function helicalPitchAngle(pitch: number, diameter: number, radiusFraction: number): number {
  return Math.atan2(pitch, Math.PI * diameter * radiusFraction);
}
