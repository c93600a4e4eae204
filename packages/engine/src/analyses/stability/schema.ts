import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput, airInputs, loadingInput } from "../inputs/flight-conditions.ts";
import { derivativesInput } from "./derivatives-schema.ts";

export const stabilityInputs = z
  .strictObject({
    aircraft: aircraftInput,
    loading: loadingInput,
    ...airInputs,
    airspeeds: z
      .array(quantity("speed", { description: "True airspeed of a level flight.", minimum: 0, maximum: 90 }))
      .min(1)
      .max(60)
      .default([0, 8, 16, 24, 32])
      .meta({ description: "Level flights that are trimmed and linearised." }),
    modes: z
      .array(z.enum(["clutch-closed", "clutch-open"]))
      .min(1)
      .max(2)
      .default(["clutch-closed", "clutch-open"])
      .meta({ description: "Motor drives the rotor and governs its speed; rotor turns free." }),
    controls: z
      .enum(["optimum", "schedule"])
      .default("schedule")
      .meta({ description: "Scheduled controls as the file schedules them, or free within their limits." }),
    losses: z
      .enum(["component", "constant"])
      .default("component")
      .meta({ description: "Losses of every motor, controller and gear, or constant efficiencies for comparison." }),
    lightsOn: z.boolean().default(false).meta({ description: "Lights switched on." }),
    manoeuvres: z
      .strictObject({
        airspeed: quantity("speed", {
          description: "Of the flight they begin from, the nearest one computed.",
          minimum: 0,
          maximum: 90,
        }).default(24),
        pitch: quantity("angle", { description: "Change of pitch of push-over and pull-up.", minimum: 0, maximum: 1 }).default(0.35),
        pitchTime: quantity("time", { description: "From its beginning to its end.", minimum: 0.2, maximum: 10 }).default(2),
        gust: quantity("speed", { description: "Peak of the gust, from below.", minimum: -30, maximum: 30 }).default(5),
        gradientDistance: quantity("length", { description: "From the gust's beginning to its peak.", minimum: 1, maximum: 500 }).default(
          15,
        ),
        duration: quantity("time", { description: "How long the flight is followed.", minimum: 2, maximum: 60 }).default(12),
      })
      .prefault({})
      .describe("Push-over, pull-up and gust that are flown under the reference controller."),
    derivatives: derivativesInput.optional(),
    disturbance: z
      .strictObject({
        vertical: quantity("speed", {
          description: "Sharp change of the vertical airspeed, from below.",
          minimum: -100,
          maximum: 100,
        }).default(1),
        side: quantity("speed", { description: "Sharp change of the side airspeed, from the right.", minimum: -100, maximum: 100 }).default(
          1,
        ),
        duration: quantity("time", { description: "How long the response is followed.", minimum: 0.1, maximum: 600 }).default(20),
      })
      .prefault({})
      .describe("What the linear response answers."),
  })
  .superRefine(({ aircraft, derivatives }, context) => {
    if (derivatives && aircraft !== undefined)
      context.addIssue({ code: "custom", path: ["derivatives"], message: "give an aircraft or derivatives, not both" });
  });

export type StabilityInputs = z.infer<typeof stabilityInputs>;
