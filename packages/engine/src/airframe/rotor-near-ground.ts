import { factorNearGround, groundEffect } from "../aerodynamics/rotor/index.ts";

/** Steps towards the induced velocity far from the ground, on which the image's weight depends. */
const imageSteps = 3;
const leastInflow = 1e-6;

/** What the ground does to κ at this induced inflow. @derivation `factorNearGround` with the inflow near the ground known */
export function groundFactor(far: Parameters<typeof factorNearGround>[0], near: number, heightOverRadius: number): number {
  let ratio = 1;
  for (let step = 0; step < imageSteps; step++) {
    const effect = groundEffect(heightOverRadius, (far.mu * ratio) / Math.max(near, leastInflow));
    // Below the heights that the formula knows it is held at its lowest: doors refuse such heights.
    ratio = effect.kind === "in-range" ? effect.inducedRatio : groundEffectFloor(effect.lowestHeight);
  }
  if (near < leastInflow) return ratio ** 2;
  return factorNearGround(far, near / ratio, ratio) / far.kappa;
}

function groundEffectFloor(height: number): number {
  const effect = groundEffect(height, 0);
  return effect.kind === "in-range" ? effect.inducedRatio : 1;
}
