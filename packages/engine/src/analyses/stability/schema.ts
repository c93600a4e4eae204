import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { derivativesInput } from "./derivatives-schema.ts";

const vary = z
  .strictObject({
    derivative: z.string().min(1).max(20).describe("Name of the derivative that is varied, as in the derivatives."),
    factors: z
      .array(quantity("dimensionless", { description: "Factor on the derivative.", minimum: -100, maximum: 100 }))
      .min(1)
      .max(100)
      .default([0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2])
      .describe("What it is multiplied by, one state each."),
  })
  .meta({ description: "One derivative varied: the roots wander." });

export const stabilityInputs = z.strictObject({
  derivatives: derivativesInput,
  vary: vary.optional(),
  disturbance: z
    .strictObject({
      vertical: quantity("speed", {
        description: "Sharp change of the vertical airspeed, from below.",
        minimum: -100,
        maximum: 100,
      }).default(1),
      side: quantity("speed", { description: "Sharp change of the side airspeed, from the right.", minimum: -100, maximum: 100 }).default(
        1,
      ),
      duration: quantity("time", { description: "How long the response is followed.", minimum: 0.1, maximum: 600 }).default(20),
    })
    .prefault({})
    .describe("What the linear response answers."),
});

export type StabilityInputs = z.infer<typeof stabilityInputs>;
