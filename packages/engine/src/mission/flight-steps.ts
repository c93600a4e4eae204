import { standardGravity } from "../aircraft/index.ts";
import { airspeedForGroundSpeed, type Wind, windTriangle, windVelocityAt } from "../environment/wind/index.ts";
import type { FlightPath } from "./flight-path.ts";
import { type FlightState, type FlightStep, horizontalAirspeed } from "./flight-state.ts";
import { barrier, type FlightStop, tooLong } from "./flight-stop.ts";
import { tailwind } from "./ground-speed.ts";
import type { Phase, PhasePiece } from "./phases.ts";
import type { PowerQuery } from "./power-lookup.ts";

/** A flight cut into steps. */
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
