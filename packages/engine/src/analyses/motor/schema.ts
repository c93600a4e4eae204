import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { type GivensSet, matchingGivens } from "../inputs/givens.ts";
import { tableInput } from "../inputs/table-input.ts";
import { motorOfAircraft, writtenMotor } from "./part-schema.ts";

/** A row of a load's table. */
export const loadRow = z.strictObject({
  rotationRate: quantity("rotationRate", { description: "Rate of the last shaft.", minimum: 0, maximum: 50_000 }).meta({
    columnNames: ["rate", "speed", "rpm"],
  }),
  torque: quantity("torque", { description: "What the load asks for; negative where it drives.", minimum: -1e5, maximum: 1e5 }),
});

const powerLaw = z
  .strictObject({
    rotationRate: quantity("rotationRate", { description: "A rate at which the torque is known.", minimum: 0.1, maximum: 50_000 }),
    torque: quantity("torque", { description: "Torque there.", minimum: 0, maximum: 1e5 }),
    exponent: quantity("dimensionless", {
      description: "Power of the rate that the torque grows with: 2 is a propeller at one advance ratio.",
      minimum: 0,
      maximum: 4,
    }).default(2),
  })
  .meta({ label: "Growing with a power of the rate" });

const load = z
  .union([
    powerLaw,
    z
      .strictObject({ rows: tableInput(loadRow, { description: "Torque over the rate, linear between rows.", fewest: 2 }) })
      .meta({ label: "A table" }),
  ])
  .meta({ description: "What the shaft turns; points without another number are where motor and load meet." });

const solved = ["current", "rotationRate", "torque", "shaftPower", "electricPower", "efficiency"];
/** The ways to put a point; nothing but a throttle is where motor and load meet. */
const pointGivens: readonly GivensSet[] = [
  { given: [], solved },
  { given: ["current"], solved },
  { given: ["torque"], solved },
  { given: ["rotationRate"], solved },
  { given: ["rotationRate", "torque"], solved },
  { given: ["rotationRate", "shaftPower"], solved },
];
const pointNames = ["current", "torque", "rotationRate", "shaftPower"];

const point = z
  .strictObject({
    current: quantity("current", { description: "In the motor; negative gives back.", minimum: -1e5, maximum: 1e5 }).optional(),
    torque: quantity("torque", {
      description: "At the last shaft; negative is a shaft that drives.",
      minimum: -1e5,
      maximum: 1e5,
    }).optional(),
    rotationRate: quantity("rotationRate", { description: "Of the last shaft.", minimum: 0, maximum: 50_000 }).optional(),
    shaftPower: quantity("power", { description: "At the last shaft.", minimum: -1e7, maximum: 1e7 }).optional(),
    throttle: quantity("dimensionless", {
      description: "Share of the largest duty; it follows where rate and torque or power are both given.",
      exclusiveMinimum: 0,
      maximum: 1,
    }).optional(),
  })
  .superRefine((inputs, context) => {
    const match = matchingGivens(pointGivens, pointNames, inputs);
    if ("message" in match) context.addIssue({ code: "custom", message: match.message });
    else if (match.set.given.length === 2 && inputs.throttle !== undefined)
      context.addIssue({ code: "custom", path: ["throttle"], message: "the throttle follows from rate and torque; leave it out" });
  })
  .meta({ givens: pointGivens });

export const motorInputs = z
  .strictObject({
    motor: z.union([writtenMotor, motorOfAircraft]).meta({ description: "Motor with controller and gear, or that of an aircraft." }),
    voltage: quantity("voltage", { description: "Of the supply, at the controller.", minimum: 0.1, maximum: 2000 }),
    load: load.optional(),
    points: z.array(point).max(200).default([]).meta({
      description:
        "States to compute: by current, torque or rate at a throttle, by rate with torque or power, or by throttle alone on the load. None: the load at full throttle, or without load twelve currents.",
    }),
    ambientTemperature: quantity("temperature", {
      description: "Temperature of the air around.",
      minimum: 200,
      maximum: 400,
      role: "condition.temperature",
    }).default(298.15),
    startTemperature: quantity("temperature", {
      description: "Of the motor at the start, at which the rows hold; the ambient one when absent.",
      minimum: 200,
      maximum: 600,
    }).optional(),
    shortTime: quantity("time", { description: "How long the short-time power may be drawn.", minimum: 0.1, maximum: 1e5 }).default(60),
  })
  .superRefine((inputs, context) => {
    inputs.points.forEach((given, index) => {
      const loadless = pointNames.every((name) => given[name as keyof typeof given] === undefined) && inputs.load === undefined;
      if (loadless)
        context.addIssue({
          code: "custom",
          path: ["points", index],
          message: "a point needs a current, a torque or a rotation rate, or a load to meet",
        });
    });
  });

export type MotorInputs = z.infer<typeof motorInputs>;
export type MotorPointInput = MotorInputs["points"][number];
