import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { partInput } from "../inputs/chosen-part.ts";
import { tableInput } from "../inputs/table-input.ts";

/** A row of a table of the current that turning alone takes. */
export const noLoadRow = z.strictObject({
  rotationRate: quantity("rotationRate", { description: "Rate of the motor without load.", minimum: 0, maximum: 50_000 }).meta({
    columnNames: ["rate", "speed", "rpm"],
  }),
  noLoadCurrent: quantity("current", { description: "Current there.", minimum: 0, maximum: 1000 }).meta({
    columnNames: ["current", "i0"],
  }),
});

const noLoadCoefficients = z
  .strictObject({
    constant: quantity("current", { description: "Part that is there at every rate.", minimum: 0, maximum: 1000 }),
    perRate: quantity("dimensionless", { description: "Amperes per radian per second.", minimum: 0, maximum: 10 }).default(0),
    perRateSquared: quantity("dimensionless", {
      description: "Amperes per radian per second squared.",
      minimum: 0,
      maximum: 0.01,
    }).default(0),
  })
  .meta({ label: "Growing with the rate" });

const noLoadCurrent = z.union([
  quantity("current", { description: "Constant.", minimum: 0, maximum: 1000 }).meta({ label: "Constant" }),
  noLoadCoefficients,
  tableInput(noLoadRow, { description: "Current over the rate, linear between rows, held beyond them.", fewest: 2 }),
]);

const gearStage = z.strictObject({
  ratio: quantity("dimensionless", {
    description: "Turns of its input for one turn of its output; below 1 it turns faster.",
    minimum: 0.01,
    maximum: 1000,
  }),
  constantLoss: quantity("power", { description: "Taken whenever it turns.", minimum: 0, maximum: 1e5 }).default(0),
  proportionalLoss: quantity("dimensionless", {
    description: "Share of the power it hands on that is lost.",
    minimum: 0,
    maximum: 0.5,
  }).default(0),
});

const controller = z
  .strictObject({
    constantLoss: quantity("power", { description: "Taken whenever it runs.", minimum: 0, maximum: 1e4 }).default(0),
    proportionalLoss: quantity("dimensionless", { description: "Share of its input that is lost.", minimum: 0, maximum: 0.5 }).default(0),
    dutyMaximum: quantity("dimensionless", {
      description: "Largest share of the supply voltage that reaches the motor.",
      minimum: 0.1,
      maximum: 1,
    }).default(1),
  })
  .prefault({})
  .meta({ description: "Losses and reach of the controller; none and all when absent." });

const housing = z.strictObject({
  heatCapacity: quantity("heatCapacity", { description: "Of the housing.", minimum: 0.01, maximum: 1e7 }),
  thermalResistance: quantity("thermalResistance", { description: "Housing to air.", minimum: 1e-4, maximum: 1e4 }),
});

const thermal = z.strictObject({
  heatCapacity: quantity("heatCapacity", {
    description: "Of the winding; of the whole motor where no housing is given.",
    minimum: 0.01,
    maximum: 1e7,
  }),
  thermalResistance: quantity("thermalResistance", {
    description: "Winding to air; winding to housing where one is given.",
    minimum: 1e-4,
    maximum: 1e4,
  }),
  housing: housing.optional().meta({ description: "A second mass between winding and air; it takes the no-load loss." }),
  temperatureMaximum: quantity("temperature", { description: "Hottest permitted winding.", minimum: 250, maximum: 800 }),
});

/** A motor with controller and gear, written out. */
export const writtenMotor = z
  .strictObject({
    speedConstant: quantity("speedConstant", {
      description: "Rate per volt of back electromotive force.",
      minimum: 0.01,
      maximum: 5000,
    }).meta({
      columnNames: ["kv"],
    }),
    resistance: quantity("resistance", { description: "Of winding and leads.", minimum: 1e-5, maximum: 1000 }).meta({
      columnNames: ["rm", "ri", "winding resistance", "internal resistance"],
    }),
    resistanceTemperature: quantity("temperature", {
      description: "Temperature of the winding at which that was measured.",
      minimum: 230,
      maximum: 500,
    }).default(298.15),
    temperatureCoefficient: quantity("dimensionless", {
      description: "Growth of resistance per kelvin, stated at 20 °C: 0.00393 is copper, 0 keeps it constant.",
      minimum: 0,
      maximum: 0.01,
    }).default(0.00393),
    noLoadCurrent: noLoadCurrent.meta({
      description: "Current that turning alone takes: constant, growing with the rate, or a table.",
      columnNames: ["i0", "idle current"],
    }),
    poleCount: z
      .int()
      .min(2)
      .max(200)
      .multipleOf(2)
      .default(14)
      .meta({ description: "Magnet poles, twice the pole pairs.", columnNames: ["poles"] }),
    currentMaximum: quantity("current", { description: "Largest permitted motor current.", exclusiveMinimum: 0, maximum: 1e5 })
      .optional()
      .meta({ columnNames: ["maximum current"] }),
    thermal: thermal.optional().meta({ description: "What heats and cools it; without it no temperatures are computed." }),
    controller,
    gear: z.array(gearStage).max(6).default([]).meta({ description: "Stages from the motor outward; none is direct drive." }),
  })
  .meta({ label: "Written out" });

export const motorOfAircraft = z
  .strictObject({
    aircraft: z.string().min(1).max(1000).meta({ description: "Aircraft file of the open project.", reference: "aircraft" }),
    part: partInput("Which drive line: its motor with controller and gear."),
  })
  .meta({ label: "From this project" });

export type WrittenMotor = z.infer<typeof writtenMotor>;
