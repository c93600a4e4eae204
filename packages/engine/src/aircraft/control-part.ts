import { z } from "zod";
import { positive } from "./bounds.ts";
import { control } from "./control.ts";
import { partId } from "./part-id.ts";

const shared = {
  id: partId.describe("Name of the control."),
  part: partId.describe("Rotor, propeller or surface that it moves."),
};

function controlOf<What extends string>(
  what: What,
  kind: "angle" | "speed" | "force",
  rateKind: "anglePerTime" | "acceleration" | "forceRate",
  description: string,
) {
  return z.strictObject({
    ...shared,
    what: z.literal(what).describe(description),
    setting: control(kind, description),
    clutchOpen: control(kind, description).optional().describe("Setting with the clutch open and in a glide, where it is another one."),
    rate: positive(rateKind, "How fast it can move; at once when absent.").optional(),
  });
}

const trailingEdge = z.strictObject({
  ...shared,
  what: z.literal("movable").describe("A trailing edge, down positive."),
  movables: z
    .array(z.strictObject({ id: partId, factor: z.number().describe("Deflection for one of this control; −1 against it.") }))
    .min(1)
    .describe("Trailing edges of the surface that move together."),
  setting: control("angle", "Deflection."),
  clutchOpen: control("angle", "Deflection.").optional().describe("Setting with the clutch open and in a glide, where it is another one."),
  rate: positive("anglePerTime", "How fast it can move; at once when absent.").optional(),
});

/** A control as the aircraft has it: what it moves, within which limits, how fast. */
export const controlPart = z.discriminatedUnion("what", [
  controlOf("collective", "angle", "anglePerTime", "Blade pitch at 0.75 of the radius."),
  controlOf("longitudinal-cyclic", "angle", "anglePerTime", "Cyclic pitch that tilts the disc back."),
  controlOf("lateral-cyclic", "angle", "anglePerTime", "Cyclic pitch that tilts the disc right."),
  controlOf("tilt-back", "angle", "anglePerTime", "Shaft or thrust axis tilted back, beyond its built-in direction."),
  controlOf("tilt-right", "angle", "anglePerTime", "Shaft or thrust axis tilted right, beyond its built-in direction."),
  controlOf("tip-speed", "speed", "acceleration", "Rotor tip speed held by the governor.").extend({
    reference: z
      .strictObject({ mass: positive("mass", "Mass of the schedule."), density: positive("density", "Air density of the schedule.") })
      .optional()
      .describe("A scheduled tip speed grows with the square root of mass over density from here."),
    timeConstant: positive("time", "How fast the governor brings the rotor speed back.").optional(),
  }),
  controlOf("thrust", "force", "forceRate", "Thrust of a propeller, held by its rotation rate."),
  controlOf("deflection", "angle", "anglePerTime", "Incidence of the whole surface beyond its built-in one, nose up; of a fin nose left."),
  trailingEdge,
]);

export type ControlPart = z.infer<typeof controlPart>;

/** How axes of steering move controls: each row says how far a control goes for one unit of each axis. */
export const mixing = z
  .array(
    z.strictObject({
      control: partId.describe("Control that is moved."),
      pitch: z.number().default(0).describe("Of its half range for full nose-up steering."),
      roll: z.number().default(0).describe("For full steering to the right side down."),
      yaw: z.number().default(0).describe("For full steering nose right."),
      lift: z.number().default(0).describe("For full steering up."),
      forward: z.number().default(0).describe("For full steering forward."),
    }),
  )
  .describe("Mixing matrix of the steering axes; each control on its own when absent.");
