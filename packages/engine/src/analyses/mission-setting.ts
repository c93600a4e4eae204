import { type AircraftDefinition, type Loading, recordLoading, takeoffMass } from "../aircraft/index.ts";
import { type AirState, atmosphereAt, standardTemperature } from "../environment/atmosphere/index.ts";
import { degreesOf } from "../environment/geodesy/index.ts";
import type { Wind } from "../environment/wind/index.ts";
import {
  type LegSamples,
  type MissionPlan,
  missionPlan,
  type OnBoard,
  type Route,
  type SpeedLimits,
  sampledRoute,
} from "../mission/index.ts";
import { commonReserve, type ModeRule, type ReservePolicy } from "../performance/index.ts";
import type { Problem, ProjectView } from "./contract.ts";
import { type Assumed, chosenAircraft, chosenLoading, isProblem, massProblem } from "./flight-conditions.ts";
import { type MissionDocuments, missionDocuments } from "./mission-documents.ts";
import type { MissionInputs } from "./mission-schema.ts";

/** A mission with everything decided but the flight itself. */
export interface MissionSetting {
  readonly documents: MissionDocuments;
  readonly aircraft: AircraftDefinition;
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
    assumed: [...documents.assumed, ...chosen.assumed, ...limits.assumed],
  };
}

type LoadingGiven = {
  readonly blocks?: number | undefined;
  readonly payload?: string | undefined;
  readonly payloadMass?: number | undefined;
};

/** The load at take-off: inputs replace the file's blocks and, as a whole, its payload. */
function takeoffLoading(
  aircraft: AircraftDefinition,
  file: LoadingGiven,
  inputs: LoadingGiven,
): { readonly loading: Loading; readonly onBoard: OnBoard } | Problem {
  const replaced = inputs.payload !== undefined || inputs.payloadMass !== undefined;
  const { payload, payloadMass } = replaced ? inputs : file;
  const nothing = payload === undefined && payloadMass === undefined;
  const chosen = chosenLoading(aircraft, { blocks: inputs.blocks ?? file.blocks, payload, payloadMass: nothing ? 0 : payloadMass });
  if (isProblem(chosen)) return chosen;
  const onBoard: OnBoard =
    payload !== undefined ? { kind: "record", name: payload } : nothing ? { kind: "nothing" } : { kind: "mass", mass: payloadMass ?? 0 };
  return { loading: chosen.loading, onBoard };
}

function loadingsOf(aircraft: AircraftDefinition, takeoff: Loading, onBoard: readonly OnBoard[]): readonly Loading[] | Problem {
  const loadings: Loading[] = [];
  for (const load of onBoard) {
    const record = load.kind === "record" ? aircraft.payloads.find((entry) => entry.name === load.name) : undefined;
    if (load.kind === "record" && record === undefined) {
      const known = aircraft.payloads.map((entry) => entry.name).join(", ");
      return { kind: "payload-unknown", message: `No payload record is called "${load.name}"; the aircraft file has ${known}.` };
    }
    const bare = { blocks: takeoff.blocks, payloadMass: load.kind === "mass" ? load.mass : 0, payloadPower: 0, payloadDragArea: 0 };
    const loading = record ? recordLoading(takeoff.blocks, record) : bare;
    const tooHeavy = massProblem(aircraft, takeoffMass(aircraft, loading));
    if (tooHeavy) return tooHeavy;
    loadings.push(loading);
  }
  return loadings;
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
  aircraft: AircraftDefinition,
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

function groundProblem(
  { mission, terrain: _ }: MissionDocuments,
  leg: number,
  {
    because,
    at,
    distance,
  }: {
    readonly because: "outside" | "hole";
    readonly at: { readonly latitude: number; readonly longitude: number };
    readonly distance: number;
  },
): Problem {
  const [longitude, latitude] = degreesOf(at);
  const place = `${Math.abs(latitude).toFixed(5)}° ${latitude < 0 ? "S" : "N"}, ${Math.abs(longitude).toFixed(5)}° ${longitude < 0 ? "W" : "E"}`;
  const where = `leg ${leg} of "${mission.route.feature}", ${(distance / 1000).toFixed(2)} km after its start, at ${place}`;
  return because === "outside"
    ? {
        kind: "route-outside-terrain",
        message: `The route leaves the elevation raster ${mission.terrain}: ${where}. Use a raster that covers the whole route, or move the waypoint.`,
        leg,
        latitude,
        longitude,
      }
    : {
        kind: "terrain-hole",
        message: `The elevation raster ${mission.terrain} has no value under the route: ${where}. Fill the hole or route around it.`,
        leg,
        latitude,
        longitude,
      };
}
