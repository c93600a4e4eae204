import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput, airInputs, cellInputs, loadingInput, powerInputs } from "../inputs/flight-conditions.ts";

const speedStep = 2;
const usualFastest = 34;
const usualSpeeds = Array.from({ length: usualFastest / speedStep + 1 }, (_, i) => i * speedStep);

const charge = (description: string, usual: number) => quantity("dimensionless", { description, minimum: 0.02, maximum: 1 }).default(usual);

export const transitionInputs = z.strictObject({
  aircraft: aircraftInput,
  loading: loadingInput,
  ...airInputs,
  controls: powerInputs.controls,
  lightsOn: powerInputs.lightsOn,
  cruiseSpeed: quantity("speed", {
    description: "Airspeed at the end of the way out; that of best range with the clutch open when absent.",
    minimum: 1,
    maximum: 90,
  }).optional(),
  clutchSpeed: quantity("speed", {
    description: "Airspeed at which the clutch opens and closes; where flying with it open becomes cheaper when absent.",
    minimum: 1,
    maximum: 90,
  }).optional(),
  acceleration: quantity("acceleration", {
    description: "Largest acceleration along the course, both ways.",
    minimum: 0.2,
    maximum: 5,
  }).default(1),
  heightBand: quantity("length", { description: "How far it may leave its height, up or down.", minimum: 0.1, maximum: 500 }).default(5),
  speeds: z
    .array(quantity("speed", { description: "Airspeed of the corridor.", minimum: 0, maximum: 60 }))
    .min(2)
    .max(61)
    .default(usualSpeeds)
    .meta({ description: "Airspeeds at which the corridor is looked for, and where it is asked what each costs to hold." }),
  rowInterval: quantity("time", { description: "Time between rows of the histories.", minimum: 0.1, maximum: 5 }).default(0.1),
  chargeOut: charge("State of charge when it leaves the hover.", 0.9),
  chargeBack: charge("State of charge when it comes back to it.", 0.3),
  ...cellInputs,
});

export type TransitionInputs = z.infer<typeof transitionInputs>;
