import { rotorStateWidth, type Vector } from "../airframe/index.ts";
import type { FullTrimmed, FullTrimmer } from "../equilibrium/index.ts";
import {
  type HandOver,
  handOver,
  type LegKnot,
  type LegRequest,
  last,
  leg,
  type PlanRefusal,
  spinSteps,
  tipSpeedOf,
} from "./transition-legs.ts";

/** Which part of a transition a moment belongs to. */
export type TransitionPhase = "hold" | "clutch closed" | "rotor speed" | "hand-over" | "clutch open" | "settle";

/** A trimmed flight that the reference passes through. */
export interface PlanKnot {
  readonly time: number;
  readonly phase: TransitionPhase;
  readonly trimmed: FullTrimmed;
}

/** What the flight should be at a moment. */
export interface ReferenceState {
  readonly airspeed: number;
  readonly velocity: Vector;
  readonly pitch: number;
  readonly roll: number;
  /** [rad/s] */
  readonly pitchRate: number;
  readonly controls: Float64Array;
  /** [rad/s] */
  readonly rotorRates: readonly number[];
  /** [m/s] */
  readonly inducedVelocities: readonly number[];
  /** [W] */
  readonly electricPower: number;
}

export interface TransitionPlan {
  readonly way: TransitionWay;
  readonly knots: readonly PlanKnot[];
  /** The clutch may open from here on, or closes here [s]. */
  readonly switchTime: number;
  /** Largest acceleration in it: less than what was asked for where the trims do not allow that [m/s²]. */
  readonly acceleration: number;
  readonly rotors: readonly PlanRotor[];
}

/** What of a rotor counts here. */
export interface PlanRotor {
  readonly radius: number;
  readonly polarInertia: number;
}

export type TransitionWay = "hover to cruise" | "cruise to hover";

export interface PlanRequest extends LegRequest {
  readonly way: TransitionWay;
  readonly cruise: FullTrimmed;
  /** [m/s²] */
  readonly acceleration: number;
}

const holdTime = 1;
const settleTime = 4;
/** Time in which the rotor's torque is given up or taken on [s]. */
const handOverTime = 3;
const leastSpinTime = 2;
/** An acceleration that does not trim is tried again at this share of it, so many times. */
const gentler = 0.7;
const mostTries = 5;

/**
 * The reference of a transition in level flight: trims with their acceleration, clutch closed from hover to the speed where the modes meet, there
 * the rotor's speed to that of free flight and the torque handed over at constant speed, clutch open from there to cruise; and all of it backwards.
 * With the clutch closed the trims are followed from hover up, with it open from cruise down, so that they stay on one way of flying.
 * Where rotor, attitude or controls cannot follow calmly, the speed changes more slowly.
 */
export function transitionPlan(trimmer: FullTrimmer, request: PlanRequest): TransitionPlan | PlanRefusal {
  const out = request.way === "hover to cruise";
  let acceleration = request.acceleration;
  let refused: PlanRefusal | undefined;
  for (let attempt = 0; attempt < mostTries; attempt++) {
    const sign = out ? 1 : -1;
    const closed = leg(trimmer, request.hover, request, acceleration, sign);
    const open = "kind" in closed ? closed : leg(trimmer, request.cruise, request, acceleration, sign);
    if (!("kind" in closed) && !("kind" in open)) {
      const middle = handOver(trimmer, last(closed).trimmed, last(open).trimmed);
      if ("kind" in middle) return middle;
      const rotors = trimmer.airframe.rotors.map(({ part }) => part);
      return assembled({ way: request.way, acceleration, rotors }, closed, middle, open);
    }
    refused = "kind" in closed ? closed : (open as PlanRefusal);
    acceleration *= gentler;
  }
  return refused as PlanRefusal;
}

/** Long enough for the air's own torque to slow the rotor, and as long for the way back [s]. */
function spinTime({ spin }: HandOver, rotors: readonly PlanRotor[]): number {
  const [first, end] = [spin[0] as FullTrimmed, last(spin)];
  const times = rotors.map(({ radius, polarInertia }, i) => {
    const torque = (first.evaluation.loads.rotors[i]?.torque ?? 0) + (end.evaluation.loads.rotors[i]?.torque ?? 0);
    const change = Math.abs(tipSpeedOf(first, i) - tipSpeedOf(end, i)) / radius;
    return (2 * polarInertia * change) / Math.max(torque / 2, 0.1);
  });
  return Math.max(leastSpinTime, ...times);
}

/** All parts in their order out, or turned round for the way back. */
function assembled(
  plan: Pick<TransitionPlan, "way" | "acceleration" | "rotors">,
  closed: readonly LegKnot[],
  middle: HandOver,
  open: readonly LegKnot[],
): TransitionPlan {
  const spin = spinTime(middle, plan.rotors);
  const openEnd = last(open).time;
  let time = holdTime;
  const forward: PlanKnot[] = [{ time: 0, phase: "hold", trimmed: (closed[0] as LegKnot).trimmed }];
  for (const knot of closed) forward.push({ time: time + knot.time, phase: "clutch closed", trimmed: knot.trimmed });
  time += last(closed).time;
  middle.spin.slice(1).forEach((trimmed, i) => {
    forward.push({ time: time + (spin * (i + 1)) / spinSteps, phase: "rotor speed", trimmed });
  });
  time += spin + handOverTime;
  const opened = time;
  middle.free.forEach((trimmed, i) => {
    forward.push({ time: time + i * handOverTime, phase: i === 0 ? "hand-over" : "clutch open", trimmed });
  });
  time += (middle.free.length - 1) * handOverTime;
  for (const knot of open.slice(0, -1).toReversed())
    forward.push({ time: time + openEnd - knot.time, phase: "clutch open", trimmed: knot.trimmed });
  time += openEnd;
  if (plan.way === "hover to cruise") {
    forward.push({ time: time + settleTime, phase: "settle", trimmed: last(forward).trimmed });
    return { ...plan, knots: forward, switchTime: opened };
  }
  return { ...plan, ...turnedRound(forward, opened) };
}

/** The same knots from the end: a phase belongs to the stretch that ends with its knot. */
function turnedRound(forward: readonly PlanKnot[], opened: number): Pick<TransitionPlan, "knots" | "switchTime"> {
  const end = last(forward).time;
  const at = (time: number) => holdTime + end - time;
  const knots: PlanKnot[] = [{ time: 0, phase: "hold", trimmed: last(forward).trimmed }];
  for (let i = forward.length - 1; i >= 1; i--) {
    const { time, trimmed } = forward[i] as PlanKnot;
    knots.push({ time: at(time), phase: i === forward.length - 1 ? "hold" : (forward[i + 1] as PlanKnot).phase, trimmed });
  }
  const hover = last(knots);
  knots.push({ time: hover.time + settleTime, phase: "settle", trimmed: hover.trimmed });
  return { knots, switchTime: at(opened) };
}

/** The reference at a time: between two trims in proportion. */
export function referenceAt(
  { knots, rotors: parts }: TransitionPlan,
  time: number,
): { readonly state: ReferenceState; readonly index: number; readonly share: number } {
  let index = 0;
  while (index < knots.length - 2 && (knots[index + 1] as PlanKnot).time <= time) index += 1;
  const [a, b] = [knots[index] as PlanKnot, (knots[index + 1] ?? knots[index]) as PlanKnot];
  const span = b.time - a.time;
  const share = span > 0 ? Math.min(1, Math.max(0, (time - a.time) / span)) : 1;
  const [from, to] = [a.trimmed.evaluation, b.trimmed.evaluation];
  const mix = (x: number, y: number) => x + share * (y - x);
  const rotors = parts.map((_, i) => i);
  const induced = ({ rotorStates }: typeof from, i: number) =>
    (rotorStates[i * rotorStateWidth] as number) * (rotorStates[i * rotorStateWidth + 1] as number);
  const [u, v] = [from.flight.velocity, to.flight.velocity];
  return {
    index,
    share,
    state: {
      airspeed: mix(from.airspeed, to.airspeed),
      velocity: [mix(u[0], v[0]), mix(u[1], v[1]), mix(u[2], v[2])],
      pitch: mix(from.pitch, to.pitch),
      roll: mix(from.roll, to.roll),
      pitchRate: span > 0 && time < b.time ? (to.pitch - from.pitch) / span : 0,
      controls: from.controls.map((value, i) => mix(value, to.controls[i] as number)),
      rotorRates: parts.map(({ radius }, i) => mix(tipSpeedOf(a.trimmed, i), tipSpeedOf(b.trimmed, i)) / radius),
      inducedVelocities: rotors.map((i) => mix(induced(from, i), induced(to, i))),
      electricPower: mix(from.loads.electricPower, to.loads.electricPower),
    },
  };
}
