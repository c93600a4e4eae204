import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { notNegative, positive } from "./bounds.ts";
import { place, size } from "./placement.ts";

/** Something that can be carried. */
export const payloadRecord = z.strictObject({
  name: z.string().min(1).describe("Name of this record."),
  mass: notNegative("mass", "Payload mass."),
  power: notNegative("power", "Electric power at 12 V."),
  dragArea: notNegative("area", "Drag area it adds."),
  place: place.optional().describe("Where it sits; in the payload bay when absent."),
  size: size.optional().describe("A solid of even density, for its own inertia; a point when absent."),
  temperatureMinimum: positive("temperature", "Coldest permitted air.").optional(),
  temperatureMaximum: positive("temperature", "Hottest permitted air.").optional(),
});

/** Limits that the operator or the rules set. */
export const limitsPart = z.strictObject({
  largestTakeoffMass: positive("mass", "Largest permitted take-off mass."),
  climbRate: positive("speed", "Fastest permitted climb."),
  descentRate: positive("speed", "Fastest permitted descent with the clutch closed at low speed."),
  attitudeMaximum: positive("angle", "Largest pitch and roll angle of steady flight; 30 deg when absent.").optional(),
  altitudeMaximum: quantity("length", { description: "Highest permitted altitude above mean sea level." }),
  airTemperatureMinimum: positive("temperature", "Coldest permitted air."),
  airTemperatureMaximum: positive("temperature", "Hottest permitted air."),
  centreOfGravityAft: quantity("length", { description: "Rearmost permitted centre of gravity, forward of the datum." }),
  centreOfGravityForward: quantity("length", { description: "Foremost permitted centre of gravity, forward of the datum." }),
});

export type PayloadRecord = z.infer<typeof payloadRecord>;
export type LimitsPart = z.infer<typeof limitsPart>;
