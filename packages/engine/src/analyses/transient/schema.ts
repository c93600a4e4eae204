import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput, airInputs, loadingInput } from "../inputs/flight-conditions.ts";

const engineStop = z
  .strictObject({
    kind: z.literal("engine-stop"),
    lines: z
      .array(z.string().min(1).describe("Id of a drive line."))
      .max(16)
      .optional()
      .meta({ description: "Drive lines that stop; those of the rotors when absent, all of them where no rotor is driven." }),
    reaction: quantity("time", {
      description:
        "Until the controls go to those of flight with the rotor free, at their rates. Certification grants a pilot a second (from memory).",
      minimum: 0,
      maximum: 10,
    }).default(0.5),
  })
  .meta({ label: "Drive stops" });

const surfaceJam = z
  .strictObject({
    kind: z.literal("jam"),
    control: z.string().min(1).optional().describe("Id of the control; the first one of a surface when absent."),
    toward: z
      .enum(["held", "minimum", "maximum"])
      .default("maximum")
      .describe("It stays where it is, or runs to an end of its range at its rate."),
  })
  .meta({ label: "Control jams" });

const blockLoss = z
  .strictObject({
    kind: z.literal("block-loss"),
    blocks: z.int().min(1).max(1000).default(1).describe("Battery blocks that fall out."),
    stateOfCharge: quantity("dimensionless", { description: "Of the blocks, for the voltage.", minimum: 0.05, maximum: 1 }).default(0.5),
  })
  .meta({ label: "Battery blocks fall out" });

const gust = z
  .strictObject({
    kind: z.literal("gust"),
    from: z.enum(["below", "above", "ahead", "behind", "right", "left"]).default("below").describe("Where it comes from."),
    speed: quantity("speed", { description: "At its peak.", minimum: 0, maximum: 30 }).default(6),
    gradientDistance: quantity("length", { description: "From its beginning to its peak.", minimum: 1, maximum: 500 }).default(15),
  })
  .meta({ label: "Gust" });

export const transientInputs = z.strictObject({
  aircraft: aircraftInput,
  loading: loadingInput,
  ...airInputs,
  mode: z
    .enum(["clutch-closed", "clutch-open"])
    .default("clutch-closed")
    .meta({ description: "Of the flight before: motor drives the rotor, or rotor turns free." }),
  airspeed: quantity("speed", { description: "Of the level flight before.", minimum: 0, maximum: 90 }).default(12),
  step: z
    .discriminatedUnion("kind", [engineStop, surfaceJam, blockLoss, gust])
    .default({ kind: "engine-stop", reaction: 0.5 })
    .meta({ description: "What happens." }),
  controls: z
    .enum(["optimum", "schedule"])
    .default("schedule")
    .meta({ description: "Scheduled controls of the flight before as the file schedules them, or free within their limits." }),
  losses: z
    .enum(["component", "constant"])
    .default("component")
    .meta({ description: "Losses of every motor, controller and gear, or constant efficiencies for comparison." }),
  lightsOn: z.boolean().default(false).meta({ description: "Lights switched on." }),
  controller: z
    .strictObject({
      attitude: quantity("anglePerTime", { description: "Stiffness of roll and pitch as a frequency.", minimum: 0.1, maximum: 20 }).default(
        3,
      ),
      heading: quantity("anglePerTime", { description: "Stiffness of heading as a frequency.", minimum: 0, maximum: 20 }).default(1),
      integral: quantity("growthRate", {
        description: "How fast a lasting error of attitude is taken away.",
        minimum: 0,
        maximum: 5,
      }).default(0.5),
      damping: quantity("dimensionless", { description: "Share of critical damping.", minimum: 0, maximum: 3 }).default(0.8),
    })
    .prefault({})
    .describe("The reference controller: attitude hold with rate damping, the same for every aircraft."),
  duration: quantity("time", { description: "How long the flight is followed.", minimum: 2, maximum: 120 }).default(20),
});

export type TransientInputs = z.infer<typeof transientInputs>;
