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
  hulls: z
    .array(z.strictObject({ centre: place.describe("Middle of this solid."), size: size.describe("Its length, width and height.") }))
    .default([])
    .describe("Outer shape as rounded solids, for drawings alone; a body without any is drawn by where its drag acts."),
});

export type BodyPart = z.infer<typeof bodyPart>;
