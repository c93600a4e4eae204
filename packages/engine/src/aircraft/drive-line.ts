import { z } from "zod";
import { fraction, notNegative, positive } from "./bounds.ts";
import { motorPart } from "./motor-part.ts";
import { partId } from "./part-id.ts";

/** What turns a rotor or a propeller: motors on one shaft, gear stages, a clutch. */
export const driveLine = z.strictObject({
  id: partId,
  drives: partId.describe("Rotor or propeller at its end."),
  motors: z
    .array(z.strictObject({ id: partId, motor: motorPart }))
    .default([])
    .describe("Motors that share the shaft in equal parts; none: shaft power stands for electric power."),
  gearStages: z
    .array(
      z.strictObject({
        ratio: positive("dimensionless", "Turns in for one turn out."),
        constantLoss: notNegative("power", "Loss whenever it turns under the motor.").default(0),
        proportionalLoss: fraction("Loss as a share of the power passed.").default(0),
      }),
    )
    .default([])
    .describe("Gear stages from the motors on; direct when absent."),
  clutch: z.enum(["one-way", "none"]).describe("one-way: the rotor may turn faster than its drive, which can then stand still."),
  constantEfficiency: fraction("Electric to shaft efficiency under the comparison assumption of constant losses.").optional(),
});

export type DriveLine = z.infer<typeof driveLine>;
