import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { partId } from "./part-id.ts";

/** How the air that one part moves meets another. */
export const interferencePart = z.strictObject({
  from: partId.describe("Rotor, propeller or surface that moves air."),
  on: partId.describe("Surface, body or propeller in that air."),
  kind: z
    .enum(["rotor-downwash", "slipstream", "wing-downwash", "propeller-wake"])
    .describe(
      "rotor-downwash: factor times the induced velocity at the disc; slipstream: factor times the propeller's; wing-downwash: factor is the downwash angle per angle of attack; propeller-wake: factor times what a straight wake of vortex rings does to another propeller.",
    ),
  factor: quantity("dimensionless", { description: "How strongly, see kind." }),
  share: quantity("dimensionless", { description: "Share of the area of the part that lies in it.", minimum: 0, maximum: 1 }).default(1),
  active: z.boolean().default(true).describe("false leaves it out, to see what it does."),
  source: z.string().optional().describe("Where the factor comes from."),
});

export type InterferencePart = z.infer<typeof interferencePart>;
