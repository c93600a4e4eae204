import type { GeodeticPosition } from "../environment/geodesy/index.ts";
import type { PathPiece, SampledLeg } from "./run-kinematics.ts";

/**
 * What the aircraft does in a phase. `take-off` leaves the ground, `landing` reaches it; `climb` and `descent` are vertical
 * moves in between.
 */
export type PhaseKind = "take-off" | "climb" | "descent" | "landing" | "hover" | "on-ground" | "accelerate" | "cruise" | "decelerate";

/** A stretch of path over which acceleration and climb rate are constant; vertical and resting ones have no length. */
export type PhasePiece = Omit<PathPiece, "leg" | "kind">;

/** A part of the flight of one kind. Steps never cross its ends. */
export interface Phase {
  readonly kind: PhaseKind;
  /** The leg or the place it belongs to, in words. */
  readonly name: string;
  readonly leg?: SampledLeg;
  /** Which loading is on board, counted from 0. */
  readonly loading: number;
  readonly pieces: readonly PhasePiece[];
  /** [s] */
  readonly duration: number;
}

/** A waypoint with the ground under it: elevation above mean sea level [m]. */
export interface Spot extends GeodeticPosition {
  readonly name: string;
  readonly ground: number;
  /** The nose points here while nothing moves [rad]: into the wind. */
  readonly course: number;
}

/** Resting over a spot at a height above mean sea level [m]. */
export function restingPhase(
  kind: "hover" | "on-ground",
  name: string,
  spot: Spot,
  height: number,
  duration: number,
  loading: number,
): Phase {
  return { kind, name, loading, duration, pieces: [stillPiece(spot, height, height, duration)] };
}

/** Vertical move between two heights above mean sea level [m] at the rates given [m/s]; undefined when there is nothing to do. */
export function verticalPhase(
  spot: Spot,
  heights: { readonly from: number; readonly to: number },
  rates: { readonly climbRate: number; readonly descentRate: number },
  loading: number,
): Phase | undefined {
  const change = heights.to - heights.from;
  if (Math.abs(change) < 1e-6) return undefined;
  const duration = change > 0 ? change / rates.climbRate : -change / rates.descentRate;
  const grounded = (height: number) => Math.abs(height - spot.ground) < 1e-6;
  const kind = change > 0 ? (grounded(heights.from) ? "take-off" : "climb") : grounded(heights.to) ? "landing" : "descent";
  return { kind, name: spot.name, loading, duration, pieces: [stillPiece(spot, heights.from, heights.to, duration)] };
}

function stillPiece(spot: Spot, from: number, to: number, duration: number): PhasePiece {
  return {
    length: 0,
    duration,
    course: spot.course,
    startSpeed: 0,
    endSpeed: 0,
    startHeight: from,
    endHeight: to,
    startGround: spot.ground,
    endGround: spot.ground,
    startLatitude: spot.latitude,
    endLatitude: spot.latitude,
    startLongitude: spot.longitude,
    endLongitude: spot.longitude,
  };
}

/** A run's pieces as phases: one for each stretch of the same leg flown the same way. */
export function runPhases(pieces: readonly PathPiece[], loading: number): readonly Phase[] {
  const phases: Phase[] = [];
  let from = 0;
  for (let index = 1; index <= pieces.length; index++) {
    const first = pieces[from] as PathPiece;
    const here = pieces[index];
    if (here !== undefined && here.leg === first.leg && here.kind === first.kind) continue;
    const part = pieces.slice(from, index);
    const duration = part.reduce((sum, piece) => sum + piece.duration, 0);
    phases.push({ kind: first.kind, name: first.leg.name, leg: first.leg, loading, pieces: part, duration });
    from = index;
  }
  return phases;
}
