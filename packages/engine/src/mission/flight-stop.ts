import { standardAltitudeRange } from "../environment/atmosphere/index.ts";
import type { FlightPath } from "./flight-path.ts";
import type { FlightState, FlightStep } from "./flight-state.ts";
import type { NamedLimit } from "./power-source.ts";

/** Why a flight does not reach its end. */
export interface FlightStop {
  readonly limit: NamedLimit;
  readonly message: string;
  /** [s] */
  readonly time: number;
}

/** Numerical width of the ground [m]: landings end on it. */
const groundTolerance = 0.01;

/** What forbids a step whatever the aircraft can do: the ground, or the permitted altitude [m]. */
export function barrier(step: FlightStep, altitudeMaximum: number): FlightStop | undefined {
  const { height, ground } = step.end;
  if (height < ground - groundTolerance) {
    const message = `the ground rises to ${ground.toFixed(0)} m above sea where ${height.toFixed(0)} m are flown`;
    return stoppedAt(step, { name: "ground contact", family: "rule" }, message);
  }
  if (height > altitudeMaximum) {
    const message = `${height.toFixed(0)} m above sea are needed, ${altitudeMaximum.toFixed(0)} m are permitted`;
    return stoppedAt(step, { name: "altitude", family: "rule" }, message);
  }
  if (height < standardAltitudeRange.lowest) {
    const message = `${height.toFixed(0)} m is below the range of the standard atmosphere, ${standardAltitudeRange.lowest} m`;
    return stoppedAt(step, { name: "altitude", family: "rule" }, message);
  }
  return undefined;
}

export function tooLong(step: FlightStep): FlightStop {
  return stoppedAt(step, { name: "duration", family: "rule" }, `the flight takes longer than ${(step.end.time / 3600).toFixed(1)} h`);
}

export function noEquilibrium(step: FlightStep, limit: NamedLimit): FlightStop {
  const { airspeed, climbRate } = step.start;
  const climbing =
    Math.abs(climbRate) < 0.05 ? "level" : `${climbRate > 0 ? "climbing" : "descending"} at ${Math.abs(climbRate).toFixed(1)} m/s`;
  return stoppedAt(step, limit, `no equilibrium at ${airspeed.toFixed(1)} m/s ${climbing}: ${limit.name}`);
}

export function notDeliverable(
  step: FlightStep,
  power: number,
  drawn: { readonly largestPower: number; readonly because: string },
): FlightStop {
  const message = `${power.toFixed(0)} W are needed, the pack gives at most ${drawn.largestPower.toFixed(0)} W (${drawn.because})`;
  return stoppedAt(step, { name: "power not deliverable", family: "power" }, message);
}

export function emptyBattery(step: FlightStep): FlightStop {
  return stoppedAt(step, { name: "empty battery", family: "power" }, "the battery is empty");
}

export function lostTrack(lost: NonNullable<FlightPath["lost"]>, at: FlightState): FlightStop {
  const wind = lost.because === "cross-wind" ? "cross wind" : "head wind";
  const message =
    `${lost.leg.name}, after ${kilometers(at)} km: cannot hold the track, the ${wind} asks for more than ` +
    `${lost.airspeedNeeded.toFixed(1)} m/s, ${lost.leg.airspeed.toFixed(1)} m/s are commanded`;
  return { limit: { name: "cannot hold the track", family: "air" }, message, time: at.time };
}

function stoppedAt({ start, phase }: FlightStep, limit: NamedLimit, because: string): FlightStop {
  return { limit, message: `${phase.name}, ${phase.kind}, after ${kilometers(start)} km: ${because}`, time: start.time };
}

function kilometers(state: FlightState): string {
  return (state.distance / 1000).toFixed(1);
}
