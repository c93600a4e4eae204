import { rotorStateWidth } from "../airframe/index.ts";
import type { FullTrimmed } from "../equilibrium/index.ts";
import type { SpeedMoment } from "./speed-profile.ts";

/** A rotor as its pace counts. */
export interface PacedRotor {
  readonly radius: number;
  readonly polarInertia: number;
  /** In hover [N m]. */
  readonly hoverTorque: number;
}

/** What else must follow: controls with their rates, in the order of the trims. */
export interface PacedAircraft {
  readonly rotors: readonly PacedRotor[];
  readonly controls: readonly { readonly rate?: number }[];
}

/** Torque that may go into changing a rotor's speed: our own choice, so that the flight stays near its trims. */
const slowingShare = 0.4;
const drivenShare = 0.15;
const freeShare = 0.05;
/** So fast may the attitude of the reference change [rad/s], and its controls, of their rates [1]: our own choice as well. */
const calmTurn = 0.1;
const calmShare = 0.3;
/** Less than this more is not worth another look. */
const enough = 1.1;

/** A change of speed in its own time: by how much each stretch between two moments takes longer [1]. */
export type Pace = readonly number[];

/**
 * How much longer than planned each stretch takes so that rotors, attitude and controls can follow: with the clutch closed a share of what brakes a
 * rotor may slow it, or of the hover's torque speed it up; turning free a small share of that.
 *
 * @param planned moments without regard to the rotors
 * @param trims at the moments
 * @param sign of time along the moments: −1 where they are passed from the end
 * @derivation J ΔΩ/Δt within the torque; the longest of two neighbours on either side, evened out
 */
export function calmPace(
  planned: readonly SpeedMoment[],
  trims: readonly FullTrimmed[],
  { rotors, controls }: PacedAircraft,
  sign: number,
): Pace {
  const factors = planned.slice(1).map((moment, i) => {
    const [from, to] = [trims[i] as FullTrimmed, trims[i + 1] as FullTrimmed];
    const step = moment.time - (planned[i] as SpeedMoment).time;
    const spinning = rotors.map((rotor, k) => needed(rotor, k, from, to, sign));
    return Math.max(step, movingTime(controls, from, to), ...spinning) / step;
  });
  const wide = factors.map((_, i) => Math.max(...factors.slice(Math.max(0, i - 2), i + 3)));
  return wide.map((_, i) => {
    const around = wide.slice(Math.max(0, i - 1), i + 2);
    return around.reduce((sum, factor) => sum + factor, 0) / around.length;
  });
}

/** Whether a pace is slow enough for what is needed. */
export function suffices(pace: Pace, wanted: Pace): boolean {
  return wanted.every((factor, i) => factor <= (pace[i] as number) * enough);
}

/** The planned moments at a pace: later, with less acceleration. */
export function paced(planned: readonly SpeedMoment[], pace: Pace): readonly SpeedMoment[] {
  let time = 0;
  return planned.map(({ airspeed, acceleration }, i) => {
    if (i > 0) time += ((planned[i] as SpeedMoment).time - (planned[i - 1] as SpeedMoment).time) * (pace[i - 1] as number);
    const factor = ((pace[i - 1] ?? pace[i] ?? 1) + (pace[i] ?? pace[i - 1] ?? 1)) / 2;
    return { time, airspeed, acceleration: acceleration / factor };
  });
}

/** Time that attitude and controls need from one trim to the next [s]. */
function movingTime(controls: PacedAircraft["controls"], { evaluation: from }: FullTrimmed, { evaluation: to }: FullTrimmed): number {
  const turn = Math.max(Math.abs(to.pitch - from.pitch), Math.abs(to.roll - from.roll)) / calmTurn;
  const moves = controls.map(({ rate }, i) =>
    rate === undefined ? 0 : Math.abs((to.controls[i] as number) - (from.controls[i] as number)) / (calmShare * rate),
  );
  return Math.max(turn, ...moves);
}

/** Time that a rotor needs from one trim to the next [s]. */
function needed(
  { radius, polarInertia, hoverTorque }: PacedRotor,
  rotor: number,
  from: FullTrimmed,
  to: FullTrimmed,
  sign: number,
): number {
  const speed = ({ evaluation }: FullTrimmed) => (evaluation.rotorStates[rotor * rotorStateWidth] as number) / radius;
  const torque = ({ evaluation }: FullTrimmed) => evaluation.loads.rotors[rotor]?.torque ?? 0;
  const change = (speed(to) - speed(from)) * sign;
  const free = freeShare * hoverTorque;
  let allowed = free;
  if (from.point.mode === "clutch-closed")
    allowed = change > 0 ? drivenShare * hoverTorque : Math.max(free, slowingShare * Math.min(torque(from), torque(to)));
  return (polarInertia * Math.abs(change)) / Math.max(allowed, 1e-6);
}
