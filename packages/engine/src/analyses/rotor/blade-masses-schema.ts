import { z } from "zod";
import { quantity } from "../../quantities/index.ts";

const mass = (description: string) => quantity("mass", { description, exclusiveMinimum: 0, maximum: 500 });
const place = (description: string) => quantity("dimensionless", { description, minimum: 0, maximum: 1 });

/** Masses of one blade, for the pull on its root. */
export const bladeMasses = z
  .strictObject({
    mass: mass("Mass of one blade outboard of its root or hinge, without the weights."),
    centreOfGravity: place(
      "Distance of that mass's centre of gravity from the shaft axis over radius; when absent it is spread evenly from root cut-out to tip.",
    ).optional(),
    weights: z
      .array(z.strictObject({ mass: mass("Mass of the weight."), radiusFraction: place("Its distance from the shaft axis over radius.") }))
      .max(20)
      .optional()
      .meta({ description: "Weights put into the blade beside its own mass, such as lead near the tip." }),
    strength: quantity("force", {
      description: "Centrifugal force that root, hinge or spar is made for; for the limits.",
      exclusiveMinimum: 0,
      maximum: 1e7,
    }).optional(),
  })
  .meta({ description: "Masses of one blade, for its centrifugal force." });

export type BladeMasses = z.infer<typeof bladeMasses>;
