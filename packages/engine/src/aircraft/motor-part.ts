import { z } from "zod";
import { fraction, notNegative, positive } from "./bounds.ts";

/** A motor with its controller. */
export const motorPart = z.strictObject({
  speedConstant: positive("speedConstant", "Rotation rate per volt of back electromotive force."),
  resistance: positive("resistance", "Winding and lead resistance."),
  noLoadCurrent: notNegative("current", "Current at no load, taken as constant."),
  polePairs: z.int().min(1).describe("Pole pairs."),
  controllerConstantLoss: notNegative("power", "Loss of the controller whenever it runs."),
  controllerProportionalLoss: fraction("Loss of the controller as a share of its input."),
  controllerDutyMaximum: fraction("Largest share of the pack voltage that reaches the motor."),
  continuousPower: positive("power", "Electric power that may be drawn without end."),
  shortPower: positive("power", "Electric power for a short time."),
  shortTime: positive("time", "How long the short-time power may be drawn."),
  currentMaximum: positive("current", "Largest motor current."),
  heatCapacity: positive("heatCapacity", "Heat capacity of the winding."),
  thermalResistance: positive("thermalResistance", "Winding to air."),
  temperatureMaximum: positive("temperature", "Hottest permitted winding."),
});

export type MotorDefinition = z.infer<typeof motorPart>;
