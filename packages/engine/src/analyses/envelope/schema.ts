import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput, airInputs, loadingInput } from "../inputs/flight-conditions.ts";

const { relativeHumidity } = airInputs;
const { payload, payloadMass } = loadingInput.unwrap().shape;

const temperatureOffset = quantity("temperatureDifference", {
  description: "Air temperature minus the standard atmosphere's.",
  minimum: -80,
  maximum: 80,
});

export const envelopeInputs = z.strictObject({
  aircraft: aircraftInput,
  loading: z
    .strictObject({
      blocks: z.int().min(1).optional().meta({
        description: "The pack that sentence and pictures speak of; the largest of those looked at when absent.",
        role: "condition.pack",
      }),
      payload,
      payloadMass,
    })
    .prefault({}),
  packs: z
    .array(z.int().min(1))
    .min(1)
    .max(20)
    .optional()
    .meta({ description: "Block counts to look at; the aircraft's packs when absent." }),
  altitudes: z
    .array(quantity("length", { description: "Geopotential altitude above mean sea level.", minimum: -2000, maximum: 11_000 }))
    .min(1)
    .max(40)
    .optional()
    .meta({ description: "Altitudes to look at; six from sea level to the aircraft's altitude limit when absent." }),
  temperatureOffset: quantity("temperatureDifference", {
    description: "The day that sentence and pictures speak of: air temperature minus the standard atmosphere's, at every altitude.",
    minimum: -80,
    maximum: 80,
    role: "condition.temperature",
  }).default(0),
  temperatureOffsets: z.array(temperatureOffset).max(20).default([]).meta({ description: "Further days to look at." }),
  relativeHumidity,
  speeds: z
    .array(quantity("speed", { description: "True airspeed.", minimum: 0, maximum: 90 }))
    .min(1)
    .max(200)
    .default(() => Array.from({ length: 46 }, (_, i) => i))
    .meta({ description: "True airspeeds to look at, 0 to 45 m/s in steps of 1 m/s when absent." }),
  ceilingTemperatureOffsets: z
    .array(temperatureOffset)
    .max(20)
    .default([-20, 20])
    .meta({ description: "Further days for which the ceilings of that pack are found." }),
  groundHeight: quantity("length", {
    description: "Height of the hub above even ground for the ceiling near the ground; one rotor radius when absent.",
    minimum: 0,
    maximum: 1000,
  }).optional(),
  controls: z
    .enum(["optimum", "schedule"])
    .default("optimum")
    .meta({ description: "Scheduled controls free within their limits, or as the file schedules them." }),
  losses: z
    .enum(["component", "constant"])
    .default("component")
    .meta({ description: "Losses of every motor, controller and gear, or constant efficiencies for comparison." }),
  lightsOn: z.boolean().default(false).meta({ description: "Lights switched on." }),
  stallMargin: quantity("dimensionless", {
    description: "Smallest allowed ratio of largest steady thrust to trimmed thrust; the aircraft file's when absent.",
    minimum: 1,
    maximum: 3,
  }).optional(),
  tipMachMaximum: quantity("dimensionless", {
    description: "Largest Mach number of the advancing blade tip (common practice: drag rises steeply beyond).",
    minimum: 0.2,
    maximum: 1,
  }).default(0.85),
  stateOfCharge: quantity("dimensionless", {
    description: "Of the pack, for the voltage that it holds.",
    minimum: 0,
    maximum: 1,
    role: "condition.cells",
  }).default(0.2),
  cellResistanceFactor: quantity("dimensionless", {
    description: "Resistance grown by age; new cells are 1.",
    minimum: 1,
    maximum: 5,
    role: "condition.cells",
  }).default(1),
});

export type EnvelopeInputs = z.infer<typeof envelopeInputs>;

const word = (description: string) => z.string().describe(description);
const family = z.enum(["air", "power", "strength", "control", "rule"]).describe("Kind of the limit.");
const mode = z.enum(["clutch-closed", "clutch-open"]).describe("Whether the motor may drive the rotor.");
const one = (description: string) => quantity("dimensionless", { description });
const speed = (description: string) => quantity("speed", { description });
const height = (description: string) => quantity("length", { description });
const offset = quantity("temperatureDifference", { description: "Air temperature minus the standard atmosphere's." });
const blocks = z.int().describe("Battery blocks.");

const place = { blocks, temperatureOffset: offset, altitude: height("Above mean sea level.") };

const row = z.strictObject({
  ...place,
  mode,
  airspeed: speed("True airspeed."),
  state: z.enum(["flies", "forbidden", "unknown"]).describe("Level flight within every limit, forbidden by one, or not resolved."),
  limit: word("What forbids it, or is used most.").nullable(),
  family: family.nullable(),
  share: one("Used share of that limit; none where there is no balance.").nullable(),
  electricPower: quantity("power", { description: "Drawn at the pack's terminals." }).nullable(),
  tipSpeed: speed("Tip speed of the first rotor.").nullable(),
  stallMargin: one("Largest steady thrust over thrust of the first rotor.").nullable(),
});

const border = z.strictObject({
  ...place,
  mode,
  side: z.enum(["slowest", "fastest"]).describe("End of the speeds that fly."),
  airspeed: speed("Where it lies."),
  limit: word("What makes it."),
  family,
});

const airBorder = z.strictObject({
  temperatureOffset: offset,
  altitude: height("Where it lies, above mean sea level."),
  forbidden: z.enum(["above", "below"]).describe("Side that is forbidden."),
  limit: word("What makes it."),
  family,
});

const climbRow = z.strictObject({
  ...place,
  airspeed: speed("True airspeed."),
  mode: mode.nullable(),
  climbRate: speed("Fastest steady climb, at most the file's limit; none where level flight is not possible.").nullable(),
  limit: word("What stops a faster one.").nullable(),
  family: family.nullable(),
});

const ceilingRow = z.strictObject({
  blocks,
  temperatureOffset: offset,
  kind: z
    .enum(["hover", "hover near the ground", "service"])
    .describe("Hover out of and in ground effect, to 25 m; a climb of 0.508 m/s, to 100 m."),
  altitude: height("Above mean sea level; none where it does not fly at the lowest altitude looked at.").nullable(),
  isSought: z.boolean().describe("False where it still flies at the highest altitude looked at."),
  limit: word("What ends it.").nullable(),
  family: family.nullable(),
});

const rotorSpeedRow = z.strictObject({
  airspeed: speed("True airspeed."),
  lowest: speed("Slowest tip speed of level flight, clutch closed."),
  lowestLimit: word("What stops a slower one."),
  lowestFamily: family,
  highest: speed("Fastest tip speed of level flight, clutch closed."),
  highestLimit: word("What stops a faster one."),
  highestFamily: family,
});

const limitRow = z.strictObject({
  name: word("Name of the limit."),
  family,
  share: one("Largest share used where it flies, of the pack and day that the sentence speaks of."),
  where: word("Where that is."),
});

export const envelopeOutputs = z.strictObject({
  now: z.strictObject({ blocks, temperatureOffset: offset }).describe("Pack and day that sentence and pictures speak of."),
  packs: z
    .array(
      z.strictObject({
        blocks,
        takeoffMass: quantity("mass", { description: "Take-off mass." }),
        isTooHeavy: z.boolean().describe("Above the largest permitted take-off mass: not looked at."),
      }),
    )
    .describe("Packs."),
  altitudes: z.array(height("Above mean sea level.")).describe("Altitudes, ascending."),
  altitudeLimit: height("The aircraft's, above mean sea level."),
  climbLimit: speed("The aircraft's largest rate of climb."),
  rows: z.array(row).describe("One row for each pack, day, altitude, mode and airspeed."),
  borders: z.array(border).describe("Where level flight begins and ends over airspeed."),
  airBorders: z.array(airBorder).describe("Altitudes beyond which air or rules forbid any flight."),
  climb: z.array(climbRow).describe("Fastest climb over airspeed, in the better mode."),
  bestClimb: z.array(climbRow).describe("The best of them at each altitude."),
  ceilings: z.array(ceilingRow).describe("Ceilings; they look beyond the aircraft's altitude limit."),
  rotorSpeeds: z.array(rotorSpeedRow).describe("Tip speeds at which level flight is possible, at the lowest altitude; one rotor only."),
  groundEffect: z
    .strictObject({
      height: height("Of the hub above even ground."),
      thrustRatio: one("Thrust near the ground over thrust far from it at equal induced power, in hover."),
    })
    .nullable()
    .describe("What the ground does at the height of the ceiling near it; none without rotor."),
  limits: z.array(limitRow).describe("Limits by the largest share of them that level flight uses."),
  solves: z
    .strictObject({
      converged: z.int().describe("In balance."),
      limited: z.int().describe("Stopped by a limit."),
      failed: z.int().describe("Given up."),
    })
    .describe("How the solver's searches ended."),
});

export type EnvelopeOutputs = z.infer<typeof envelopeOutputs>;
export type EnvelopeRow = EnvelopeOutputs["rows"][number];
export type EnvelopeBorder = EnvelopeOutputs["borders"][number];
export type CeilingRow = EnvelopeOutputs["ceilings"][number];
export type ClimbRow = EnvelopeOutputs["climb"][number];
