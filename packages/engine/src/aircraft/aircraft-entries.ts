import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { batteryPart } from "./battery-part.ts";
import { bodyPart } from "./body-part.ts";
import { positive } from "./bounds.ts";
import { controlPart, mixing } from "./control-part.ts";
import { driveLine } from "./drive-line.ts";
import { electricalNetwork } from "./electrical-network.ts";
import { interferencePart } from "./interference-part.ts";
import { limitsPart, payloadRecord } from "./loading-records.ts";
import { partId } from "./part-id.ts";
import { place, principalInertia } from "./placement.ts";
import { propellerPart } from "./propeller-part.ts";
import { rotorPart } from "./rotor-part.ts";
import { surfacePart } from "./surface-part.ts";

const products = z.strictObject({
  xy: quantity("inertia", { description: "Integral of x y over mass." }),
  yz: quantity("inertia", { description: "Integral of y z over mass." }),
  zx: quantity("inertia", { description: "Integral of z x over mass." }),
});

const suspension = z.strictObject({
  id: partId.describe("Name of this measurement."),
  from: place.describe("Point it hangs from."),
  blocks: z.int().min(0).describe("Battery blocks on board."),
  payload: z.string().optional().describe("Payload record on board; none when absent."),
  noseUp: quantity("angle", { description: "Measured angle of the forward axis above the horizontal." }),
});

const gearPoint = z.strictObject({ id: partId, place: place.describe("Lowest point, on the ground.") });

/** Which parts stand for what at the trim level `reduced`. */
const reducedRoles = z.strictObject({
  rotor: partId,
  rightPropeller: partId,
  leftPropeller: partId,
  wing: partId,
  tailplane: partId,
  fin: partId,
  body: partId,
});

/** An aircraft whose entries are each sound, before it is known whether they go together. */
export const aircraftEntries = z.strictObject({
  format: z.literal(2).describe("Version of this document's format."),
  name: z.string().min(1).describe("Name of the aircraft."),
  provenance: z.string().optional().describe("One word or sentence on where the values come from."),
  emptyMass: positive("mass", "Mass without batteries and payload."),
  emptyCentre: place.describe("Centre of gravity of the empty aircraft."),
  emptyInertia: principalInertia.describe("Inertia of the empty aircraft about its centre of gravity, rotors as masses at their hubs."),
  emptyProducts: products.optional().describe("Products of inertia about the same point; none when absent."),
  suspension: z.array(suspension).default([]).describe("Angles measured with the aircraft hanging: they check the centre of gravity."),
  rotors: z.array(rotorPart).default([]).describe("Rotors."),
  propellers: z.array(propellerPart).default([]).describe("Propellers and lifting fans."),
  surfaces: z.array(surfacePart).default([]).describe("Wings, tailplanes, fins."),
  bodies: z.array(bodyPart).default([]).describe("Bodies with drag."),
  driveLines: z.array(driveLine).default([]).describe("What turns rotors and propellers."),
  controls: z.array(controlPart).default([]).describe("Controls as they are."),
  mixing: mixing.optional(),
  interference: z.array(interferencePart).default([]).describe("Air moved by one part that meets another."),
  reduced: reducedRoles.optional().describe("Which parts the trim level reduced counts; without it only full is offered."),
  battery: batteryPart,
  electrical: electricalNetwork,
  payloadBay: place.describe("Where the payload sits."),
  payloads: z.array(payloadRecord).min(1).describe("Payload records."),
  landingGear: z.array(gearPoint).default([]).describe("Points that stand on the ground."),
  limits: limitsPart,
});

export type AircraftDefinition = z.infer<typeof aircraftEntries>;
