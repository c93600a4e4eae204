import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { fraction, notNegative, positive } from "./bounds.ts";
import { partId } from "./part-id.ts";
import { place } from "./placement.ts";

/** A propeller or lifting fan by momentum and a thrust law: shaft power from thrust, rate from the law. */
export const propellerPart = z.strictObject({
  id: partId,
  place: place.describe("Centre of the disc."),
  axis: z
    .strictObject({
      up: quantity("angle", { description: "Thrust axis above the forward axis; 90 deg lifts.", minimum: -3.2, maximum: 3.2 }),
      right: quantity("angle", { description: "Thrust axis turned right.", minimum: -3.2, maximum: 3.2 }),
    })
    .default({ up: 0, right: 0 })
    .describe("Direction of the thrust; forward when absent."),
  turns: z
    .enum(["clockwise", "counter-clockwise"])
    .describe("Sense of rotation seen from behind, along the thrust; seen from below where it lifts."),
  diameter: positive("length", "Propeller diameter."),
  solidity: positive("dimensionless", "Blade area over disc area: counts in the force of a flow across the axis.").optional(),
  inducedFactor: quantity("dimensionless", { description: "Induced velocity over the ideal in shaft power.", minimum: 1 }),
  profileEfficiency: fraction("Share of shaft power left after blade drag."),
  reverseFigureOfMerit: fraction("Static figure of merit when run backwards."),
  thrustCoefficient: positive("dimensionless", "Static T over rho n squared D to the fourth, n in turns per second."),
  zeroThrustAdvanceRatio: positive("dimensionless", "V over n D at which thrust vanishes."),
  reverseThrustCoefficient: positive("dimensionless", "The same when run backwards."),
  thrustRate: positive("forceRate", "How fast thrust can change."),
  reversalTime: notNegative("time", "Dead time of a change of direction."),
  inertia: positive("inertia", "Polar inertia of the propeller."),
  stoppedDragArea: notNegative("area", "Drag area while it stands still.").default(0),
});

export type PropellerPart = z.infer<typeof propellerPart>;
