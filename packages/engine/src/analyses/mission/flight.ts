import { hotelPower, type Loading } from "../../aircraft/index.ts";
import { type BatteryPack, batteryPack } from "../../drivetrain/battery/index.ts";
import {
  aircraftPower,
  type DayConditions,
  dayConditions,
  type FlightPath,
  type FlownFlight,
  flightPath,
  flyMission,
  heightAbove,
  type LegSamples,
  type PowerSource,
  type PreparedFlight,
  preparedFlight,
  sampledLegs,
} from "../../mission/index.ts";
import { loadingPerformance, reducedFlyer } from "../../performance/index.ts";
import type { Problem } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import type { MissionInputs } from "./schema.ts";
import type { MissionSetting } from "./setting.ts";

/** Called often during long work; throws when nobody wants the result any more. */
export type Progress = (done: number, total: number, doing: string) => void;

/** A flight with everything needed to judge it. */
export interface MissionFlight {
  readonly flight: FlownFlight;
  readonly path: FlightPath;
  readonly prepared: PreparedFlight;
  readonly source: PowerSource;
  readonly pack: BatteryPack;
  /** Commanded airspeed of each leg [m/s]. */
  readonly airspeeds: readonly number[];
  /** Power of a hover where the flight ends [W]; undefined when there is none. */
  readonly finalHoverPower: number | undefined;
}

/** Finds the speeds that are asked for by their meaning, prices the flight and flies it. */
export function missionFlight(setting: MissionSetting, inputs: MissionInputs, progress: Progress): MissionFlight | Problem {
  const { aircraft, loadings, air, wind, limits, modes, plan, route, samples } = setting;
  const { controls, losses, lightsOn } = inputs;
  const pack = batteryPack(
    aircraft.battery.cell,
    { ...aircraft.battery, blocks: (loadings[0] as Loading).blocks },
    { temperature: inputs.cellTemperature, capacityFactor: inputs.cellCapacityFactor, resistanceFactor: inputs.cellResistanceFactor },
  );
  const conditionsAt = dayConditions({ aircraft, loadings, air, controls, losses, lightsOn });
  const airspeeds = legAirspeeds(setting, conditionsAt, pack, progress);
  if (isProblem(airspeeds)) return airspeeds;
  const path = flightPath({ route, plan, legs: sampledLegs(plan, samples, airspeeds), wind, limits });
  const source = aircraftPower(conditionsAt);
  const prepared = preparedFlight({
    path,
    wind,
    limits,
    modes,
    step: inputs.step,
    altitudeMaximum: aircraft.limits.altitudeMaximum,
    source,
    progress: (done, total) => progress(done, total, "flights trimmed"),
  });
  const flight = flyMission({
    path,
    steps: prepared.steps,
    table: prepared.table,
    modes,
    pack,
    stateOfCharge: 1,
    groundPower: (loading) => hotelPower(aircraft, loadings[loading] as Loading, lightsOn),
  });
  const hover = prepared.table.at(prepared.finalHover.query, prepared.finalHover.choice);
  return { flight, path, prepared, source, pack, airspeeds, finalHoverPower: hover.kind === "flies" ? hover.electricPower : undefined };
}

/** Airspeed of each leg: as commanded, or found once for each loading at the mean height of the legs that ask. */
function legAirspeeds(
  setting: MissionSetting,
  conditionsAt: DayConditions,
  pack: BatteryPack,
  progress: Progress,
): readonly number[] | Problem {
  const { plan, samples, reserve } = setting;
  const asking = plan.legs.filter((leg) => leg.speed.kind === "rule");
  const meanHeight =
    asking.reduce((sum, leg) => sum + heightAbove(leg.height, meanGround(samples[leg.number - 1] as LegSamples)), 0) /
    Math.max(1, asking.length);
  const found = new Map<number, { readonly "best-range": number | undefined; readonly "minimum-power": number | undefined }>();
  for (const { loading } of asking) {
    if (found.has(loading)) continue;
    const { conditions, rotor } = conditionsAt(loading, meanHeight);
    const hooks = { progress: () => progress(0, 1, "speeds"), cancelled: () => progress(0, 1, "speeds") };
    const performance = loadingPerformance(reducedFlyer(conditions, rotor), pack, reserve, hooks);
    found.set(loading, { "best-range": performance.travel?.airspeed, "minimum-power": performance.cruise?.airspeed });
  }
  const airspeeds: number[] = [];
  for (const leg of plan.legs) {
    if (leg.speed.kind === "airspeed") {
      airspeeds.push(leg.speed.airspeed);
      continue;
    }
    const airspeed = found.get(leg.loading)?.[leg.speed.rule];
    if (airspeed === undefined) {
      return {
        kind: "no-level-flight",
        message: `Leg ${leg.number} (${leg.name}) asks for the speed of ${leg.speed.rule}, but level flight is not possible with this loading.`,
      };
    }
    airspeeds.push(airspeed);
  }
  return airspeeds;
}

function meanGround(samples: LegSamples): number {
  return samples.ground.reduce((sum, elevation) => sum + elevation, 0) / samples.ground.length;
}
