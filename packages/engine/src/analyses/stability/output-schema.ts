import { z } from "zod";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";

const time = (description: string) => quantity("time", { description }).nullable();
const one = (description: string) => quantity("dimensionless", { description });

export const modeOutput = z.strictObject({
  name: z.string().describe("Name of the mode by the states that take part most."),
  group: z.enum(["longitudinal", "lateral", "rotor", "coupled"]).describe("Part of the motion that has two thirds of it."),
  real: quantity("growthRate", { description: "Real part of the root; negative dies away." }),
  imaginary: quantity("anglePerTime", { description: "Imaginary part of the root; 0 without oscillation." }),
  timeToHalf: time("Time until a disturbance has halved."),
  timeToDouble: time("Time until it has doubled."),
  period: time("Of the oscillation."),
  damping: one("Share of critical damping; none without oscillation.").nullable(),
  naturalFrequency: quantity("anglePerTime", { description: "Undamped circular frequency." }),
  participation: z
    .array(z.strictObject({ state: z.string().describe("State of the motion."), share: one("Its share in the mode.") }))
    .describe("States by their share; empty where modes cannot be told apart."),
});

export type ModeOutput = z.infer<typeof modeOutput>;

const system = z.strictObject({
  states: z.array(z.string()).describe("Names of the states, SI."),
  matrix: z.array(z.array(z.number())).describe("Rate of change of each state (rows) per state (columns), SI."),
});

const condition = z.strictObject({
  at: z.number().describe("Airspeed or factor of this condition, SI."),
  airspeed: quantity("speed", { description: "Steady true airspeed." }),
  modes: z.array(modeOutput).describe("Modes, fastest first."),
  stable: z.boolean().describe("Whether every disturbance dies away."),
  incidenceMoment: z.number().nullable().describe("M_w over I_y [1/(m s)]: negative turns the nose back into the stream."),
  speedMoment: z.number().nullable().describe("M_u over I_y [1/(m s)]: positive lifts the nose with speed."),
  incidenceMargin: quantity("length", {
    description: "How far the neutral point of incidence lies behind the centre of gravity; none without mass and inertia.",
  }).nullable(),
  speedMargin: quantity("length", {
    description:
      "How far the centre of gravity may go aft before a change of speed is not brought back by itself; none without mass and inertia.",
  }).nullable(),
  systems: z.array(system).describe("Matrices of the linear motion."),
});

export type StabilityCondition = z.infer<typeof condition>;

export const stabilityOutputs = z.strictObject({
  along: z.enum(["airspeed", "factor"]).describe("What the conditions run along."),
  conditions: z.array(condition).min(1).describe("Steady flights that were linearised."),
  chosen: z.int().describe("The condition that the answer is about."),
  lanchesterPeriod: time("Period of the phugoid by the formula π √2 V/g, for comparison; none without longitudinal motion."),
  response: z
    .array(
      z.strictObject({
        group: z.string().describe("Part of the motion."),
        times: z.array(quantity("time", { description: "Time after the disturbance." })),
        states: z.array(z.strictObject({ state: z.string(), values: z.array(z.number()).describe("SI.") })),
      }),
    )
    .describe("Linear response to the disturbance, at the chosen condition."),
  domain: domainOutputs,
});

export type StabilityOutputs = z.infer<typeof stabilityOutputs>;
