import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { cellInput } from "./cell-input.ts";
import { loadInput } from "./load-input.ts";

const warmth = (description: string) => quantity("temperature", { description, minimum: 223.15, maximum: 353.15 });

const ageFields = {
  capacityFactor: quantity("dimensionless", { description: "Capacity left by age; new cells are 1.", minimum: 0.05, maximum: 1.2 }).default(
    1,
  ),
  resistanceFactor: quantity("dimensionless", {
    description: "Resistance grown by age; new cells are 1.",
    minimum: 0.5,
    maximum: 10,
  }).default(1),
};

const ohms = (description: string) => quantity("resistance", { description, minimum: 0, maximum: 10 });

const differingBlock = z.strictObject({
  block: z.int().min(1).max(200).meta({ description: "Which block, counted from 1." }),
  age: z.strictObject(ageFields).optional().meta({ description: "Its own age." }),
  startStateOfCharge: quantity("dimensionless", {
    description: "Its own state of charge at the start.",
    minimum: 0,
    maximum: 1,
  }).optional(),
  startTemperature: warmth("Its own temperature at the start.").optional(),
});

const limitsInput = z
  .strictObject({
    cutoffVoltage: quantity("voltage", {
      description: "Lowest voltage per cell at the terminals; the cell's own when absent.",
      minimum: 0.1,
      maximum: 10,
    }).optional(),
    continuousCurrent: quantity("current", {
      description: "Current of one block without end.",
      exclusiveMinimum: 0,
      maximum: 1e5,
    }).optional(),
    shortTimeCurrent: quantity("current", {
      description: "Current of one block for a short time.",
      exclusiveMinimum: 0,
      maximum: 1e5,
    }).optional(),
    shortTime: quantity("time", {
      description: "How long a current above the continuous one may flow without a break; not at all when absent.",
      minimum: 0,
      maximum: 1e5,
    }).optional(),
    temperatureMinimum: warmth("Coldest permitted cell; the cell's own when absent.").optional(),
    temperatureMaximum: warmth("Hottest permitted cell; the cell's own when absent.").optional(),
    lowestStateOfCharge: quantity("dimensionless", {
      description: "State of charge that is to be kept.",
      minimum: 0,
      maximum: 0.95,
    }).optional(),
  })
  .prefault({})
  .meta({ description: "Limits; those of the cell or the aircraft when absent." });

export const batteryInputs = z
  .strictObject({
    cell: cellInput.default("reference-nca"),
    capacity: quantity("capacity", {
      description: "Charge of one new cell at 25 °C; a built-in cell is scaled to it, resistances with its inverse.",
      minimum: 36,
      maximum: 3.6e6,
    }).optional(),
    cellMass: quantity("mass", { description: "Mass of one cell; goes with capacity when absent.", minimum: 1e-4, maximum: 50 }).optional(),
    series: z.int().min(1).max(400).optional().meta({ description: "Cells in series in a block; the aircraft's, else 1, when absent." }),
    parallel: z
      .int()
      .min(1)
      .max(400)
      .optional()
      .meta({ description: "Cells in parallel in a block; the aircraft's, else 1, when absent." }),
    blocks: z.int().min(1).max(200).optional().meta({
      description: "Blocks in parallel; the mission's, the aircraft's largest pack, else 1, when absent.",
      role: "condition.pack",
    }),
    isolatedBlocks: z
      .array(z.int().min(1).max(200))
      .max(200)
      .default([])
      .meta({ description: "Blocks taken off the bus, counted from 1." }),
    wiringResistance: ohms("In series with all blocks; the aircraft's, else 0, when absent.").optional(),
    isolatorResistance: ohms("In series with each block.").default(0),
    age: z.strictObject(ageFields).prefault({}).meta({ description: "Age of the cells.", role: "condition.cells" }),
    differingBlocks: z
      .array(differingBlock)
      .max(200)
      .default([])
      .meta({ description: "Blocks that differ from the others in age, charge or temperature." }),
    startStateOfCharge: quantity("dimensionless", { description: "State of charge at the start.", minimum: 0, maximum: 1 }).default(1),
    startTemperature: warmth("Cell temperature at the start; the ambient one when absent.").optional(),
    ambientTemperature: quantity("temperature", {
      description: "Temperature of the air around.",
      minimum: 223.15,
      maximum: 353.15,
      role: "condition.temperature",
    }).default(298.15),
    cooling: z
      .strictObject({
        thermalResistance: quantity("thermalResistance", {
          description: "One block to the air of the bay; the aircraft's, else 22 K/W over the cells of a block, when absent.",
          minimum: 1e-3,
          maximum: 1e6,
        }).optional(),
        bayOffset: quantity("temperatureDifference", {
          description: "Air of the bay above ambient; the aircraft's, else 0, when absent.",
          minimum: -30,
          maximum: 60,
        }).optional(),
      })
      .prefault({})
      .meta({ description: "How heat leaves the blocks." }),
    load: loadInput,
    limits: limitsInput,
    timeStep: quantity("time", { description: "Longest time step.", minimum: 0.01, maximum: 600 }).default(1),
    rowInterval: quantity("time", {
      description: "Time between rows; the time step when absent.",
      minimum: 0.01,
      maximum: 3600,
    }).optional(),
    endAtFirstLimit: z
      .boolean()
      .default(false)
      .meta({ description: "End at the first limit that is passed, not only where the pack can no more." }),
  })
  .superRefine((inputs, context) => {
    const complain = (path: (string | number)[], message: string): void => context.addIssue({ code: "custom", path, message });
    const { shortTimeCurrent, continuousCurrent, temperatureMinimum, temperatureMaximum } = inputs.limits;
    if (shortTimeCurrent !== undefined && continuousCurrent !== undefined && shortTimeCurrent < continuousCurrent)
      complain(["limits", "shortTimeCurrent"], "the short-time current must not be below the continuous one");
    if (temperatureMinimum !== undefined && temperatureMaximum !== undefined && temperatureMinimum >= temperatureMaximum)
      complain(["limits", "temperatureMinimum"], "the coldest permitted cell must be colder than the hottest");
    const named = inputs.differingBlocks.map(({ block }) => block);
    for (const [index, block] of named.entries())
      if (named.indexOf(block) !== index) complain(["differingBlocks", index, "block"], `block ${block} is described twice`);
  });

export type BatteryInputs = z.infer<typeof batteryInputs>;
