import { z } from "zod";
import { quantity } from "../quantities/index.ts";

const airspeed = quantity("speed", { description: "True airspeed along the path.", exclusiveMinimum: 0 });
const speedRule = z
  .enum(["best-range", "minimum-power"])
  .describe(
    "Speed by its meaning: least energy per distance in still air, or least power, at this loading and the mean height of the legs.",
  );
const height = quantity("length", { description: "Height to fly at, measured from heightDatum." });
const heightDatum = z
  .enum(["above-ground", "mean-sea-level", "ellipsoid"])
  .describe("What the height is measured from; mean sea level when absent. Heights above the ellipsoid need geoidUndulation.");
const geoidUndulation = quantity("length", {
  description: "Height of mean sea level above the ellipsoid here; only with heightDatum ellipsoid.",
});

const windProfile = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("uniform") }),
    z.strictObject({
      kind: z.literal("power-law"),
      exponent: quantity("dimensionless", { description: "U(z) = U(10 m) (z / 10 m) to this power.", minimum: 0, maximum: 1 }),
    }),
    z.strictObject({
      kind: z.literal("logarithmic"),
      roughnessLength: quantity("length", { description: "Height at which the profile reaches zero.", exclusiveMinimum: 0, maximum: 5 }),
    }),
  ])
  .describe("How wind changes with height above ground; uniform when absent.");

const weather = z.strictObject({
  wind: z.strictObject({
    speed: quantity("speed", { description: "Mean wind at 10 m above ground.", minimum: 0, maximum: 60 }),
    from: quantity("angle", { description: "Direction the wind blows from, clockwise from true north." }),
  }),
  windProfile: windProfile.optional(),
  temperature: quantity("temperature", {
    description: "Outside air temperature at the place of take-off.",
    exclusiveMinimum: 0,
  }).optional(),
  temperatureOffset: quantity("temperatureDifference", {
    description: "Air temperature minus that of the standard atmosphere, at every height.",
  }).optional(),
  relativeHumidity: quantity("dimensionless", { description: "Relative humidity; dry when absent.", minimum: 0, maximum: 1 }).optional(),
});

const loading = z.strictObject({
  blocks: z.int().min(1).describe("Battery blocks on board."),
  payload: z.string().min(1).describe("Payload record of the aircraft on board at take-off.").optional(),
  payloadMass: quantity("mass", {
    description: "Payload mass at take-off, instead of a record: no power, no drag.",
    minimum: 0,
  }).optional(),
});

const legSettings = {
  airspeed: airspeed.optional(),
  speedRule: speedRule.optional(),
  height: height.optional(),
  heightDatum: heightDatum.optional(),
  geoidUndulation: geoidUndulation.optional(),
};

const cruise = z.strictObject({ ...legSettings, height }).describe("How every leg is flown unless the leg says otherwise.");

const leg = z.strictObject({
  leg: z.int().min(1).describe("Number of the leg; the first one leaves the first waypoint."),
  ...legSettings,
});

const task = z.strictObject({
  at: z
    .union([z.int().min(1), z.string().min(1)])
    .describe("Waypoint by number, counted from 1, or by the name of a point of the route file that lies on it."),
  hover: quantity("time", { description: "Hover here for this long, nose into the wind.", minimum: 0 }).optional(),
  land: quantity("time", { description: "Land and stay on the ground for this long, then take off again.", minimum: 0 }).optional(),
  height: quantity("length", { description: "Height of the hover; the height of arrival when absent." }).optional(),
  heightDatum: heightDatum.optional(),
  geoidUndulation: geoidUndulation.optional(),
  deliver: z.string().min(1).describe("Payload record that leaves the aircraft at the end of this task.").optional(),
  pickUp: z.string().min(1).describe("Payload record that is taken on board at the end of this task.").optional(),
});

const reserve = z.strictObject({
  minimumStateOfCharge: quantity("dimensionless", {
    description: "State of charge that must be left at landing.",
    minimum: 0,
    maximum: 1,
  }).optional(),
  hoverTime: quantity("time", {
    description: "Hover that must still be possible above that, at the place of landing.",
    minimum: 0,
  }).optional(),
});

const fields = z.strictObject({
  format: z.literal(1).describe("Version of this document's format."),
  title: z.string().min(1).describe("What the flight is for."),
  aircraft: z
    .string()
    .min(1)
    .meta({ description: "Path of the aircraft file; the project's first when absent.", reference: "aircraft" })
    .optional(),
  route: z.strictObject({
    file: z.string().min(1).meta({ description: "Path of the GeoJSON file.", reference: "geojson" }),
    feature: z.string().min(1).describe("Name of the line to fly along."),
  }),
  terrain: z.string().min(1).meta({ description: "Path of the elevation raster under the route.", reference: "raster" }).optional(),
  evenGround: quantity("length", { description: "Instead of a raster: ground at this one elevation above mean sea level." }).optional(),
  loading,
  weather,
  cruise,
  legs: z.array(leg).describe("Legs that differ from cruise.").optional(),
  tasks: z.array(task).describe("What is done at waypoints, in order.").optional(),
  climbRate: quantity("speed", {
    description: "Rate of climb, vertical and along the track; the aircraft's limit when absent.",
    exclusiveMinimum: 0,
  }).optional(),
  descentRate: quantity("speed", { description: "Rate of descent; the aircraft's limit when absent.", exclusiveMinimum: 0 }).optional(),
  acceleration: quantity("acceleration", {
    description: "Change of ground speed when starting and stopping; 0.5 m/s2 when absent (common practice).",
    exclusiveMinimum: 0,
  }).optional(),
  mode: z
    .enum(["cheaper", "clutch-closed", "clutch-open"])
    .describe("Rotor mode of the legs; whichever needs less power when absent.")
    .optional(),
  reserve: reserve.optional().describe("What must be left; 20 % state of charge and no hover when absent (common practice)."),
});

type Fields = z.infer<typeof fields>;
type Path = (string | number)[];

/** What is asked of a flight: where, with what, in which weather, and what must be left at the end. SI after reading. */
export const missionDefinition = fields.superRefine((mission, context) => {
  const refuse = (path: Path, message: string) => context.addIssue({ code: "custom", path, message });
  for (const [path, message] of contradictions(mission)) refuse(path, message);
});

export type MissionDefinition = Fields;
export type TaskDefinition = z.infer<typeof task>;
export type HeightDatum = z.infer<typeof heightDatum>;

/** Everything that cannot hold at once, with the place to mend. */
function contradictions(mission: Fields): readonly (readonly [Path, string])[] {
  const found: (readonly [Path, string])[] = [];
  const { weather, loading, cruise } = mission;
  if (weather.temperature !== undefined && weather.temperatureOffset !== undefined) {
    found.push([["weather", "temperatureOffset"], "give temperature or temperatureOffset, not both"]);
  }
  if (loading.payload !== undefined && loading.payloadMass !== undefined) {
    found.push([["loading", "payloadMass"], "give payload (a record) or payloadMass, not both"]);
  }
  if (mission.terrain !== undefined && mission.evenGround !== undefined) {
    found.push([["evenGround"], "give terrain (a raster) or evenGround, not both"]);
  }
  if (cruise.airspeed === undefined && cruise.speedRule === undefined) {
    found.push([["cruise"], "give airspeed or speedRule"]);
  }
  found.push(...settingContradictions(["cruise"], cruise));
  const numbers = new Set<number>();
  for (const [index, entry] of (mission.legs ?? []).entries()) {
    found.push(...settingContradictions(["legs", index], entry));
    if (numbers.has(entry.leg)) found.push([["legs", index, "leg"], `leg ${entry.leg} is already described above`]);
    numbers.add(entry.leg);
  }
  for (const [index, entry] of (mission.tasks ?? []).entries()) found.push(...taskContradictions(["tasks", index], entry));
  return found;
}

interface HeightSettings {
  readonly height?: number | undefined;
  readonly heightDatum?: HeightDatum | undefined;
  readonly geoidUndulation?: number | undefined;
}

function settingContradictions(
  path: Path,
  settings: HeightSettings & { readonly airspeed?: number | undefined; readonly speedRule?: string | undefined },
): readonly (readonly [Path, string])[] {
  const found: (readonly [Path, string])[] = [];
  if (settings.airspeed !== undefined && settings.speedRule !== undefined) {
    found.push([[...path, "speedRule"], "give airspeed or speedRule, not both"]);
  }
  return [...found, ...datumContradictions(path, settings)];
}

function datumContradictions(path: Path, settings: HeightSettings): readonly (readonly [Path, string])[] {
  const found: (readonly [Path, string])[] = [];
  if (settings.heightDatum === "ellipsoid" && settings.geoidUndulation === undefined) {
    found.push([[...path, "heightDatum"], "heights above the ellipsoid need geoidUndulation beside them"]);
  }
  if (settings.geoidUndulation !== undefined && settings.heightDatum !== "ellipsoid") {
    found.push([[...path, "geoidUndulation"], "geoidUndulation goes with heightDatum ellipsoid only"]);
  }
  if (settings.heightDatum !== undefined && settings.height === undefined) {
    found.push([[...path, "heightDatum"], "heightDatum needs the height that it describes beside it"]);
  }
  if (settings.heightDatum === "above-ground" && settings.height !== undefined && settings.height <= 0) {
    found.push([[...path, "height"], `a height above ground must be > 0 m, got ${settings.height} m`]);
  }
  return found;
}

function taskContradictions(path: Path, entry: TaskDefinition): readonly (readonly [Path, string])[] {
  const found: (readonly [Path, string])[] = [...datumContradictions(path, entry)];
  if (entry.hover === undefined && entry.land === undefined) found.push([path, "a task needs hover or land with a time"]);
  if (entry.hover !== undefined && entry.land !== undefined) found.push([[...path, "land"], "give hover or land in one task, not both"]);
  if (entry.land !== undefined && entry.height !== undefined) found.push([[...path, "height"], "a landing has no height"]);
  return found;
}
