import { standardGravity } from "../aircraft/index.ts";
import { type Wind, windVelocityAt } from "../environment/wind/index.ts";
import { type GroundSpeeds, groundSpeeds, type PieceKind, type SpeedLimits, type SpeedPiece, tailwind } from "./ground-speed.ts";
import { rateLimitedEnvelope } from "./height-envelope.ts";
import type { LegSamples } from "./leg-samples.ts";

/** What a leg's height is measured from. */
export type HeightRule =
  | { readonly kind: "above-ground"; readonly height: number }
  | { readonly kind: "above-sea"; readonly height: number };

/** A leg ready to be flown. */
export interface SampledLeg {
  /** Counted from 1. */
  readonly number: number;
  readonly name: string;
  /** Commanded airspeed along the path [m/s]. */
  readonly airspeed: number;
  readonly height: HeightRule;
  readonly samples: LegSamples;
}

/** Legs flown without a stop between them. */
export interface RunRequest {
  readonly legs: readonly SampledLeg[];
  readonly wind: Wind;
  readonly limits: SpeedLimits;
}

/** One piece of path over which acceleration and climb rate are constant. Heights above mean sea level [m]. */
export interface PathPiece {
  readonly leg: SampledLeg;
  readonly kind: PieceKind;
  readonly length: number;
  readonly duration: number;
  /** [rad], clockwise from true north. */
  readonly course: number;
  readonly startSpeed: number;
  readonly endSpeed: number;
  readonly startHeight: number;
  readonly endHeight: number;
  readonly startGround: number;
  readonly endGround: number;
  readonly startLatitude: number;
  readonly endLatitude: number;
  readonly startLongitude: number;
  readonly endLongitude: number;
}

export interface RunKinematics {
  readonly pieces: readonly PathPiece[];
  /** Height above mean sea level at which the run begins, also when it has no pieces [m]. */
  readonly startHeight: number;
  /** Why the run ends before its last waypoint. */
  readonly lost?: { readonly leg: SampledLeg; readonly because: "cross-wind" | "head-wind"; readonly airspeedNeeded: number };
}

/** Height above mean sea level [m] that a rule asks for over ground at an elevation [m]. */
export function heightAbove(rule: HeightRule, ground: number): number {
  return rule.kind === "above-ground" ? ground + rule.height : rule.height;
}

/** Speed, height and wind depend on one another when wind changes with height or the path climbs; few rounds settle them. */
const rounds = 8;
const settled = 1e-6;

/**
 * Where, how high and how fast a run is flown. Heights are the lowest that keep every required height and both rates;
 * ground speeds follow from the wind at the height flown.
 *
 * @derivation Fixed-point iteration: heights → wind and horizontal airspeed → ground speeds → times → heights.
 */
export function runKinematics(run: RunRequest): RunKinematics {
  const cuts = runCuts(run);
  const count = cuts.leg.length;
  const heights = Float64Array.from(cuts.required);
  const climbRates = new Float64Array(count);
  const durations = new Float64Array(count);
  let speeds = groundSpeeds([], run.limits);
  for (let round = 0; round < rounds; round++) {
    const pieces = speedPieces(run, cuts, heights, climbRates);
    speeds = groundSpeeds(pieces, run.limits);
    const flown = speeds.kind.length;
    for (let at = 0; at < flown; at++) {
      durations[at] = (2 * (pieces[at] as SpeedPiece).length) / ((speeds.start[at] as number) + (speeds.end[at] as number));
    }
    const lowest = rateLimitedEnvelope(cuts.required.subarray(0, flown + 1), durations, allowance(pieces, speeds, run.limits));
    let change = 0;
    for (let at = 0; at <= flown; at++) change = Math.max(change, Math.abs((lowest[at] as number) - (heights[at] as number)));
    heights.set(lowest);
    for (let at = 0; at < flown; at++) {
      climbRates[at] = ((lowest[at + 1] as number) - (lowest[at] as number)) / (durations[at] as number);
    }
    if (change < settled && round > 0) break;
  }
  const { lost } = speeds;
  return {
    pieces: speeds.kind.map((kind, at) => pathPiece(cuts, at, kind, { speeds, durations, heights })),
    startHeight: heights[0] as number,
    ...(lost ? { lost: { leg: cuts.leg[lost.piece] as SampledLeg, because: lost.because, airspeedNeeded: lost.airspeedNeeded } } : {}),
  };
}

/** All legs of a run as one sequence of pieces; arrays over cuts hold one more than arrays over pieces. */
interface RunCuts {
  /** Leg of each piece and the number of the piece within it. */
  readonly leg: readonly SampledLeg[];
  readonly within: readonly number[];
  /** Over cuts [m]: the higher one of two legs where they meet. */
  readonly required: Float64Array;
}

function runCuts(run: RunRequest): RunCuts {
  const leg: SampledLeg[] = [];
  const within: number[] = [];
  const required: number[] = [];
  for (const entry of run.legs) {
    const { pieces, ground } = entry.samples;
    const last = required.length - 1;
    for (let cut = 0; cut <= pieces; cut++) {
      const height = heightAbove(entry.height, ground[cut] as number);
      if (cut === 0 && last >= 0) required[last] = Math.max(required[last] as number, height);
      else required.push(height);
      if (cut < pieces) {
        leg.push(entry);
        within.push(cut);
      }
    }
  }
  return { leg, within, required: Float64Array.from(required) };
}

function speedPieces(run: RunRequest, cuts: RunCuts, heights: Float64Array, climbRates: Float64Array): readonly SpeedPiece[] {
  return cuts.leg.map((leg, at) => {
    const piece = cuts.within[at] as number;
    const { samples } = leg;
    const ground = ((samples.ground[piece] as number) + (samples.ground[piece + 1] as number)) / 2;
    const height = ((heights[at] as number) + (heights[at + 1] as number)) / 2;
    const climb = Math.min(Math.abs(climbRates[at] as number), leg.airspeed);
    return {
      length: samples.length / samples.pieces,
      course: samples.course[piece] as number,
      wind: windVelocityAt(run.wind, height - ground),
      commanded: leg.airspeed,
      airspeed: Math.sqrt(leg.airspeed * leg.airspeed - climb * climb),
      startsLeg: piece === 0,
    };
  });
}

/** What is left of the rates of climb and descent beside the change of speed, counted as a climb [m/s]. */
function allowance(pieces: readonly SpeedPiece[], speeds: GroundSpeeds, limits: SpeedLimits) {
  const climb = new Float64Array(pieces.length);
  const descent = new Float64Array(pieces.length);
  for (let at = 0; at < speeds.kind.length; at++) {
    const piece = pieces[at] as SpeedPiece;
    const start = speeds.start[at] as number;
    const end = speeds.end[at] as number;
    const acceleration = (end * end - start * start) / (2 * piece.length);
    const along = tailwind(piece.course, piece.wind);
    const first = (acceleration * (start - along)) / standardGravity;
    const second = (acceleration * (end - along)) / standardGravity;
    climb[at] = Math.max(0, limits.climbRate - Math.max(0, first, second));
    descent[at] = Math.max(0, limits.descentRate + Math.min(0, first, second));
  }
  return { climb, descent };
}

interface RunState {
  readonly speeds: GroundSpeeds;
  readonly durations: Float64Array;
  readonly heights: Float64Array;
}

function pathPiece(cuts: RunCuts, at: number, kind: PieceKind, state: RunState): PathPiece {
  const leg = cuts.leg[at] as SampledLeg;
  const piece = cuts.within[at] as number;
  const { samples } = leg;
  return {
    leg,
    kind,
    length: samples.length / samples.pieces,
    duration: state.durations[at] as number,
    course: samples.course[piece] as number,
    startSpeed: state.speeds.start[at] as number,
    endSpeed: state.speeds.end[at] as number,
    startHeight: state.heights[at] as number,
    endHeight: state.heights[at + 1] as number,
    startGround: samples.ground[piece] as number,
    endGround: samples.ground[piece + 1] as number,
    startLatitude: samples.latitude[piece] as number,
    endLatitude: samples.latitude[piece + 1] as number,
    startLongitude: samples.longitude[piece] as number,
    endLongitude: samples.longitude[piece + 1] as number,
  };
}
