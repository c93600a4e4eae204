import { type Loading, takeoffMass } from "../../aircraft/index.ts";
import { degreesOf } from "../../environment/geodesy/index.ts";
import { type DegreeBounds, thinnedRelief } from "../../environment/terrain/index.ts";
import { flightLimits, flightStages, type OnBoard, reserveJudgement } from "../../mission/index.ts";
import { type Analysis, Cancelled, type Context, type Outcome, type ProjectView, type Warning } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { trimMethod, trimWarnings } from "../inputs/trim-method.ts";
import { missionAnswer, missionLimits } from "./answer.ts";
import { missionNeeds } from "./documents.ts";
import { missionFigures } from "./figures.ts";
import { type MissionFlight, missionFlight } from "./flight.ts";
import { limitsOutput, mapOutput, rowOutput, stageOutput, summaryOutput, verdictOf } from "./outputs.ts";
import { type MissionInputs, type MissionOutputs, missionInputs, missionOutputs } from "./schema.ts";
import { type MissionSetting, missionSetting } from "./setting.ts";

function run(project: ProjectView, inputs: MissionInputs, context: Context<MissionOutputs>): Outcome<MissionOutputs> {
  const setting = missionSetting(project, inputs);
  if (isProblem(setting)) return { problem: setting };
  const flown = missionFlight(setting, inputs, (done, total, doing) => {
    if (context.cancelled()) throw new Cancelled();
    context.progress(done, total, doing);
  });
  if (isProblem(flown)) return { problem: flown };
  return { outputs: outputsOf(setting, flown), assumed: setting.assumed, warnings: warningsOf(setting, flown) };
}

function outputsOf(setting: MissionSetting, flown: MissionFlight): MissionOutputs {
  const { aircraft, reserve, route, documents } = setting;
  const { flight, pack } = flown;
  const minimum = reserve.minimumStateOfCharge;
  const judgement = reserveJudgement(flight, reserve, pack, flown.finalHoverPower);
  const found = flightLimits(flight, {
    trimLimits: flown.source.limits,
    cutoffVoltage: pack.cutoffVoltage,
    altitudeMaximum: aircraft.limits.altitudeMaximum,
    airspeedOfLeg: (leg) => flown.airspeeds[leg - 1] as number,
    temperature: { ...airTemperatures(setting), at: (height) => setting.air(height).temperature },
  });
  const verdict = verdictOf(flight.stop, judgement, minimum, found);
  const bounds = reliefBounds(setting);
  const relief = thinnedRelief(documents.terrain, bounds, reliefSize(bounds));
  return {
    title: documents.mission.title,
    demo: documents.demo,
    rows: flight.rows.map(rowOutput),
    summary: summaryOutput(flight, judgement, verdict),
    stages: flightStages(flight).map(stageOutput),
    conditions: conditionsOf(setting, flown),
    limits: limitsOutput(found, flight, judgement, minimum, verdict),
    map: mapOutput(route, relief),
  };
}

/** Air that the aircraft and every payload record on board permit [K]. */
function airTemperatures({ aircraft, plan }: MissionSetting): { readonly minimum: number; readonly maximum: number } {
  const names = plan.onBoard.flatMap((load) => (load.kind === "record" ? [load.name] : []));
  const records = aircraft.payloads.filter((record) => names.includes(record.name));
  return {
    minimum: Math.max(aircraft.limits.airTemperatureMinimum, ...records.flatMap((record) => record.temperatureMinimum ?? [])),
    maximum: Math.min(aircraft.limits.airTemperatureMaximum, ...records.flatMap((record) => record.temperatureMaximum ?? [])),
  };
}

function conditionsOf(setting: MissionSetting, flown: MissionFlight): MissionOutputs["conditions"] {
  const { aircraft, loadings, plan, wind, reserve, takeoffElevation } = setting;
  const takeoff = loadings[0] as Loading;
  return {
    takeoffMass: takeoffMass(aircraft, takeoff),
    blocks: takeoff.blocks,
    payload: loadInWords(plan.onBoard[0] as OnBoard),
    windSpeed: wind.speed,
    windFrom: wind.fromDirection,
    windProfile: wind.profile.kind,
    takeoffTemperature: setting.air(takeoffElevation).temperature,
    takeoffElevation,
    legAirspeeds: [...flown.airspeeds],
    minimumStateOfCharge: reserve.minimumStateOfCharge,
    reserveHoverTime: reserve.hoverTime,
    trimmedFlights: flown.prepared.table.nodes,
  };
}

function loadInWords(load: OnBoard): string {
  if (load.kind === "record") return load.name;
  return load.kind === "mass" ? `${load.mass} kg` : "nothing";
}

/** Cells of the relief, about; ground shown around the route as a share of its extent, and at least this [°]; least ratio of sides. */
const reliefCells = 9000;
const reliefMargin = 0.15;
const leastMargin = 0.01;
const leastAspect = 0.5;

/** Ground to show: the route with a margin, the shorter side no less than half the longer one on the ground. */
function reliefBounds({ route }: MissionSetting): DegreeBounds {
  const places = route.waypoints.map(({ position }) => degreesOf(position));
  const latitudes = places.map(([, latitude]) => latitude);
  const longitudes = places.map(([longitude]) => longitude);
  const narrowing = Math.cos((((Math.min(...latitudes) + Math.max(...latitudes)) / 2) * Math.PI) / 180);
  const extent = (values: readonly number[]) => {
    const low = Math.min(...values);
    const high = Math.max(...values);
    return { middle: (low + high) / 2, half: (high - low) / 2 + Math.max(leastMargin, (high - low) * reliefMargin) };
  };
  const east = extent(longitudes);
  const north = extent(latitudes);
  const halfWidth = Math.max(east.half, (north.half * leastAspect) / narrowing);
  const halfHeight = Math.max(north.half, east.half * narrowing * leastAspect);
  return {
    west: east.middle - halfWidth,
    east: east.middle + halfWidth,
    south: north.middle - halfHeight,
    north: north.middle + halfHeight,
  };
}

/** Square cells on the ground, about as many as a picture can use. */
function reliefSize({ west, east, south, north }: DegreeBounds): { readonly width: number; readonly height: number } {
  const aspect = ((east - west) * Math.cos((((south + north) / 2) * Math.PI) / 180)) / (north - south);
  const height = Math.max(2, Math.round(Math.sqrt(reliefCells / aspect)));
  return { width: Math.max(2, Math.round(height * aspect)), height };
}

/** The surface layer that wind profiles describe [m] (common practice). */
const surfaceLayer = 100;

function warningsOf(setting: MissionSetting, { flight }: MissionFlight): readonly Warning[] {
  const warnings: Warning[] = [...trimWarnings];
  if (setting.route.hasHeights) {
    warnings.push({
      kind: "route-heights-unused",
      grade: "note",
      message: "The route file gives heights; the mission file's heights are flown.",
    });
  }
  const { profile } = setting.wind;
  const highest = flight.rows.reduce((most, { state }) => Math.max(most, state.height - state.ground), 0);
  if (profile.kind !== "uniform" && highest > surfaceLayer) {
    warnings.push({
      kind: "wind-profile-extrapolated",
      grade: "care",
      message: `The wind profile is used up to ${highest.toFixed(0)} m above ground; it describes the lowest ${surfaceLayer} m over even ground (common practice).`,
    });
  }
  return warnings;
}

/** A mission flown over terrain and in wind. */
export const mission: Analysis<MissionInputs, MissionOutputs> = {
  name: "mission",
  question: "Can it fly this job today?",
  inputs: missionInputs,
  outputs: missionOutputs,
  method: {
    summary:
      `${trimMethod.summary} The flight is a sequence of steady states: vertical climb, legs at commanded airspeed on WGS 84 geodesics with the wind triangle, ` +
      "hovers into the wind, vertical descent. Changes of speed count as climbs by the energy-rate method (common practice); turns take neither time nor power. " +
      "Heights above ground are kept everywhere, climbing before high ground within the rates of climb and descent. Power is interpolated between exact trims; " +
      "the pack is discharged at constant power over each step.",
    sources: [...trimMethod.sources, "geographiclib-geodesic", "proj4js", "pvlib-windspeed", "wflo-windspeed-log", "rfc-7946"],
    checks: trimMethod.checks,
  },
  example: {},
  needs: missionNeeds,
  run,
  figures: missionFigures,
  answer: missionAnswer,
  limits: missionLimits,
};
