import { z } from "zod";
import { quantity } from "../../quantities/index.ts";
import { aircraftInput, cellInputs, powerInputs } from "../inputs/flight-conditions.ts";

const loadingOverride = z
  .strictObject({
    blocks: z
      .int()
      .min(1)
      .optional()
      .meta({ description: "Battery blocks on board; the mission file's when absent.", role: "condition.pack" }),
    payload: z
      .string()
      .min(1)
      .optional()
      .meta({ description: "Payload record on board at take-off; the mission file's when absent.", role: "condition.payload" }),
    payloadMass: quantity("mass", {
      description: "Payload mass at take-off instead of a record: no power, no drag.",
      minimum: 0,
      role: "condition.payload",
    }).optional(),
  })
  .prefault({});

const reserveOverride = z
  .strictObject({
    minimumStateOfCharge: quantity("dimensionless", {
      description: "State of charge that must be left at landing; the mission file's when absent.",
      minimum: 0,
      maximum: 0.95,
    }).optional(),
    hoverTime: quantity("time", {
      description: "Hover that must still be possible above that; the mission file's when absent.",
      minimum: 0,
      maximum: 3600,
    }).optional(),
  })
  .prefault({});

export const missionInputs = z.strictObject({
  mission: z.string().min(1).optional().meta({ description: "Mission file; the project's first when absent.", role: "mission" }),
  aircraft: aircraftInput.meta({ description: "Aircraft file; the mission's, else the project's first when absent.", role: "aircraft" }),
  loading: loadingOverride,
  windSpeed: quantity("speed", {
    description: "Wind at 10 m above ground; the mission file's when absent.",
    minimum: 0,
    maximum: 60,
    role: "condition.wind",
  }).optional(),
  windFrom: quantity("angle", {
    description: "Direction the wind blows from, clockwise from true north; the mission file's when absent.",
    minimum: -2 * Math.PI,
    maximum: 4 * Math.PI,
    role: "condition.wind",
  }).optional(),
  temperature: quantity("temperature", {
    description: "Outside air temperature at the place of take-off; the mission file's when absent.",
    minimum: 150,
    maximum: 350,
    role: "condition.temperature",
  }).optional(),
  temperatureOffset: quantity("temperatureDifference", {
    description: "Air temperature minus the standard atmosphere's at every height, instead of temperature.",
    minimum: -80,
    maximum: 80,
    role: "condition.temperature",
  }).optional(),
  reserve: reserveOverride,
  step: quantity("time", { description: "Longest time step of the flight.", minimum: 0.05, maximum: 60 }).default(1),
  ...cellInputs,
  ...powerInputs,
});

export type MissionInputs = z.infer<typeof missionInputs>;

const time = (description: string) => quantity("time", { description });
const length = (description: string) => quantity("length", { description });
const speed = (description: string) => quantity("speed", { description });
const share = (description: string) => quantity("dimensionless", { description });
const mode = z.enum(["clutch-closed", "clutch-open", "on-ground"]);
const phase = z.enum(["take-off", "climb", "descent", "landing", "hover", "on-ground", "accelerate", "cruise", "decelerate"]);

export const missionRow = z.strictObject({
  time: time("Since the start of the take-off."),
  latitude: quantity("latitude", { description: "Latitude, WGS 84, north positive." }),
  longitude: quantity("angle", { description: "Longitude, WGS 84, east positive." }),
  distance: length("Along the route."),
  heightAboveSea: length("Height above mean sea level."),
  heightAboveGround: length("Height above the ground below."),
  airspeed: speed("True airspeed along the path."),
  groundspeed: speed("Horizontal speed over ground."),
  climbRate: speed("Rate of climb, negative in a descent."),
  heading: quantity("angle", { description: "Direction of the airspeed, clockwise from true north." }),
  headwind: speed("Wind against the direction of travel; all of it in a hover."),
  phase: phase.describe("What the aircraft does."),
  leg: z.int().nullable().describe("Leg, counted from 1; none at a stop."),
  mode: mode.nullable().describe("Rotor mode of the step that begins here."),
  power: quantity("power", {
    description: "At the pack's terminals, constant over the step that begins here; none at the last row.",
  }).nullable(),
  rotorShaftPower: quantity("power", { description: "Rotor shaft power over that step." }).nullable(),
  stallMargin: share("Largest steady thrust over trimmed thrust over that step.").nullable(),
  voltage: quantity("voltage", { description: "At the pack's terminals as the step begins." }).nullable(),
  current: quantity("current", { description: "From the pack as the step begins." }).nullable(),
  stateOfCharge: share("Charge left over charge when full."),
});

export type MissionRow = z.infer<typeof missionRow>;

export const missionStage = z.strictObject({
  name: z.string().describe("Leg or place."),
  what: z.string().describe("What is done there."),
  duration: time("How long it takes."),
  distance: length("Distance along the route."),
  meanHeadwind: speed("Mean wind against the direction of travel; mean wind in a hover."),
  meanGroundspeed: speed("Mean speed over ground."),
  energy: quantity("energy", { description: "Drawn at the pack's terminals." }),
  stateOfChargeAtEnd: share("State of charge when it is done."),
  lowestHeightAboveGround: length("Lowest height above ground."),
  clutchOpenShare: share("Share of the time flown with the clutch open."),
});

export type MissionStage = z.infer<typeof missionStage>;

export const missionSummary = z.strictObject({
  feasible: z.boolean().describe("True when the flight reaches its end and the reserve is kept."),
  limit: z.string().nullable().describe("What stops the flight or is not kept."),
  reason: z.string().nullable().describe("That limit in a sentence."),
  completed: z.boolean().describe("True when the flight reaches its last waypoint, whatever is left."),
  energyUsed: quantity("energy", { description: "Time integral of power at the pack's terminals, up to the end or the stop." }),
  landingStateOfCharge: share("State of charge at landing.").nullable(),
  reserveMargin: share("Landing state of charge minus the smallest permitted.").nullable(),
  stateOfChargeAfterReserveHover: share("What the reserve's hover would leave; only when a hover is asked for.").nullable(),
  duration: time("Up to the end or the stop."),
  distance: length("Along the route, up to the end or the stop."),
  reserveReachedAt: time("When the state of charge falls below the smallest permitted.").nullable(),
  lowestHeightAboveGround: length("Lowest height above ground on legs.").nullable(),
  highestAltitude: length("Greatest height above mean sea level."),
  strongestHeadwind: speed("Largest wind against the direction of travel on legs.").nullable(),
});

const degrees = z.number().describe("Degrees, as GeoJSON writes them.");
const place = z.strictObject({ name: z.string(), longitude: degrees, latitude: degrees });

export const missionOutputs = z.strictObject({
  title: z.string().describe("What the flight is for."),
  demo: z.boolean().describe("True when every value of the project is invented."),
  rows: z.array(missionRow).describe("Timeline: one row per step and one at the end."),
  summary: missionSummary,
  stages: z.array(missionStage).describe("Legs and stops in order."),
  conditions: z
    .strictObject({
      takeoffMass: quantity("mass", { description: "Mass at take-off." }),
      blocks: z.int().describe("Battery blocks on board."),
      payload: z.string().describe("Payload at take-off, in words."),
      windSpeed: speed("Wind at 10 m above ground."),
      windFrom: quantity("angle", { description: "Direction the wind blows from." }),
      windProfile: z.enum(["uniform", "power-law", "logarithmic"]).describe("How wind changes with height."),
      takeoffTemperature: quantity("temperature", { description: "Air temperature at the place of take-off." }),
      takeoffElevation: length("Ground elevation above mean sea level at the place of take-off."),
      legAirspeeds: z.array(speed("Commanded airspeed.")).describe("Commanded airspeed of each leg."),
      minimumStateOfCharge: share("Smallest permitted state of charge at landing."),
      reserveHoverTime: time("Hover that must still be possible above that."),
      trimmedFlights: z.int().describe("Exact flights behind the power table."),
    })
    .describe("What the flight was computed with."),
  limits: z
    .array(
      z.strictObject({
        name: z.string().describe("Name of the limit."),
        family: z.enum(["air", "power", "strength", "control", "rule"]).describe("Kind of the limit."),
        share: share("Largest share used on the flight."),
        side: z.enum(["upper", "lower"]).describe("Which side of it is forbidden."),
        where: z.string().describe("Where on the flight that is."),
        binding: z.boolean().describe("True when it stops the flight or is not kept."),
      }),
    )
    .describe("Every limit with the largest share of it that the flight uses."),
  map: z
    .strictObject({
      waypoints: z.array(place).describe("Corners of the route."),
      relief: z
        .strictObject({
          west: degrees,
          east: degrees,
          south: degrees,
          north: degrees,
          width: z.int(),
          height: z.int(),
          elevation: z.array(length("Ground elevation above mean sea level.").nullable()),
        })
        .nullable()
        .describe("Thinned ground elevation around the route, first row northernmost."),
    })
    .describe("Where the flight goes."),
});

export type MissionOutputs = z.infer<typeof missionOutputs>;
