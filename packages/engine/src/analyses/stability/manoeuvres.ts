import type { Airframe } from "../../airframe/index.ts";
import {
  bodyState,
  controlledFlight,
  controlStep,
  discreteGust,
  eulerAngles,
  extremesOf,
  type FlightSample,
  type FlightTrace,
  goalOf,
  pitchExcursion,
  recoveryTime,
} from "../../motion/index.ts";
import type { StudiedFlight } from "./from-aircraft.ts";
import type { ManoeuvreOutput } from "./output-schema.ts";
import type { StabilityInputs } from "./schema.ts";

/** When it begins: what stands before shows that the flight was steady [s]. */
const begin = 1;
const recordEvery = 10;
/** Slowest stream in which a gust is flown through: in a hover it drifts past [m/s]. */
const slowestStream = 5;

/** Push-over, pull-up and gust from a trimmed flight, under the reference controller. */
export function flownManoeuvres(
  airframe: Airframe,
  { trimmed, condition }: StudiedFlight,
  asked: StabilityInputs["manoeuvres"],
): readonly ManoeuvreOutput[] {
  if (!trimmed || condition.mode === null) return [];
  const { mode, airspeed } = condition;
  const { duration } = asked;
  const excursion = (amplitude: number): FlightTrace => {
    const { flight, simulation, substeps } = controlledFlight(airframe, trimmed);
    const wanted = pitchExcursion(eulerAngles(flight.state, bodyState.quaternion), amplitude, begin, asked.pitchTime);
    return simulation.run({ duration, step: controlStep, substeps, wanted, recordEvery });
  };
  const gust = (): FlightTrace => {
    const { flight, simulation, substeps } = controlledFlight(airframe, trimmed);
    const speed = Math.max(airspeed, slowestStream);
    flight.dynamics.wind = discreteGust({ peak: [0, 0, -asked.gust], gradientDistance: asked.gradientDistance, speed, start: begin });
    return simulation.run({ duration, step: controlStep, substeps, recordEvery });
  };
  return [
    { name: "push-over", trace: excursion(-asked.pitch) },
    { name: "pull-up", trace: excursion(asked.pitch) },
    { name: "gust", trace: gust() },
  ].map(({ name, trace }) => manoeuvreOutput(name, mode, airspeed, trace));
}

function manoeuvreOutput(name: string, mode: ManoeuvreOutput["mode"], airspeed: number, trace: FlightTrace): ManoeuvreOutput {
  const { samples } = trace;
  const load = extremesOf(samples, ({ loadFactor }) => loadFactor);
  const rotor = samples[0]?.rotorRates[0];
  const slowest = rotor === undefined ? null : extremesOf(samples, ({ rotorRates: [rate] }) => rate ?? 0).lowest;
  const last = samples[samples.length - 1];
  return {
    name,
    mode,
    airspeed,
    lowestRotorRate: slowest,
    lowestRotorShare: slowest === null || rotor === undefined ? null : slowest / rotor,
    lowestLoadFactor: load.lowest,
    highestLoadFactor: load.highest,
    timeToRecover: trace.stopped === undefined ? recoveryTime(samples, begin, goalOf(samples[0] as FlightSample)) : null,
    heightChange: last ? last.place[2] : 0,
    stopped: trace.stopped ?? null,
    energyGap: trace.energyGap,
    times: samples.map(({ time }) => time),
    pitch: samples.map(({ attitude }) => attitude.pitch),
    loadFactor: samples.map(({ loadFactor }) => loadFactor),
    rotorRate: samples.map(({ rotorRates: [rate] }) => rate ?? 0),
    height: samples.map(({ place }) => place[2]),
  };
}
