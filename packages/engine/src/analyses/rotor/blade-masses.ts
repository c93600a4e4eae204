import type { RotorModel } from "../../aerodynamics/rotor/index.ts";
import type { BladeMasses } from "./blade-masses-schema.ts";
import type { Assumed } from "./model-input.ts";

type BladeLength = Pick<RotorModel, "radius" | "rootCutout">;

/**
 * Centrifugal force of one blade at its root: sum of masses times distance from the shaft times rotation rate squared [N]; null
 * without masses. Coning, which brings the masses closer to the shaft by its cosine, is left out: 1 % at 8 degrees, on the safe side.
 *
 * @param rotationRate [rad/s]
 */
export function bladeCentrifugalForce(blade: BladeMasses | undefined, length: BladeLength, rotationRate: number): number | null {
  if (!blade) return null;
  const own = blade.mass * (blade.centreOfGravity ?? evenCentre(length.rootCutout));
  const moment = (blade.weights ?? []).reduce((sum, { mass, radiusFraction }) => sum + mass * radiusFraction, own);
  return moment * length.radius * rotationRate * rotationRate;
}

/** Centre of gravity of a mass spread evenly from root cut-out to tip, over radius [1]. */
function evenCentre(rootCutout: number): number {
  return (1 + rootCutout) / 2;
}

/** The centre of gravity that was taken where none was given. */
export function evenMass(blade: BladeMasses | undefined, rootCutout: number): Assumed {
  if (!blade || blade.centreOfGravity !== undefined) return [];
  const because = "not given: the mass is spread evenly from root cut-out to tip";
  return [{ path: "inputs.blade.centreOfGravity", value: evenCentre(rootCutout), because }];
}
