import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput } from "../inputs/flight-conditions.ts";

const placeInput = z.strictObject({
  name: z.string().min(1).max(60).meta({ description: "What this place is called." }),
  x: quantity("length", { description: "Forward of the datum.", minimum: -20, maximum: 20 }),
  y: quantity("length", { description: "Right of the datum.", minimum: -20, maximum: 20 }).default(0),
  z: quantity("length", { description: "Below the datum.", minimum: -20, maximum: 20 }),
});

export const balanceInputs = z.strictObject({
  aircraft: aircraftInput,
  limits: z
    .enum(["computed", "file"])
    .default("computed")
    .meta({ description: "Limits of the centre of gravity from stability and control margins, or those of the aircraft file." }),
  packs: z
    .array(z.int().min(0))
    .min(1)
    .max(20)
    .optional()
    .meta({ description: "Battery blocks of each pack; the aircraft's packs when absent.", role: "condition.pack" }),
  payloads: z
    .array(z.string().min(1))
    .min(1)
    .max(20)
    .optional()
    .meta({ description: "Payload records; all of the aircraft file when absent." }),
  places: z
    .array(placeInput)
    .min(1)
    .max(10)
    .optional()
    .meta({ description: "Places that each payload is tried at; where its record says, or the payload bay, when absent." }),
});

export type BalanceInputs = z.infer<typeof balanceInputs>;
