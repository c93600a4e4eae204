import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { notNegative, positive } from "./bounds.ts";

/** Two-dimensional section law of a blade. */
export const sectionPart = z
  .discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("generic"),
      liftSlope: positive("dimensionless", "Lift-curve slope at low Mach number, per radian."),
      cd0: positive("dimensionless", "Profile drag coefficient at zero angle of attack."),
      cd1: quantity("dimensionless", { description: "Linear term of profile drag, per radian." }),
      cd2: notNegative("dimensionless", "Quadratic term of profile drag, per radian squared."),
      stallAngle: positive("angle", "Angle of attack at which attached flow gives way to the flat plate."),
    }),
    z.strictObject({
      kind: z.literal("built-in"),
      name: z.enum(["naca-0012", "naca-0015"]),
      dragIncrement: notNegative("dimensionless", "Added to the section drag coefficient everywhere."),
    }),
  ])
  .describe("Two-dimensional section law.");

export type SectionPart = z.infer<typeof sectionPart>;

/** The same section with so much more drag coefficient at every angle [1]. */
export function withDragIncrement(section: SectionPart, increment: number): SectionPart {
  return section.kind === "generic"
    ? { ...section, cd0: section.cd0 + increment }
    : { ...section, dragIncrement: section.dragIncrement + increment };
}
