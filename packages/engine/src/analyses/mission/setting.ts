import type { Loading, ReducedAircraft } from "../../aircraft/index.ts";
import { type AirState, atmosphereAt, standardTemperature } from "../../environment/atmosphere/index.ts";
import type { Wind } from "../../environment/wind/index.ts";
import { type LegSamples, type MissionPlan, missionPlan, type Route, type SpeedLimits, sampledRoute } from "../../mission/index.ts";
import { commonReserve, type ModeRule, type ReservePolicy } from "../../performance/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { type Assumed, chosenAircraft, isProblem } from "../inputs/flight-conditions.ts";
import { groundProblem, type MissionDocuments, missionDocuments } from "./documents.ts";
import { loadingsOf, takeoffLoading } from "./loading.ts";
import type { MissionInputs } from "./schema.ts";

/** A mission with everything decided but the flight itself. */
export interface MissionSetting {
  readonly documents: MissionDocuments;
  readonly aircraft: ReducedAircraft;
  readonly plan: MissionPlan;
  readonly route: Route;
  readonly samples: readonly LegSamples[];
  /** One for each entry of `plan.onBoard`. */
  readonly loadings: readonly Loading[];
  readonly wind: Wind;
  /** Air at a height above mean sea level [m]. */
  readonly air: (height: number) => AirState;
  readonly takeoffElevation: number;
  readonly limits: SpeedLimits;
  readonly modes: ModeRule;
  readonly reserve: ReservePolicy;
  readonly assumed: Assumed;
}

/** Change of ground speed when a mission file says nothing (common practice: gentle) [m/s²]. */
const commonAcceleration = 0.5;

/** Brings files and inputs together; inputs come before the file. */
export function missionSetting(project: ProjectView, inputs: MissionInputs): MissionSetting | Problem {
  const documents = missionDocuments(project, inputs);
  if (isProblem(documents)) return documents;
  const { mission, route } = documents;
  const chosen = chosenAircraft(project, documents.aircraftPath);
  if (isProblem(chosen)) return chosen;
  const { aircraft } = chosen;
  const takeoff = takeoffLoading(aircraft, mission.loading, inputs.loading);
  if (isProblem(takeoff)) return takeoff;
  const planning = missionPlan(mission, route, takeoff.onBoard);
  if (planning.kind === "refused") {
    const lines = planning.slips.map((slip) => `${documents.missionPath}#${slip.pointer}: ${slip.message}`);
    return { kind: "mission-impossible", message: lines.join("; "), slips: planning.slips };
  }
  const { plan } = planning;
  const loadings = loadingsOf(aircraft, takeoff.loading, plan.onBoard);
  if (isProblem(loadings)) return loadings;
  const sampled = sampledRoute(route, documents.terrain);
  if (sampled.kind === "no-ground") return groundProblem(documents, sampled.leg, sampled.sampling);
  const takeoffElevation = sampled.samples[0]?.ground[0] as number;
  const offset = temperatureOffset(mission.weather, inputs, takeoffElevation);
  if (isProblem(offset)) return offset;
  const limits = rateLimits(documents, aircraft);
  if (isProblem(limits)) return limits;
  const relativeHumidity = mission.weather.relativeHumidity ?? 0;
  return {
    documents,
    aircraft,
    plan,
    route,
    samples: sampled.samples,
    loadings,
    wind: windOf(mission.weather, inputs),
    air: (altitude) => atmosphereAt({ altitude, temperatureOffset: offset.kelvin, relativeHumidity }),
    takeoffElevation,
    limits: limits.limits,
    modes: mission.mode ?? "cheaper",
    reserve: {
      minimumStateOfCharge:
        inputs.reserve.minimumStateOfCharge ?? mission.reserve?.minimumStateOfCharge ?? commonReserve.minimumStateOfCharge,
      hoverTime: inputs.reserve.hoverTime ?? mission.reserve?.hoverTime ?? commonReserve.hoverTime,
    },
    assumed: [...documents.assumed, ...chosen.assumed, ...limits.assumed, ...fileAssumptions(documents, inputs)],
  };
}

/** What the mission file leaves open and nobody gave: each with why this was taken. */
function fileAssumptions({ mission, missionPath }: MissionDocuments, inputs: MissionInputs): Assumed {
  const open: { path: string; value: unknown; because: string }[] = [];
  const assume = (pointer: string, stated: unknown, value: unknown, because: string) => {
    if (stated === undefined) open.push({ path: `${missionPath}#${pointer}`, value, because });
  };
  const { minimumStateOfCharge, hoverTime } = commonReserve;
  assume(
    "/reserve/minimumStateOfCharge",
    inputs.reserve.minimumStateOfCharge ?? mission.reserve?.minimumStateOfCharge,
    minimumStateOfCharge,
    "common practice",
  );
  assume("/reserve/hoverTime", inputs.reserve.hoverTime ?? mission.reserve?.hoverTime, hoverTime, "common practice");
  assume("/mode", mission.mode, "cheaper", "the mission file names no rotor mode");
  assume("/weather/windProfile", mission.weather.windProfile, "uniform", "the mission file chooses no profile");
  assume("/weather/relativeHumidity", mission.weather.relativeHumidity, 0, "dry air");
  const warmth = [inputs.temperature, inputs.temperatureOffset, mission.weather.temperature, mission.weather.temperatureOffset];
  assume(
    "/weather/temperatureOffset",
    warmth.find((value) => value !== undefined),
    0,
    "the standard atmosphere",
  );
  return open;
}

function windOf(weather: MissionDocuments["mission"]["weather"], inputs: MissionInputs): Wind {
  return {
    speed: inputs.windSpeed ?? weather.wind.speed,
    fromDirection: inputs.windFrom ?? weather.wind.from,
    profile: weather.windProfile ?? { kind: "uniform" },
  };
}

/** Offset from the standard atmosphere [K]: given, or from the temperature at the place of take-off. */
function temperatureOffset(
  weather: MissionDocuments["mission"]["weather"],
  inputs: MissionInputs,
  takeoffElevation: number,
): { readonly kelvin: number } | Problem {
  if (inputs.temperature !== undefined && inputs.temperatureOffset !== undefined) {
    return {
      kind: "contradicting-inputs",
      message: `temperature (${inputs.temperature} K) and temperatureOffset (${inputs.temperatureOffset} K) both say how warm the air is; give one of them.`,
      inputs: ["temperature", "temperatureOffset"],
    };
  }
  const given = inputs.temperature !== undefined || inputs.temperatureOffset !== undefined ? inputs : weather;
  if (given.temperature !== undefined) return { kelvin: given.temperature - standardTemperature(takeoffElevation) };
  return { kelvin: given.temperatureOffset ?? 0 };
}

function rateLimits(
  { mission, missionPath }: MissionDocuments,
  aircraft: ReducedAircraft,
): { readonly limits: SpeedLimits; readonly assumed: Assumed } | Problem {
  const assumed: { path: string; value: unknown; because: string }[] = [];
  for (const rate of ["climbRate", "descentRate"] as const) {
    const asked = mission[rate];
    const permitted = aircraft.limits[rate];
    if (asked === undefined) assumed.push({ path: `${missionPath}#/${rate}`, value: permitted, because: "the aircraft's limit" });
    else if (asked > permitted + 1e-9) {
      return {
        kind: "rate-too-fast",
        message: `${missionPath}#/${rate}: ${asked} m/s is faster than the aircraft's limit of ${permitted} m/s.`,
      };
    }
  }
  if (mission.acceleration === undefined) {
    assumed.push({ path: `${missionPath}#/acceleration`, value: commonAcceleration, because: "common practice" });
  }
  return {
    limits: {
      climbRate: mission.climbRate ?? aircraft.limits.climbRate,
      descentRate: mission.descentRate ?? aircraft.limits.descentRate,
      acceleration: mission.acceleration ?? commonAcceleration,
    },
    assumed,
  };
}
