import { rotorStateWidth, type Vector } from "../airframe/index.ts";
import { type FullOutcome, type FullPoint, type FullTrimmed, type FullTrimmer, fullObjective } from "../equilibrium/index.ts";
import { speedProfile } from "./speed-profile.ts";

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

export interface PlanRefusal {
  readonly kind: "no-plan";
  readonly reason: string;
  readonly airspeed: number;
}

export interface PlanRequest {
  readonly way: TransitionWay;
  readonly hover: FullTrimmed;
  readonly cruise: FullTrimmed;
  /** Where the clutch opens and closes [m/s]. */
  readonly meetSpeed: number;
  /** [m/s²] */
  readonly acceleration: number;
}

/** Between two trims of the reference [s], and how many there are at most on a change of speed. */
const knotInterval = 0.5;
const mostKnots = 80;
const holdTime = 1;
const settleTime = 4;
/** Time in which the rotor's torque is given up or taken on [s]. */
const handOverTime = 3;
const leastSpinTime = 2;
const spinSteps = 4;
/** An acceleration that does not trim is tried again at this share of it, so many times. */
const gentler = 0.7;
const mostTries = 5;
/** A way of flying is left for another one that costs less by this share. */
const cheaper = 0.002;

/**
 * The reference of a transition in level flight: trims with their acceleration, clutch closed from hover to the speed where the modes meet, there
 * the rotor's speed to that of free flight and the torque handed over at constant speed, clutch open from there to cruise; and all of it backwards.
 * With the clutch closed the trims are followed from hover up, with it open from cruise down, so that they stay on one way of flying.
 */
export function transitionPlan(trimmer: FullTrimmer, request: PlanRequest): TransitionPlan | PlanRefusal {
  const out = request.way === "hover to cruise";
  let acceleration = request.acceleration;
  let refused: PlanRefusal | undefined;
  for (let attempt = 0; attempt < mostTries; attempt++) {
    const sign = out ? 1 : -1;
    const closed = leg(trimmer, request.hover, request.meetSpeed, acceleration, sign);
    const open = "kind" in closed ? closed : leg(trimmer, request.cruise, request.meetSpeed, acceleration, sign);
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

interface LegKnot {
  readonly time: number;
  readonly trimmed: FullTrimmed;
}

/** Trims along a change of speed that begins at a known one; times from that end. What the way back finds cheaper is kept. */
function leg(trimmer: FullTrimmer, from: FullTrimmed, to: number, acceleration: number, sign: number): readonly LegKnot[] | PlanRefusal {
  const knots: LegKnot[] = [{ time: 0, trimmed: from }];
  const { mode } = from.point;
  const interval = Math.max(knotInterval, Math.abs(to - from.point.airspeed) / acceleration / mostKnots);
  for (const moment of speedProfile(from.point.airspeed, to, acceleration, interval).slice(1)) {
    const point: FullPoint = { ...from.point, airspeed: moment.airspeed, acceleration: sign * Math.abs(moment.acceleration) };
    const found = near(trimmer, point, last(knots).trimmed);
    if (found.kind !== "trimmed") return refusal(found, `${mode === "clutch-open" ? "clutch open" : "clutch closed"} at this acceleration`);
    knots.push({ time: moment.time, trimmed: found });
  }
  for (let i = knots.length - 2; i > 0; i--) {
    const [here, beyond] = [knots[i] as LegKnot, knots[i + 1] as LegKnot];
    const again = trimmer.trimFrom(here.trimmed.point, [beyond.trimmed.start], "table");
    if (again.kind === "trimmed" && fullObjective(again) < fullObjective(here.trimmed) * (1 - cheaper))
      knots[i] = { ...here, trimmed: again };
  }
  return knots;
}

function near(trimmer: FullTrimmer, point: FullPoint, beside: FullTrimmed): FullOutcome {
  const found = trimmer.trimFrom(point, [beside.start], "table");
  return found.kind === "trimmed" ? found : trimmer.trim(point, "table");
}

function refusal(found: Exclude<FullOutcome, FullTrimmed>, doing: string): PlanRefusal {
  const { airspeed } = found.point;
  const reason = found.kind === "no-equilibrium" ? `${found.limit} stands in the way` : "the solver gave up";
  return { kind: "no-plan", reason: `${reason}, ${doing}, at ${airspeed.toFixed(1)} m/s`, airspeed };
}

interface HandOver {
  /** Clutch closed, from the rotor speed of driven flight to the common one. */
  readonly spin: readonly FullTrimmed[];
  /** Clutch open at the common rotor speed, then at its own where that is another. */
  readonly free: readonly FullTrimmed[];
}

/** The rotor speed nearest to that of free flight at which both modes fly, and the trims on the way to it. */
function handOver(trimmer: FullTrimmer, closed: FullTrimmed, open: FullTrimmed): HandOver | PlanRefusal {
  const [driven, free] = [tipSpeedOf(closed), tipSpeedOf(open)];
  let refused: PlanRefusal | undefined;
  for (const share of [0, 0.25, 0.5, 0.75, 1]) {
    const common = free + share * (driven - free);
    const openThere = share === 0 ? open : near(trimmer, { ...open.point, tipSpeed: common }, open);
    if (openThere.kind !== "trimmed") {
      refused ??= refusal(openThere, "clutch open");
      continue;
    }
    const spin: FullTrimmed[] = [closed];
    for (let i = 1; i <= spinSteps; i++) {
      const tipSpeed = driven + ((common - driven) * i) / spinSteps;
      const found = near(trimmer, { ...closed.point, tipSpeed }, last(spin));
      if (found.kind !== "trimmed") {
        refused ??= refusal(found, "clutch closed at the rotor speed of free flight");
        break;
      }
      spin.push(found);
    }
    if (spin.length === spinSteps + 1) return { spin, free: share === 0 ? [open] : [openThere, open] };
  }
  return refused ?? { kind: "no-plan", reason: "the modes do not meet", airspeed: closed.point.airspeed };
}

const tipSpeedOf = ({ evaluation }: FullTrimmed, rotor = 0): number => evaluation.rotorStates[rotor * rotorStateWidth] ?? 0;

function last<T>(list: readonly T[]): T {
  return list[list.length - 1] as T;
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
