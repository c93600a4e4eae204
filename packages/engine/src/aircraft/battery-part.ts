import { z } from "zod";
import { quantity } from "../quantities/index.ts";
import { fraction, notNegative, positive } from "./bounds.ts";
import { place, size } from "./placement.ts";

const curvePoint = (kind: Parameters<typeof quantity>[0], description: string) =>
  z.strictObject({ stateOfCharge: fraction("State of charge."), value: quantity(kind, { description, minimum: 0 }) });

const cell = z
  .strictObject({
    capacity: positive("capacity", "Charge of a new cell at 25 °C."),
    mass: positive("mass", "Mass of one cell."),
    specificHeat: positive("specificHeat", "Specific heat of the cell."),
    openCircuitVoltage: z.array(curvePoint("voltage", "Rest voltage.")).min(2).describe("Linear between points."),
    resistance: positive("resistance", "Resistance at 25 °C once the voltage has settled."),
    relaxation: z
      .strictObject({
        resistance: positive("resistance", "Part of the resistance that shows only after a while."),
        timeConstant: positive("time", "After this time 63 % of that part show."),
      })
      .optional()
      .describe("How the voltage settles after a change of load; at once when absent. Endurance over a flight does without it."),
    resistanceFactor: z
      .array(curvePoint("dimensionless", "Factor on resistance."))
      .min(1)
      .describe("Linear between points, held beyond the ends."),
    resistanceActivation: notNegative("temperatureDifference", "B in R(T) = R25 exp(B (1/T − 1/298.15 K))."),
    capacityFactor: z
      .array(z.strictObject({ temperature: positive("temperature", "Cell temperature."), value: fraction("Factor on capacity.") }))
      .min(1)
      .describe("Linear between points, held beyond the ends."),
    cutoffVoltage: positive("voltage", "Lowest permitted voltage under load."),
    temperatureMinimum: positive("temperature", "Coldest permitted cell."),
    temperatureMaximum: positive("temperature", "Hottest permitted cell."),
  })
  .refine((one) => one.relaxation === undefined || one.relaxation.resistance < one.resistance, {
    error: "relaxation.resistance is a part of resistance: it must be smaller",
    path: ["relaxation", "resistance"],
  });

/** The pack: blocks of cells in parallel, and the bay that takes them. */
export const batteryPart = z.strictObject({
  cell,
  seriesCells: z.int().min(1).describe("Cells in series in one block."),
  parallelCells: z.int().min(1).describe("Cells in parallel in one block."),
  blockMass: positive("mass", "Mass of one block."),
  blockSize: size.optional().describe("Edges of one block, a solid of even density; a point when absent."),
  fixedMass: notNegative("mass", "Mass of the pack without blocks."),
  fixedPlace: place.describe("Where that mass sits."),
  bay: z.strictObject({
    front: quantity("length", { description: "Front edge of the bay, forward of the datum." }),
    back: quantity("length", { description: "Rear edge of the bay, forward of the datum." }),
    z: quantity("length", { description: "Depth of the bay below the datum." }),
    places: z.int().min(1).describe("Equal places, filled from the front."),
  }),
  packs: z.array(z.int().min(1)).min(1).describe("Block counts that are flown."),
  wiringResistance: notNegative("resistance", "Wiring between blocks and terminals."),
  continuousCurrent: positive("current", "Current of one block without end."),
  shortCurrent: positive("current", "Current of one block for a short time."),
  shortTime: positive("time", "How long the short-time current may flow."),
  thermalResistance: positive("thermalResistance", "Block to bay air."),
  bayTemperatureRise: notNegative("temperatureDifference", "Bay air above ambient."),
});

export type BatteryDefinition = z.infer<typeof batteryPart>;
