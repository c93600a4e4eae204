import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { fraction, notNegative, positive } from "./bounds.ts";
import { partId } from "./part-id.ts";
import { place } from "./placement.ts";
import { sectionPart } from "./section-part.ts";

const coupling = quantity("angle", {
  description: "δ3: flapping up by an angle takes its tangent's share off the pitch.",
  minimum: -1.3,
  maximum: 1.3,
}).default(0);
const offset = quantity("dimensionless", { description: "Hinge from the shaft, over the radius.", minimum: 0, maximum: 0.5 }).default(0);

/** How the blades of a rotor are held. */
const articulation = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("teetering"), pitchFlapCoupling: coupling }),
    z.strictObject({
      kind: z.literal("hinged"),
      hingeOffset: offset,
      restFrequency: quantity("rotationRate", {
        description: "Flap frequency on the hinge's spring at rest; none is 0.",
        minimum: 0,
      }).default(0),
      pitchFlapCoupling: coupling,
    }),
    z.strictObject({
      kind: z.literal("hingeless"),
      flapFrequency: quantity("dimensionless", { description: "Rotating flap frequency over rotor speed.", minimum: 1, maximum: 3 }),
      hingeOffset: offset,
      pitchFlapCoupling: coupling,
    }),
    z.strictObject({ kind: z.literal("rigid") }),
  ])
  .describe("How the blades flap.");

/** A rotor of which every blade element is computed. */
export const rotorPart = z.strictObject({
  id: partId,
  hub: place.describe("Hub centre."),
  shaftTilt: z
    .strictObject({
      back: quantity("angle", { description: "Top of the shaft tilted back.", minimum: -1.6, maximum: 1.6 }),
      right: quantity("angle", { description: "Top of the shaft tilted right.", minimum: -1.6, maximum: 1.6 }),
    })
    .default({ back: 0, right: 0 })
    .describe("Shaft relative to the upward axis of the body; upright when absent."),
  turns: z.enum(["counter-clockwise", "clockwise"]).describe("Sense of rotation seen from above."),
  radius: positive("length", "Rotor radius."),
  blades: z.int().min(1).max(8).describe("Blades of the rotor."),
  stations: z
    .array(
      z.strictObject({
        radiusFraction: fraction("Station as a fraction of the radius."),
        chord: positive("length", "Blade chord here."),
        twist: quantity("angle", { description: "Blade twist here, zero at 0.75 of the radius." }),
      }),
    )
    .min(1)
    .describe("Chord and twist along the blade, linear between stations."),
  rootCutout: fraction("Where the lifting blade begins, as a fraction of the radius."),
  precone: quantity("angle", { description: "Built-in upward angle of the blades." }),
  articulation,
  section: sectionPart,
  tipLoss: z
    .discriminatedUnion("kind", [
      z.strictObject({
        kind: z.literal("lift-cutoff"),
        liftRadiusFraction: fraction("Lift is zero outboard of this fraction of the radius."),
      }),
      z.strictObject({ kind: z.literal("prandtl") }),
    ])
    .describe("How lift falls to zero at the blade tip."),
  inducedPowerFactor: quantity("dimensionless", { description: "Induced power over the ideal.", minimum: 1 }),
  inflow: z.enum(["drees", "pitt-peters", "uniform"]).describe("First-harmonic distribution of induced velocity."),
  radialFlow: z.enum(["off", "friction", "resultant"]).describe("How drag of the spanwise flow counts."),
  polarInertia: positive("inertia", "Rotor inertia about its shaft."),
  flapRange: positive("angle", "Largest flapping relative to the body, either way."),
  stallMarginFloor: quantity("dimensionless", {
    description: "Smallest allowed ratio of largest steady thrust to trimmed thrust.",
    minimum: 1,
  }),
  tipSpeedMinimum: positive("speed", "Lowest permitted tip speed."),
  tipSpeedMaximum: positive("speed", "Highest permitted tip speed."),
  alarmTipSpeed: positive("speed", "Tip speed at which the over-speed alarm sounds."),
  brakeTorque: notNegative("torque", "Torque of the rotor brake.").default(0),
});

export type RotorPart = z.infer<typeof rotorPart>;
