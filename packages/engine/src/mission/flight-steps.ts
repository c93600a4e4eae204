import { standardGravity } from "../aircraft/index.ts";
import { airspeedForGroundSpeed, type Wind, windTriangle, windVelocityAt } from "../environment/wind/index.ts";
import type { FlightPath } from "./flight-path.ts";
import { barrier, type FlightStop, tooLong } from "./flight-stop.ts";
import { tailwind } from "./ground-speed.ts";
import type { Phase, PhasePiece } from "./phases.ts";
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

export interface FlightSteps {
  readonly steps: readonly FlightStep[];
  /** Where the last of them ends. */
  readonly end: FlightState;
  /** Why they end before the path does. */
  readonly barred?: FlightStop;
}

/** No flight is followed longer than this [s], nor in more steps. */
const longestFlight = 24 * 3600;
const mostSteps = 250_000;

/**
 * Cuts a flight into steps of at most `longestStep` [s] that end exactly where phases end. The mean climb of a step counts
 * the change of height and, by the energy-rate method, of speed: ΔH/Δt with H = h + V²/2g (common practice), so no energy
 * is lost or gained between steps. Steps end before the ground, or above the permitted altitude [m].
 */
export function flightSteps(path: FlightPath, wind: Wind, longestStep: number, altitudeMaximum: number): FlightSteps {
  const steps: FlightStep[] = [];
  let time = 0;
  let distance = 0;
  let state: FlightState | undefined;
  for (const phase of path.phases) {
    const count = Math.max(1, Math.ceil(phase.duration / longestStep - 1e-9));
    const cursor = pieceCursor(phase);
    let start = stateAt(phase, cursor(0), wind, { time, distance });
    for (let index = 1; index <= count; index++) {
      const elapsed = index === count ? phase.duration : index * longestStep;
      const end = stateAt(phase, cursor(elapsed), wind, { time: time + elapsed, distance });
      const duration = end.time - start.time;
      if (duration > 0) {
        const step = { start, end, duration, phase, query: queryOf(phase, start, end, duration) };
        const barred =
          barrier(step, altitudeMaximum) ?? (end.time > longestFlight || steps.length >= mostSteps ? tooLong(step) : undefined);
        if (barred) return { steps, end: start, barred };
        steps.push(step);
      }
      start = end;
    }
    state = start;
    time += phase.duration;
    distance = start.distance;
  }
  if (state === undefined) throw new RangeError("a flight has at least one phase");
  return { steps, end: state };
}

interface Within {
  readonly piece: PhasePiece;
  /** Time into the piece [s] and length of the pieces before it [m]. */
  readonly elapsed: number;
  readonly before: number;
}

/** Finds the piece for ever later times within a phase. */
function pieceCursor(phase: Phase): (elapsed: number) => Within {
  let index = 0;
  let passed = 0;
  let before = 0;
  return (elapsed) => {
    let piece = phase.pieces[index] as PhasePiece;
    while (index < phase.pieces.length - 1 && elapsed - passed > piece.duration) {
      passed += piece.duration;
      before += piece.length;
      index++;
      piece = phase.pieces[index] as PhasePiece;
    }
    return { piece, elapsed: Math.min(elapsed - passed, piece.duration), before };
  };
}

function stateAt(phase: Phase, { piece, elapsed, before }: Within, wind: Wind, base: { time: number; distance: number }): FlightState {
  const share = piece.duration > 0 ? elapsed / piece.duration : 0;
  const groundSpeed = piece.startSpeed + (piece.endSpeed - piece.startSpeed) * share;
  const along = ((piece.startSpeed + groundSpeed) / 2) * elapsed;
  const place = piece.length > 0 ? along / piece.length : share;
  const height = piece.startHeight + (piece.endHeight - piece.startHeight) * share;
  const ground = piece.startGround + (piece.endGround - piece.startGround) * place;
  const climbRate = piece.duration > 0 ? (piece.endHeight - piece.startHeight) / piece.duration : 0;
  const air = windVelocityAt(wind, height - ground);
  const horizontal = airspeedForGroundSpeed(piece.course, groundSpeed, air);
  const commanded = phase.kind === "cruise" ? phase.leg?.airspeed : undefined;
  const triangle = groundSpeed > 0 ? windTriangle(piece.course, horizontal, air) : undefined;
  const onGround = phase.kind === "on-ground";
  return {
    time: base.time,
    distance: base.distance + before + along,
    latitude: piece.startLatitude + (piece.endLatitude - piece.startLatitude) * place,
    longitude: piece.startLongitude + (piece.endLongitude - piece.startLongitude) * place,
    height,
    ground,
    airspeed: onGround ? 0 : (commanded ?? Math.hypot(horizontal, climbRate)),
    groundSpeed,
    climbRate,
    heading: triangle?.kind === "holds" ? triangle.heading : piece.course,
    headwind: -tailwind(piece.course, air),
    windSpeed: Math.hypot(air.north, air.east),
  };
}

/** Horizontal part of the airspeed [m/s]. */
export function horizontalAirspeed(state: FlightState): number {
  return Math.sqrt(Math.max(0, state.airspeed ** 2 - state.climbRate ** 2));
}

/** What carries the aircraft through a step: its mean speed, height and rate of climb. */
function queryOf(phase: Phase, start: FlightState, end: FlightState, duration: number): PowerQuery | undefined {
  if (phase.kind === "on-ground") return undefined;
  const climb = (end.height - start.height) / duration;
  const altitude = (start.height + end.height) / 2;
  if (phase.kind === "cruise") return { part: "legs", loading: phase.loading, speed: start.airspeed, climb, altitude };
  const first = horizontalAirspeed(start);
  const second = horizontalAirspeed(end);
  const moving = phase.kind === "accelerate" || phase.kind === "decelerate";
  const change = moving ? (second * second - first * first) / (2 * standardGravity * duration) : 0;
  return { part: "maneuver", loading: phase.loading, speed: (first + second) / 2, climb: climb + change, altitude };
}
