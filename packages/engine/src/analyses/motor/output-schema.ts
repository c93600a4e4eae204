import { z } from "zod";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";

const power = (description: string) => quantity("power", { description });
const rate = (description: string) => quantity("rotationRate", { description });
const one = (description: string) => quantity("dimensionless", { description });

const stateFields = {
  current: quantity("current", { description: "In the motor." }),
  rotationRate: rate("Of the last shaft, behind the gear."),
  torque: quantity("torque", { description: "Of the last shaft; negative is a shaft that drives." }),
  shaftPower: power("Of the last shaft."),
  electricPower: power("Drawn from the supply, controller included; negative gives back."),
  efficiency: one("Power out over power in, gear and controller included; none where neither side gives.").nullable(),
};

const moreFields = {
  duty: one("Voltage at the motor over that of the supply."),
  supplyCurrent: quantity("current", { description: "Drawn from the supply." }),
  motorRotationRate: rate("Of the motor's own shaft."),
  motorTorque: quantity("torque", { description: "Of the motor's own shaft." }),
  motorVoltage: quantity("voltage", { description: "At the motor's leads, mean." }),
  electricalRate: rate("Electrical angular rate: rate of the motor times its pole pairs; over 2π the frequency."),
  copperLoss: power("Lost in the winding."),
  noLoadLoss: power("Lost in iron, bearings and air by turning."),
  controllerLoss: power("Lost in the controller."),
  gearLoss: power("Lost in the gear."),
  mode: z.enum(["motor", "generator", "brake"]).meta({ description: "Brake: shaft and supply both pay." }),
  windingTemperature: quantity("temperature", { description: "At which the row holds." }),
};

const state = z.strictObject(stateFields);
export type MotorStateOutput = z.infer<typeof state>;

const none = <Fields extends z.ZodRawShape>(fields: Fields) =>
  Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, (field as z.ZodType).nullable()])) as {
    [Name in keyof Fields]: z.ZodNullable<Fields[Name] extends z.ZodType ? Fields[Name] : never>;
  };

export const motorRowOutputs = z.strictObject({
  ...none(stateFields),
  ...none(moreFields),
  steadyTemperature: quantity("temperature", {
    description: "Of the winding in the long run; none where it runs away, or without thermal data.",
  }).nullable(),
  timeToLimit: quantity("time", {
    description: "From the start until the winding is too hot; none means never, with the reason.",
  }).nullable(),
  heating: z.string().nullable().meta({ description: "Why steady temperature and time are what they are." }),
  steady: state.nullable().meta({ description: "The same point with the winding at its steady temperature, where it may stay there." }),
  otherStates: z
    .array(z.strictObject({ rotationRate: rate("Rate."), torque: stateFields.torque, current: stateFields.current, stable: z.boolean() }))
    .meta({ description: "Other places where motor and load meet." }),
  history: z
    .array(
      z.strictObject({
        time: quantity("time", { description: "Since the start." }),
        winding: quantity("temperature", { description: "Of the winding." }),
        housing: quantity("temperature", { description: "Of the housing, or of the air where there is none." }),
      }),
    )
    .meta({ description: "Temperatures from the start to the limit, or until they are steady." }),
  problem: z.string().nullable().meta({ description: "Why there is no state here." }),
});

export type MotorRow = z.infer<typeof motorRowOutputs>;

const ratingOutputs = z.strictObject({
  ...stateFields,
  limitedBy: z.enum(["temperature", "current", "voltage"]).meta({ description: "What keeps it from more." }),
});

export const motorOutputs = z.strictObject({
  rows: z.array(motorRowOutputs).meta({ description: "In the order of the points." }),
  bestEfficiency: state
    .nullable()
    .meta({ description: "State of the highest efficiency at full throttle, winding at the start temperature." }),
  noLoad: state.nullable().meta({ description: "Full throttle without load." }),
  stallCurrent: quantity("current", { description: "That would flow at full throttle with the shaft held." }),
  largestShaftPower: power("Most that full throttle gives, whatever it heats; none where the gear takes everything.").nullable(),
  continuousPower: power("Shaft power that the winding bears for ever at full throttle; none without thermal data.").nullable(),
  continuous: ratingOutputs.nullable().meta({ description: "The state of that, winding at its limit." }),
  shortTimePower: power("Shaft power that it bears for the short time from the start temperature; none without thermal data.").nullable(),
  shortTime: ratingOutputs.nullable().meta({ description: "The state of that, winding at its limit." }),
  curve: z.array(state).meta({ description: "States at full throttle over current, winding at the start temperature." }),
  given: z
    .strictObject({
      dutyMaximum: one("Largest duty."),
      currentMaximum: stateFields.current.nullable(),
      continuousElectricPower: power("Electric power that the aircraft file allows without end.").nullable(),
      temperatureMaximum: quantity("temperature", { description: "Hottest permitted winding." }).nullable(),
    })
    .meta({ description: "Limits of this motor; none where none is stated." }),
  domain: domainOutputs,
});

export type MotorOutputs = z.infer<typeof motorOutputs>;
