import type { RotorModel } from "../../aerodynamics/rotor/index.ts";
import type { Problem } from "../contract.ts";
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
  const own = blade.mass * (blade.centreOfGravity ?? evenCentre(length));
  const moment = (blade.weights ?? []).reduce((sum, weight) => sum + weight.mass * weight.radius, own);
  return moment * rotationRate * rotationRate;
}

/** Centre of gravity of a mass spread evenly from root cut-out to tip [m]. */
function evenCentre({ radius, rootCutout }: BladeLength): number {
  return (radius * (1 + rootCutout)) / 2;
}

/** The centre of gravity that was taken where none was given. */
export function evenMass(blade: BladeMasses | undefined, length: BladeLength): Assumed {
  if (!blade || blade.centreOfGravity !== undefined) return [];
  const because = "not given: the mass is spread evenly from root cut-out to tip";
  return [{ path: "inputs.blade.centreOfGravity", value: evenCentre(length), because }];
}

/** Refuses masses beyond the tip. */
export function beyondTip(blade: BladeMasses | undefined, radius: number): Problem | undefined {
  const places = [blade?.centreOfGravity, ...(blade?.weights ?? []).map((weight) => weight.radius)];
  const beyond = places.find((place) => place !== undefined && place > radius);
  if (beyond === undefined) return undefined;
  const message = `A mass of the blade lies ${beyond} m from the shaft, beyond its tip at ${radius} m.`;
  return { kind: "mass-beyond-tip", message, place: beyond, radius };
}
