import { z } from "zod";
import { quantity } from "../../quantities/index.ts";

const one = (description: string) => quantity("dimensionless", { description });
const angle = (description: string) => quantity("angle", { description });

const control = z.strictObject({
  id: z.string().describe("Control."),
  lowest: z.number().describe("Lowest position [rad, N, m/s]."),
  highest: z.number().describe("Highest position."),
  rangeUsed: one("Farthest position from the middle of its range over half the range."),
  atRate: one("Share of the time in which it was asked to move faster than it can."),
  atStop: one("Share of the time in which it was asked beyond its range."),
});

export const transientOutputs = z.strictObject({
  step: z.string().describe("What happened, in words."),
  stepAt: quantity("time", { description: "When." }),
  reaction: z.string().nullable().describe("What was done about it beyond holding the attitude."),
  recovered: z.boolean().describe("Whether attitude, rates and load factor came back and the rotors turn within their limits."),
  timeToRecover: quantity("time", { description: "From the step until they are back for good; none when they are not." }).nullable(),
  stopped: z.string().nullable().describe("Why the flight was not followed to the end."),
  notBack: z.array(z.string()).describe("What is not back at the end."),
  peakRoll: angle("Largest roll from the flight before, in size."),
  peakPitch: angle("Largest pitch from the flight before, in size."),
  peakRate: quantity("anglePerTime", { description: "Largest rate about any axis." }),
  lowestLoadFactor: one("Least force up over weight."),
  highestLoadFactor: one("Largest force up over weight."),
  heightLost: quantity("length", { description: "Height at the start less that at the end." }),
  heightLostToRecovery: quantity("length", { description: "The same until it was recovered; none when it was not." }).nullable(),
  sinkRateAtEnd: quantity("speed", { description: "Rate of sink at the end." }),
  rotors: z
    .array(
      z.strictObject({
        id: z.string().describe("Rotor."),
        start: quantity("rotationRate", { description: "Before the step." }),
        lowest: quantity("rotationRate", { description: "Lowest." }),
        lowestShare: one("The same over that at the start."),
        lowestAt: quantity("time", { description: "When that is." }),
        highest: quantity("rotationRate", { description: "Highest." }),
        end: quantity("rotationRate", { description: "At the end." }),
        permittedLowest: quantity("rotationRate", { description: "Lowest permitted by the aircraft file." }),
        permittedHighest: quantity("rotationRate", { description: "Highest permitted by the aircraft file." }),
        decay: quantity("time", {
          description: "Energy of the rotor over its power before the step: how long it would turn on what it has.",
        }).nullable(),
      }),
    )
    .describe("Rotors."),
  controls: z.array(control).describe("Controls that moved, or were asked to."),
  energyGap: one("Energy missing from the books over energy turned over: how exact the integration is."),
  evaluations: z.int().describe("Evaluations of the loads."),
  samples: z
    .array(
      z.strictObject({
        time: quantity("time", { description: "Since the start." }),
        airspeed: quantity("speed", { description: "Through the air." }),
        height: quantity("length", { description: "Above the start." }),
        climbRate: quantity("speed", { description: "Up." }),
        roll: angle("Right side down."),
        pitch: angle("Nose up."),
        yaw: angle("Nose right."),
        loadFactor: one("Force up over weight."),
        rotorRate: quantity("rotationRate", { description: "Of the first rotor." }).nullable(),
        driveTorque: quantity("torque", { description: "Of the drive on the first rotor." }).nullable(),
        electricPower: quantity("power", { description: "Drawn from the pack." }),
      }),
    )
    .describe("Course of the flight."),
});

export type TransientOutputs = z.infer<typeof transientOutputs>;
