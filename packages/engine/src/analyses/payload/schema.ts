import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput, airInputs, cellInputs, powerInputs, trimLevelInput } from "../inputs/flight-conditions.ts";

export const reserveInput = z
  .strictObject({
    minimumStateOfCharge: quantity("dimensionless", {
      description: "State of charge kept (common practice: a fifth).",
      minimum: 0,
      maximum: 0.95,
    }).default(0.2),
    hoverTime: quantity("time", { description: "Hover kept on top of that.", minimum: 0, maximum: 3600 }).default(0),
  })
  .prefault({});

export const payloadInputs = z.strictObject({
  aircraft: aircraftInput,
  packs: z
    .array(z.int().min(1))
    .min(1)
    .max(20)
    .optional()
    .meta({ description: "Battery blocks of each pack; the aircraft's packs when absent.", role: "condition.pack" }),
  payloads: z
    .array(quantity("mass", { description: "Payload mass.", minimum: 0 }))
    .max(50)
    .default([0, 0.5, 1.13, 2, 3.5, 5])
    .meta({ description: "Payload masses." }),
  largestPayload: z.boolean().default(true).meta({ description: "Add the payload that reaches the largest take-off mass." }),
  payloadPower: quantity("power", { description: "Electric power of the payload, at 12 V.", minimum: 0 }).default(0),
  payloadDragArea: quantity("area", { description: "Drag area of the payload.", minimum: 0 }).default(0),
  reserve: reserveInput,
  ...airInputs,
  ...cellInputs,
  ...powerInputs,
  trimLevel: trimLevelInput,
});

export type PayloadInputs = z.infer<typeof payloadInputs>;

const maybe = {
  time: (description: string) => quantity("time", { description }).nullable(),
  power: (description: string) => quantity("power", { description }).nullable(),
  speed: (description: string) => quantity("speed", { description }).nullable(),
  mode: z.enum(["clutch-closed", "clutch-open"]).nullable(),
};

export const payloadRow = z.strictObject({
  blocks: z.int().describe("Battery blocks of the pack."),
  payload: quantity("mass", { description: "Payload mass." }),
  takeoffMass: quantity("mass", { description: "Take-off mass." }),
  hoverEndurance: maybe.time("Hover out of ground effect, from full to the reserve."),
  cruiseEndurance: maybe.time("Level flight at least power, from full to the reserve."),
  range: quantity("length", { description: "Distance in still air at the speed of best range, from full to the reserve." }).nullable(),
  hoverPower: maybe.power("Electric power of hover."),
  minimumPower: maybe.power("Least electric power of level flight."),
  minimumPowerSpeed: maybe.speed("Airspeed of that."),
  minimumPowerMode: maybe.mode.describe("Rotor mode of that."),
  bestRangePower: maybe.power("Electric power at the speed of best range."),
  bestRangeSpeed: maybe.speed("Airspeed of best range in still air."),
  bestRangeMode: maybe.mode.describe("Rotor mode of that."),
  hoverStallMargin: quantity("dimensionless", { description: "Largest steady thrust over thrust in hover." }).nullable(),
  limit: z.string().nullable().describe("What ends or forbids the flight."),
});

export type PayloadRow = z.infer<typeof payloadRow>;

export const payloadOutputs = z.strictObject({
  rows: z.array(payloadRow).describe("One row per pack and payload."),
  now: z
    .strictObject({ blocks: z.int(), payload: quantity("mass", { description: "Payload mass." }) })
    .nullable()
    .describe("The row that the sentence is about: the largest pack with the standard payload."),
  exchange: z
    .strictObject({
      blockMass: quantity("mass", { description: "Mass of one block." }),
      hoverPerBlock: quantity("time", { description: "Hover that one more block buys." }),
      hoverPerBlockAsPayload: quantity("time", { description: "Hover that the same mass costs as payload." }),
    })
    .nullable()
    .describe("What one block is worth, between the two largest packs at the same payload."),
});

export type PayloadOutputs = z.infer<typeof payloadOutputs>;
