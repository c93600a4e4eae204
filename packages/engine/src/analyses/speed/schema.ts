import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput, airInputs, loadingInput, powerInputs, trimLevelInput } from "../inputs/flight-conditions.ts";

const airspeed = quantity("speed", { description: "True airspeed.", minimum: 0, maximum: 90 });

export const speedInputs = z.strictObject({
  aircraft: aircraftInput,
  loading: loadingInput,
  ...airInputs,
  speeds: z
    .array(airspeed)
    .min(1)
    .max(400)
    .default(() => Array.from({ length: 46 }, (_, i) => i))
    .meta({ description: "True airspeeds to compute, 0 to 45 m/s in steps of 1 m/s when absent." }),
  ...powerInputs,
  trimLevel: trimLevelInput,
  sideslip: z
    .union([
      quantity("angle", { description: "Direction the air comes from, to the right of the nose.", minimum: -Math.PI, maximum: Math.PI }),
      z.literal("free").describe("Whatever costs least."),
    ])
    .default(0)
    .meta({ description: "Direction the air comes from, to the right of the nose; other than 0 at trim level full only." }),
  stopped: z
    .array(z.string().min(1).describe("Id of a drive line."))
    .max(8)
    .default([])
    .meta({ description: "Drive lines that stand still, by id: one-sided flight, at trim level full only." }),
});

export type SpeedInputs = z.infer<typeof speedInputs>;

const watt = (description: string) => quantity("power", { description }).nullable();
const one = (description: string) => quantity("dimensionless", { description }).nullable();

export const speedRow = z.strictObject({
  airspeed: quantity("speed", { description: "True airspeed." }),
  mode: z.enum(["clutch-closed", "clutch-open"]).describe("Whether the motor may drive the rotor."),
  feasible: z.boolean().describe("Whether level flight is possible within every limit."),
  limit: z.string().nullable().describe("What stops the flight, or binds in it."),
  electricPower: watt("Drawn at the pack's terminals: the sum of the parts."),
  rotorShaftPower: watt("Part: delivered to the rotor shaft."),
  propellerShaftPower: watt("Part: delivered to both propeller shafts."),
  driveLosses: watt("Part: lost in drive motor, controller and gear."),
  propellerLosses: watt("Part: lost in propeller motors and controllers."),
  avionicsPower: watt("Part: avionics, lights and payload."),
  rotorRotationRate: quantity("rotationRate", { description: "Rotor rotation rate." }).nullable(),
  tipSpeed: quantity("speed", { description: "Rotor tip speed." }).nullable(),
  collective: quantity("angle", { description: "Blade pitch at 0.75 of the radius; good to 1 to 1.5 degrees." }).nullable(),
  discAngle: quantity("angle", { description: "Tip-path plane to the horizontal, positive tilted back." }).nullable(),
  wingAngle: quantity("angle", {
    description: "Wing chord to the horizontal; none below 6 m/s, where it has next to no effect.",
  }).nullable(),
  flapLongitudinal: quantity("angle", {
    description: "Flapping, positive back: relative to the plane of no feathering, at trim level full to the shaft.",
  }).nullable(),
  flapLateral: quantity("angle", { description: "The same, positive down on the advancing side." }).nullable(),
  rotorLiftShare: one("Rotor lift over weight."),
  wingLiftShare: one("Wing lift over weight."),
  stallMargin: one("Largest steady thrust over trimmed thrust."),
  energyPerDistance: quantity("energyPerDistance", { description: "Electric power over airspeed; none in hover." }).nullable(),
  advanceRatio: one("V cos(disc angle) over tip speed."),
  schedulePower: watt("Power with scheduled controls where the file has them; at trim level full only."),
  pitch: quantity("angle", { description: "Nose above the horizon; at trim level full only." }).nullable(),
  roll: quantity("angle", { description: "Right side down; at trim level full only." }).nullable(),
  sideslip: quantity("angle", { description: "Air from the right; at trim level full only." }).nullable(),
  otherOptimum: watt("Power of a second, dearer local optimum where the two ends of the speed range lead to different ones."),
});

export type SpeedRow = z.infer<typeof speedRow>;

const optional = {
  speed: (description: string) => quantity("speed", { description }).nullable(),
  ratio: (description: string) => quantity("dimensionless", { description }).nullable(),
};

export const speedSummarySchema = z.strictObject({
  takeoffMass: quantity("mass", { description: "Take-off mass." }),
  hoverPower: watt("Electric power of hover out of ground effect."),
  minimumPower: watt("Least electric power of level flight over speed and mode."),
  minimumPowerSpeed: optional.speed("Airspeed of that."),
  minimumPowerMode: z.enum(["clutch-closed", "clutch-open"]).nullable().describe("Rotor mode of that."),
  bestRangeSpeed: optional.speed("Airspeed of least energy per distance in still air."),
  bestRangeEnergy: quantity("energyPerDistance", { description: "Energy per distance there." }).nullable(),
  lowestAutorotatingSpeed: optional.speed("Lowest airspeed of level flight with the clutch open."),
  lowestAutorotatingLimit: z.string().nullable().describe("What stops such flight below that."),
  clutchOpenCheaper: z
    .array(
      z.strictObject({
        from: quantity("speed", { description: "Slowest airspeed of the stretch." }),
        to: quantity("speed", { description: "Fastest airspeed of the stretch." }),
      }),
    )
    .describe("Where flying with the clutch open costs less electric power; may be empty."),
  clutchOpenCheaperReason: z.string().nullable().describe("Why it is empty."),
  maximumSpeed: optional.speed("Highest airspeed of level flight in either mode."),
  maximumSpeedLimit: z.string().nullable().describe("What stops level flight above that."),
  bestGlideRatio: optional.ratio("Best horizontal over vertical distance without power, propellers stopped."),
  bestGlideSpeed: optional.speed("Airspeed along the path of that."),
  minimumSink: optional.speed("Least sink rate without power."),
  minimumSinkSpeed: optional.speed("Airspeed along the path of that."),
  verticalAutorotationSpeed: optional.speed("Slowest steady vertical descent without power."),
  verticalAutorotationLimit: z.string().nullable().describe("Why there is none."),
});

export const speedOutputs = z.strictObject({
  rows: z.array(speedRow).describe("One row per mode and airspeed."),
  summary: speedSummarySchema,
  glide: z
    .array(
      z.strictObject({
        airspeed: quantity("speed", { description: "Airspeed along the path." }),
        sinkRate: quantity("speed", { description: "Least sink rate there." }).nullable(),
        limit: z.string().nullable().describe("What stops a glide at this airspeed."),
      }),
    )
    .describe("Power-off polar."),
  limits: z
    .array(
      z.strictObject({
        name: z.string().describe("Name of the limit."),
        family: z.enum(["air", "power", "strength", "control", "rule"]).describe("Kind of the limit."),
        share: quantity("dimensionless", { description: "Largest share used where the cheaper mode flies." }),
        airspeed: quantity("speed", { description: "Where that is." }),
        mode: z.enum(["clutch-closed", "clutch-open"]).describe("In which mode."),
      }),
    )
    .describe("Every limit with the largest share of it that level flight uses."),
});

export type SpeedOutputs = z.infer<typeof speedOutputs>;
