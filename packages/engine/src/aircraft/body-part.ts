import { z } from "zod";
import { notNegative } from "./bounds.ts";
import { partId } from "./part-id.ts";
import { place, size } from "./placement.ts";

/** A fuselage, boom, mast or gear: drag areas and where they act. */
export const bodyPart = z.strictObject({
  id: partId,
  place: place.describe("Where drag acts."),
  dragArea: notNegative("area", "Drag area in forward flight."),
  sidePlace: place.optional().describe("Where side drag acts; with the drag when absent."),
  sideDragArea: notNegative("area", "Drag area to flow from the side.").default(0),
  verticalDragArea: notNegative("area", "Drag area to flow from above, such as a rotor's downwash.").default(0),
  hull: z
    .strictObject({ centre: place.describe("Middle of the hull."), size: size.describe("Its length, width and height.") })
    .optional()
    .describe("Outer shape, for drawings alone; what has none is drawn by where its drag acts."),
});

export type BodyPart = z.infer<typeof bodyPart>;
