import { z } from "zod";
import { quantity } from "../quantities/index.ts";

/** A place in body axes: x forward, y right, z down from the datum [m]. */
export const place = z.strictObject({
  x: quantity("length", { description: "Forward of the datum." }),
  y: quantity("length", { description: "Right of the datum." }),
  z: quantity("length", { description: "Below the datum." }),
});

export type Place = z.infer<typeof place>;

/** Edges of a rectangular solid along the body axes [m]. */
export const size = z.strictObject({
  x: quantity("length", { description: "Length.", minimum: 0 }),
  y: quantity("length", { description: "Width.", minimum: 0 }),
  z: quantity("length", { description: "Height.", minimum: 0 }),
});

export type Size = z.infer<typeof size>;

/** Diagonal of an inertia tensor in body axes [kg m²]. */
export const principalInertia = z.strictObject({
  x: quantity("inertia", { description: "About the forward axis.", minimum: 0 }),
  y: quantity("inertia", { description: "About the right axis.", minimum: 0 }),
  z: quantity("inertia", { description: "About the down axis.", minimum: 0 }),
});
