import { z } from "zod";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";

const time = (description: string) => quantity("time", { description }).nullable();
const one = (description: string) => quantity("dimensionless", { description });
const length = (description: string) => quantity("length", { description }).nullable();

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
  mode: z.enum(["clutch-closed", "clutch-open"]).nullable().describe("Whether the motor may drive the rotor; none for derivatives."),
  problem: z.string().nullable().describe("Why there is no steady flight here; then there are no modes."),
  modes: z.array(modeOutput).describe("Modes, fastest first, controls and the governor's reference fixed."),
  frozenModes: z.array(modeOutput).describe("The same with the rotors' speed held: what is lost without it. Empty without rotors."),
  stable: z.boolean().nullable().describe("Whether every disturbance dies away."),
  incidenceMoment: z.number().nullable().describe("M_w over I_y [1/(m s)]: negative turns the nose back into the stream."),
  speedMoment: z.number().nullable().describe("M_u over I_y [1/(m s)]: positive lifts the nose with speed."),
  incidenceMargin: length("How far the neutral point of incidence lies behind the centre of gravity; none without mass, inertia or speed."),
  speedMargin: length("The same for a change of speed: farther aft it is not brought back by itself."),
  rearmostCentre: length("Place of the rearmost centre of gravity by the smaller of the two margins; forward of the datum positive."),
  thrustLineHeight: length(
    "Height of the propellers' thrust line above the centre of gravity: with thrust the nose goes down where positive.",
  ),
  rotorRate: quantity("rotationRate", { description: "Of the first rotor." }).nullable(),
  wingLiftShare: one("Lift of all surfaces over weight.").nullable(),
  coupling: one("Coupling of longitudinal and lateral motion over the largest entry; 0 in a symmetric aircraft.").nullable(),
  spread: one("Largest change of a root over its size when the differences are taken half as wide.").nullable(),
  systems: z.array(system).describe("Matrices of the linear motion."),
});

export type StabilityCondition = z.infer<typeof condition>;

const manoeuvre = z.strictObject({
  name: z.string().describe("Push-over, pull-up or gust."),
  mode: z.enum(["clutch-closed", "clutch-open"]).describe("Of the flight it begins from."),
  airspeed: quantity("speed", { description: "Of that flight." }),
  lowestRotorRate: quantity("rotationRate", { description: "Lowest rotor speed." }).nullable(),
  lowestRotorShare: one("The same over that at the start.").nullable(),
  lowestLoadFactor: one("Least load factor."),
  highestLoadFactor: one("Largest load factor."),
  timeToRecover: time("From the beginning until all is as before; none when it is not by the end."),
  heightChange: quantity("length", { description: "Height at the end less that at the start." }),
  stopped: z.string().nullable().describe("Why it was not followed to the end."),
  energyGap: one("Energy missing from the books over energy turned over: how exact the integration is."),
  times: z.array(quantity("time", { description: "Since the start." })),
  pitch: z.array(quantity("angle", { description: "Nose up." })),
  loadFactor: z.array(one("Force up over weight.")),
  rotorRate: z.array(quantity("rotationRate", { description: "Of the first rotor." })),
  height: z.array(quantity("length", { description: "Above the start." })),
});

export type ManoeuvreOutput = z.infer<typeof manoeuvre>;

export const stabilityOutputs = z.strictObject({
  along: z.enum(["airspeed", "factor"]).describe("What the conditions run along."),
  conditions: z.array(condition).min(1).describe("Steady flights that were linearised."),
  chosen: z.int().describe("The condition that the answer is about: the one whose fastest growth is largest, or the unvaried one."),
  lanchesterPeriod: time("Period of the phugoid by the formula π √2 V/g, for comparison; none in hover."),
  response: z
    .array(
      z.strictObject({
        group: z.string().describe("Part of the motion."),
        times: z.array(quantity("time", { description: "Time after the disturbance." })),
        states: z.array(z.strictObject({ state: z.string(), values: z.array(z.number()).describe("SI.") })),
      }),
    )
    .describe("Linear response to the disturbance, at the chosen condition."),
  manoeuvres: z.array(manoeuvre).describe("Push-over, pull-up and gust under the reference controller; none for derivatives."),
  centre: length("Place of the centre of gravity, forward of the datum positive; none for derivatives."),
  domain: domainOutputs,
});

export type StabilityOutputs = z.infer<typeof stabilityOutputs>;
