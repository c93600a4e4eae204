import { standardGravity } from "../aircraft/index.ts";
import { airspeedForGroundSpeed, type WindVelocity, windTriangle } from "../environment/wind/index.ts";

/** How a piece of a run is flown. */
export type PieceKind = "accelerate" | "cruise" | "decelerate";

/** One piece as the speed sweep sees it. */
export interface SpeedPiece {
  readonly length: number;
  /** [rad], clockwise from true north. */
  readonly course: number;
  readonly wind: WindVelocity;
  /** Airspeed along the path that the leg commands [m/s]. */
  readonly commanded: number;
  /** Its horizontal part on this piece [m/s]. */
  readonly airspeed: number;
  /** True on the first piece of a leg. */
  readonly startsLeg: boolean;
}

/** Rates that the change of ground speed must respect [m/s²] and [m/s]. */
export interface SpeedLimits {
  readonly acceleration: number;
  readonly climbRate: number;
  readonly descentRate: number;
}

/** Ground speed at both ends of every piece [m/s]. The two differ across a corner, where the wind turns to the track. */
export interface GroundSpeeds {
  readonly start: Float64Array;
  readonly end: Float64Array;
  readonly kind: PieceKind[];
  /** First piece on which the track cannot be held; the sweep ends before it. */
  readonly lost?: { readonly piece: number; readonly because: "cross-wind" | "head-wind"; readonly airspeedNeeded: number };
}

/** Part of the wind along a course [m/s], positive from behind. */
export function tailwind(course: number, wind: WindVelocity): number {
  return wind.north * Math.cos(course) + wind.east * Math.sin(course);
}

/**
 * Ground speeds along a run that starts and ends at rest: up to the wind triangle's answer at the commanded airspeed, held,
 * and down again, at bounded acceleration. A corner without stop is turned at once with the airspeed kept.
 *
 * The energy-rate method counts an acceleration as a climb, V dV/dt / g with V the airspeed (common practice); here that
 * is a (G − tail wind)/g, and the acceleration is held to where this stays within the rates of climb and descent.
 *
 * @derivation v² = v₀² + 2 a s on each piece, swept forward from the start and backward from the stop.
 */
export function groundSpeeds(pieces: readonly SpeedPiece[], limits: SpeedLimits): GroundSpeeds {
  const start = new Float64Array(pieces.length);
  const end = new Float64Array(pieces.length);
  const kind: PieceKind[] = [];
  let speed = 0;
  let held = false;
  for (let index = 0; index < pieces.length; index++) {
    const piece = pieces[index] as SpeedPiece;
    const before = pieces[index - 1];
    const goal = windTriangle(piece.course, piece.airspeed, piece.wind);
    if (goal.kind === "cannot-hold-track") return { start, end, kind, lost: { piece: index, ...reasonOf(goal) } };
    if (piece.startsLeg && before !== undefined && !(held && before.commanded === piece.commanded)) {
      const turned = windTriangle(
        piece.course,
        held ? before.airspeed : airspeedForGroundSpeed(before.course, speed, before.wind),
        piece.wind,
      );
      if (turned.kind === "cannot-hold-track") return { start, end, kind, lost: { piece: index, ...reasonOf(turned) } };
      speed = turned.groundSpeed;
      held = false;
    }
    if (held) {
      start[index] = goal.groundSpeed;
      end[index] = goal.groundSpeed;
      kind.push("cruise");
    } else {
      const next = changedSpeed(piece, speed, goal.groundSpeed, limits);
      start[index] = speed;
      end[index] = next;
      kind.push(next >= speed ? "accelerate" : "decelerate");
      held = next === goal.groundSpeed;
    }
    speed = end[index] as number;
  }
  brake(pieces, limits, start, end, kind);
  return { start, end, kind };
}

/** Sweeps backward from the stop, lowering speeds that could not be braked away. */
function brake(pieces: readonly SpeedPiece[], limits: SpeedLimits, start: Float64Array, end: Float64Array, kind: PieceKind[]): void {
  let speed = 0;
  for (let index = pieces.length - 1; index >= 0; index--) {
    if ((end[index] as number) <= speed) return;
    const piece = pieces[index] as SpeedPiece;
    end[index] = speed;
    const brakable = changedSpeed(piece, speed, Number.POSITIVE_INFINITY, limits);
    const lowered = brakable < (start[index] as number);
    if (lowered) start[index] = brakable;
    kind[index] = (start[index] as number) > speed ? "decelerate" : "accelerate";
    if (!lowered) return;
    speed = piece.startsLeg ? speedBeforeCorner(pieces, index, brakable) : brakable;
  }
}

/** Ground speed at the end of the leg before that goes with a ground speed at the start of this one, the airspeed kept [m/s]. */
function speedBeforeCorner(pieces: readonly SpeedPiece[], index: number, speed: number): number {
  const piece = pieces[index] as SpeedPiece;
  const before = pieces[index - 1];
  if (before === undefined) return speed;
  const turned = windTriangle(before.course, airspeedForGroundSpeed(piece.course, speed, piece.wind), before.wind);
  return turned.kind === "holds" ? turned.groundSpeed : speed;
}

/** Speed after this piece when changing from `speed` toward `goal` as fast as allowed [m/s]. */
function changedSpeed(piece: SpeedPiece, speed: number, goal: number, limits: SpeedLimits): number {
  const along = tailwind(piece.course, piece.wind);
  const reached = (rate: number) => Math.sqrt(Math.max(0, speed * speed + 2 * rate * piece.length));
  const upward = goal >= speed;
  const fastest = reached(upward ? limits.acceleration : -limits.acceleration);
  const relative = Math.max(Math.abs(speed - along), Math.abs(fastest - along));
  const rate = Math.min(limits.acceleration, (Math.min(limits.climbRate, limits.descentRate) * standardGravity) / relative);
  return upward ? Math.min(goal, reached(rate)) : Math.max(goal, reached(-rate));
}

function reasonOf(lost: { readonly because: "cross-wind" | "head-wind"; readonly airspeedNeeded: number }) {
  return { because: lost.because, airspeedNeeded: lost.airspeedNeeded };
}
