import type { Phase } from "./phases.ts";
import type { PowerQuery } from "./power-lookup.ts";

/** The aircraft at one moment. Heights above mean sea level [m], speeds [m/s], angles [rad]. */
export interface FlightState {
  readonly time: number;
  /** Along the route from take-off [m]. */
  readonly distance: number;
  readonly latitude: number;
  readonly longitude: number;
  readonly height: number;
  readonly ground: number;
  /** True airspeed along the path. */
  readonly airspeed: number;
  readonly groundSpeed: number;
  readonly climbRate: number;
  /** Direction of the airspeed, clockwise from true north: into the wind while nothing moves. */
  readonly heading: number;
  /** Wind against the direction of travel; all of it while nothing moves. */
  readonly headwind: number;
  /** Wind speed here. */
  readonly windSpeed: number;
}

/** A step of constant power: its ends within one phase, and what the power table is asked. */
export interface FlightStep {
  readonly start: FlightState;
  readonly end: FlightState;
  /** [s] */
  readonly duration: number;
  readonly phase: Phase;
  /** Undefined on the ground. */
  readonly query: PowerQuery | undefined;
}

/** Horizontal part of the airspeed [m/s]. */
export function horizontalAirspeed(state: FlightState): number {
  return Math.sqrt(Math.max(0, state.airspeed ** 2 - state.climbRate ** 2));
}
