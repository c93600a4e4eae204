import { degreesOf } from "../../environment/geodesy/index.ts";
import type { Relief } from "../../environment/terrain/index.ts";
import type { FlightLimit, FlightRow, FlightStage, FlightStop, FlownFlight, ReserveJudgement, Route } from "../../mission/index.ts";
import type { MissionOutputs, MissionRow, MissionStage } from "./schema.ts";

export function rowOutput({ state, phase, leg, stateOfCharge, step }: FlightRow): MissionRow {
  return {
    time: state.time,
    latitude: state.latitude,
    longitude: state.longitude,
    distance: state.distance,
    heightAboveSea: state.height,
    heightAboveGround: Math.max(0, state.height - state.ground),
    airspeed: state.airspeed,
    groundspeed: state.groundSpeed,
    climbRate: state.climbRate,
    heading: state.heading,
    headwind: state.headwind,
    phase,
    leg: leg ?? null,
    mode: step?.mode ?? null,
    power: step?.power ?? null,
    rotorShaftPower: step?.rotorShaftPower ?? null,
    stallMargin: step?.stallMargin ?? null,
    voltage: step?.voltage ?? null,
    current: step?.current ?? null,
    stateOfCharge,
  };
}

export function stageOutput({ meanGroundSpeed, ...stage }: FlightStage): MissionStage {
  return { ...stage, meanGroundspeed: meanGroundSpeed };
}

/** What keeps a flight from counting as feasible, beside a stop: the reserve, or a limit used beyond its whole. */
export interface Verdict {
  readonly limit: string | null;
  readonly reason: string | null;
}

export function verdictOf(
  stop: FlightStop | undefined,
  judgement: ReserveJudgement,
  minimum: number,
  limits: readonly FlightLimit[],
): Verdict {
  if (stop) return { limit: stop.limit.name, reason: stop.message };
  const beyond = limits.find((limit) => limit.family === "rule" && limit.share > 1 + 1e-9);
  if (beyond) return { limit: beyond.name, reason: `${beyond.name} outside what the aircraft permits: ${beyond.where}` };
  if (judgement.kept) return { limit: null, reason: null };
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  const landing = judgement.landingStateOfCharge ?? 0;
  const reason =
    landing < minimum
      ? `it lands with ${percent(landing)} left, the policy asks for ${percent(minimum)}`
      : `the hover that the policy asks for would leave ${judgement.afterHover === undefined ? "nothing" : percent(judgement.afterHover)}, it asks for ${percent(minimum)}`;
  return { limit: "reserve", reason };
}

export function summaryOutput(flight: FlownFlight, judgement: ReserveJudgement, verdict: Verdict): MissionOutputs["summary"] {
  const last = flight.rows.at(-1) as FlightRow;
  const onLegs = flight.rows.filter((row) => row.leg !== undefined);
  const over = (value: (row: FlightRow) => number, choose: (...values: number[]) => number) =>
    onLegs.length === 0 ? null : onLegs.reduce((best, row) => choose(best, value(row)), value(onLegs[0] as FlightRow));
  return {
    feasible: verdict.limit === null,
    ...verdict,
    completed: flight.stop === undefined,
    energyUsed: flight.energyUsed,
    landingStateOfCharge: judgement.landingStateOfCharge ?? null,
    reserveMargin: judgement.reserveMargin ?? null,
    stateOfChargeAfterReserveHover: judgement.afterHover ?? null,
    duration: last.state.time,
    distance: last.state.distance,
    reserveReachedAt: judgement.reachedAt ?? null,
    lowestHeightAboveGround: over(({ state }) => Math.max(0, state.height - state.ground), Math.min),
    highestAltitude: flight.rows.reduce((most, { state }) => Math.max(most, state.height), Number.NEGATIVE_INFINITY),
    strongestHeadwind: over(({ state }) => state.headwind, Math.max),
  };
}

/** The reserve as a limit: the usable charge that the flight takes. A stop is the limit that binds. */
export function limitsOutput(
  found: readonly FlightLimit[],
  flight: FlownFlight,
  judgement: ReserveJudgement,
  minimum: number,
  verdict: Verdict,
): MissionOutputs["limits"] {
  const last = flight.rows.at(-1) as FlightRow;
  const reserve = {
    name: "reserve",
    family: "rule",
    share: minimum < 1 ? (1 - (judgement.landingStateOfCharge ?? last.stateOfCharge)) / (1 - minimum) : 1,
    side: "lower",
    where: judgement.landingStateOfCharge === undefined ? "when it stops" : "at landing",
  } as const;
  const all = [reserve, ...found];
  const { stop } = flight;
  const listed = stop === undefined || all.some((limit) => limit.name === stop.limit.name);
  const stopped = stop && !listed ? [{ ...stop.limit, share: 1, side: "upper" as const, where: stop.message }] : [];
  return [...stopped, ...all]
    .map((limit) => ({ ...limit, binding: limit.name === verdict.limit }))
    .map((limit) => (stop && limit.name === stop.limit.name ? { ...limit, share: Math.max(1, limit.share), where: stop.message } : limit))
    .sort((first, second) => second.share - first.share);
}

export function mapOutput(route: Route, relief: Relief | undefined): MissionOutputs["map"] {
  return {
    waypoints: route.waypoints.map(({ name, number, position }) => {
      const [longitude, latitude] = degreesOf(position);
      return { name: name ?? `waypoint ${number}`, longitude, latitude };
    }),
    relief: relief ? { ...relief, elevation: [...relief.elevation] } : null,
  };
}
