import type { AirframeLoads } from "../airframe/index.ts";
import { type FullTrimmed, type FullTrimmer, runningLines } from "../equilibrium/index.ts";
import { Actuators } from "./actuators.ts";
import { eulerAngles } from "./attitude.ts";
import { type EnergyState, energyGap, energyState } from "./energy-balance.ts";
import type { FlightDynamics } from "./flight-dynamics.ts";
import { linearise } from "./linearisation.ts";
import { MultistepIntegrator } from "./multistep.ts";
import { bodyState } from "./rigid-body.ts";
import type { RotorDrive } from "./rotor-drive.ts";
import { courseStates, trackingGain } from "./tracking-gain.ts";
import { type PlanKnot, type ReferenceState, referenceAt, type TransitionPhase, type TransitionPlan } from "./transition-plan.ts";
import { movingFlight } from "./trimmed-flight.ts";

/** `overrunning`: the motor turns along and gives nothing. */
export type ClutchState = "closed" | "overrunning" | "open";

/** One moment of a flown transition. */
export interface TransitionSample {
  readonly time: number;
  readonly phase: TransitionPhase;
  /** Through the air along the course [m/s]; reference beside it. */
  readonly airspeed: number;
  readonly wantedAirspeed: number;
  /** Above the start, along the course, to the right of it [m]. */
  readonly height: number;
  readonly distance: number;
  readonly aside: number;
  readonly pitch: number;
  readonly roll: number;
  readonly heading: number;
  readonly clutch: ClutchState;
  /** [rad/s] */
  readonly rotorRates: readonly number[];
  /** Of the drives on the shafts [N m]. */
  readonly driveTorques: readonly number[];
  readonly controls: Float64Array;
  readonly loads: AirframeLoads;
  readonly kinetic: number;
}

export interface TransitionTrace {
  readonly plan: TransitionPlan;
  readonly samples: readonly TransitionSample[];
  /** When the motor came to rest or began to turn, and the torque on the shaft of the first rotor then; none where it never did. */
  readonly switched: { readonly time: number; readonly torque: number; readonly airspeed: number } | undefined;
  /** Why it was not followed to the end. */
  readonly stopped: string | undefined;
  readonly energy: readonly [before: EnergyState, after: EnergyState];
  readonly energyGap: number;
  /** Share of all steps in which a control asked for more than its rate or its range, per control [1]. */
  readonly atRate: Float64Array;
  readonly atStop: Float64Array;
  readonly evaluations: number;
  readonly flapMissed: number;
}

const step = 0.005;
const sampleSteps = 20;
const gainInterval = 2;
/** Torque below which the clutch counts as free, of that in hover [1], and how long it is waited for [s]. */
const freeShare = 0.01;
const longestWait = 10;
/** Beyond these the reference is lost. */
const lostHeight = 100;
const lostTurn = 6;

interface Gain {
  readonly time: number;
  readonly open: boolean;
  readonly gain: Float64Array;
}

/**
 * Flies a transition: six degrees of freedom, rotor speed, inflow lag, actuators with their rates, governor and one-way clutch. The reference
 * controller puts out the controls of the reference and what a regulator of least squares makes of the deviations from it. The
 * clutch opens once the torque has gone; closing, the motor is taken to turn with the shaft.
 */
export function flyTransition(trimmer: FullTrimmer, plan: TransitionPlan): TransitionTrace | { readonly kind: "no-gain"; readonly airspeed: number } {
  const gains = gainsAlong(trimmer, plan);
  if (!Array.isArray(gains)) return gains;
  return new TransitionFlight(trimmer, plan, gains).run();
}

function gainsAlong(trimmer: FullTrimmer, plan: TransitionPlan): Gain[] | { readonly kind: "no-gain"; readonly airspeed: number } {
  const gains: Gain[] = [];
  for (const knot of plan.knots) {
    const open = isOpen(knot);
    const before = gains[gains.length - 1];
    const final = knot === plan.knots[plan.knots.length - 1];
    if (before && before.open === open && knot.time - before.time < gainInterval && !final) continue;
    const { dynamics, state } = movingFlight(trimmer.airframe, knot.trimmed, 1e-8);
    const { pitch, roll, flight } = knot.trimmed.evaluation;
    const usable = trimmer.airframe.controls.map(({ definition, what }) => {
      const setting = (open ? definition.clutchOpen : undefined) ?? definition.setting;
      const free = setting.kind === "free" || (setting.kind === "scheduled" && trimmer.conditions.controls === "optimum");
      return free && what !== "tip-speed";
    });
    const linear = linearise(dynamics, state);
    const gain = trackingGain(linear, dynamics.aircraft.controls, usable, {
      attitude: { pitch, roll, yaw: 0 },
      velocity: flight.velocity,
    });
    if (!gain) return { kind: "no-gain", airspeed: knot.trimmed.point.airspeed };
    gains.push({ time: knot.time, open, gain });
  }
  return gains;
}

function isOpen({ trimmed }: PlanKnot): boolean {
  return trimmed.point.mode !== "clutch-closed";
}

class TransitionFlight {
  readonly #trimmer: FullTrimmer;
  readonly #plan: TransitionPlan;
  readonly #gains: readonly Gain[];
  readonly #dynamics: FlightDynamics;
  readonly #state: Float64Array;
  readonly #actuators: Actuators;
  readonly #integrator: MultistepIntegrator;
  /** Drives and running lines with the clutch closed and open. */
  readonly #closed: { readonly drives: readonly RotorDrive[]; readonly lines: boolean[] };
  readonly #open: { readonly drives: readonly RotorDrive[]; readonly lines: boolean[] };
  readonly #deviation: Float64Array;
  readonly #asked: Float64Array;
  readonly #freeTorque: number;
  #isOpen: boolean;
  #switched: TransitionTrace["switched"];

  constructor(trimmer: FullTrimmer, plan: TransitionPlan, gains: readonly Gain[]) {
    this.#trimmer = trimmer;
    this.#plan = plan;
    this.#gains = gains;
    const first = plan.knots[0] as PlanKnot;
    const { dynamics, state } = movingFlight(trimmer.airframe, first.trimmed);
    this.#dynamics = dynamics;
    this.#state = state;
    this.#isOpen = isOpen(first);
    const sideOf = (open: boolean) => {
      const { trimmed } = plan.knots.find((knot) => isOpen(knot) === open) as PlanKnot;
      return { drives: movingFlight(trimmer.airframe, trimmed).dynamics.drives, lines: [...runningLines(trimmer.airframe, trimmed.point)] };
    };
    this.#closed = sideOf(false);
    this.#open = sideOf(true);
    this.#actuators = new Actuators(dynamics.aircraft.controls, dynamics.controls);
    this.#integrator = new MultistepIntegrator(dynamics.size, dynamics.rates);
    const rotors = plan.rotors.length;
    this.#deviation = new Float64Array(8 + 2 * rotors + courseStates);
    this.#asked = new Float64Array(dynamics.controls.length);
    const torques = plan.knots.map(({ trimmed }) => (isOpen({ trimmed } as PlanKnot) ? 0 : (trimmed.evaluation.loads.rotors[0]?.torque ?? 0)));
    this.#freeTorque = freeShare * Math.max(...torques);
  }

  run(): TransitionTrace {
    const before = energyState(this.#dynamics, this.#state);
    const samples: TransitionSample[] = [];
    const { knots } = this.#plan;
    const end = (knots[knots.length - 1] as PlanKnot).time;
    let [waited, count] = [0, 0];
    let stopped: string | undefined;
    for (;;) {
      const time = count * step;
      let planTime = time - waited;
      const pending = !this.#switched && planTime >= this.#plan.switchTime - 1e-9;
      if (pending && !this.#switchNow(time)) {
        waited += step;
        planTime -= step;
        if (waited > longestWait) stopped = "the rotor's torque does not go: the clutch stays closed";
      }
      const done = planTime >= end - 1e-9 || stopped !== undefined;
      const reference = referenceAt(this.#plan, planTime);
      this.#steer(reference.state, planTime);
      const phase = (knots[reference.index + 1] as PlanKnot).phase;
      const record = () => samples.push(this.#sample(time, phase, reference.state));
      if (done) {
        this.#dynamics.rates(time, this.#state, new Float64Array(this.#dynamics.size));
        record();
        break;
      }
      this.#integrator.advance(time, this.#state, step, count % sampleSteps === 0 ? record : undefined);
      count += 1;
      stopped = this.#lost();
      if (stopped !== undefined) break;
    }
    const after = energyState(this.#dynamics, this.#state);
    const share = (list: Float64Array) => list.map((value) => value / Math.max(count, 1));
    return {
      plan: this.#plan,
      samples,
      switched: this.#switched,
      stopped,
      energy: [before, after],
      energyGap: energyGap(before, after),
      atRate: share(this.#actuators.atRate),
      atStop: share(this.#actuators.atStop),
      evaluations: this.#integrator.evaluations,
      flapMissed: this.#dynamics.flap.missed,
    };
  }

  /** Opens or closes the clutch if that is possible now. */
  #switchNow(time: number): boolean {
    const torque = this.#dynamics.torques[0] ?? 0;
    if (!this.#isOpen && torque > this.#freeTorque) return false;
    this.#isOpen = !this.#isOpen;
    const side = this.#isOpen ? this.#open : this.#closed;
    this.#dynamics.running = side.lines;
    this.#dynamics.drives = [...side.drives];
    this.#plan.rotors.forEach((_, i) => {
      if (side.drives[i]?.kind !== "governed" || this.#isOpen) this.#state[this.#dynamics.rotorAt(i) + 2] = 0;
      if (!this.#isOpen) this.#state[this.#dynamics.rotorAt(i) + 2] = 0;
    });
    this.#switched = { time, torque, airspeed: this.#along() };
    this.#integrator.restart();
    this.#dynamics.flap.restart();
    return true;
  }

  /** Speed along the course [m/s]. */
  #along(): number {
    const m = this.#dynamics.rotation;
    const [u, v, w] = this.#state as unknown as readonly [number, number, number];
    return (m[0] as number) * u + (m[1] as number) * v + (m[2] as number) * w;
  }

  /** Controls and governors for the next step. */
  #steer(reference: ReferenceState, planTime: number): void {
    const deviation = this.#deviate(reference);
    const gain = this.#gainAt(planTime);
    const n = deviation.length;
    for (let i = 0; i < this.#asked.length; i++) {
      let change = 0;
      for (let j = 0; j < n; j++) change -= gain(i * n + j) * (deviation[j] as number);
      this.#asked[i] = (reference.controls[i] as number) + change;
    }
    this.#actuators.move(this.#asked, step);
    this.#dynamics.controls.set(this.#actuators.positions);
    this.#dynamics.drives = this.#dynamics.drives.map((drive, i) =>
      drive.kind === "governed" ? { ...drive, rate: reference.rotorRates[i] as number } : drive,
    );
  }

  /** Deviations in the order of the gains: u w q θ v p r φ, rotor speeds, inflows, down, right, heading. */
  #deviate(reference: ReferenceState): Float64Array {
    const s = this.#state;
    const at = (index: number) => s[index] as number;
    const { roll, pitch, yaw } = eulerAngles(s, bodyState.quaternion);
    const [u, v, w] = reference.velocity;
    const d = this.#deviation;
    const q = reference.pitchRate * Math.cos(reference.roll);
    const r = -reference.pitchRate * Math.sin(reference.roll);
    d.set([at(0) - u, at(2) - w, at(4) - q, pitch - reference.pitch, at(1) - v, at(3), at(5) - r, roll - reference.roll]);
    const rotors = this.#plan.rotors.length;
    for (let i = 0; i < rotors; i++) {
      d[8 + i] = at(this.#dynamics.rotorAt(i)) - (reference.rotorRates[i] as number);
      d[8 + rotors + i] = at(this.#dynamics.rotorAt(i) + 1) - (reference.inducedVelocities[i] as number);
    }
    d.set([at(bodyState.down), at(bodyState.east), yaw], 8 + 2 * rotors);
    return d;
  }

  /** Entries of the gain between the two designs around a time that belong to the clutch as it is. */
  #gainAt(time: number): (index: number) => number {
    const own = this.#gains.filter(({ open }) => open === this.#isOpen);
    let i = 0;
    while (i < own.length - 2 && (own[i + 1] as Gain).time <= time) i += 1;
    const [a, b] = [own[i] as Gain, own[i + 1] ?? (own[i] as Gain)];
    const share = b.time > a.time ? Math.min(1, Math.max(0, (time - a.time) / (b.time - a.time))) : 0;
    return (index) => (a.gain[index] as number) + share * ((b.gain[index] as number) - (a.gain[index] as number));
  }

  #lost(): string | undefined {
    const s = this.#state;
    if (!s.every(Number.isFinite)) return "the motion ran away beyond all numbers";
    if (Math.abs(s[bodyState.down] as number) > lostHeight) return `it left its height by more than ${lostHeight} m`;
    if (Math.hypot(s[3] as number, s[4] as number, s[5] as number) > lostTurn) return "it tumbled";
    return undefined;
  }

  #sample(time: number, phase: TransitionPhase, reference: ReferenceState): TransitionSample {
    const dynamics = this.#dynamics;
    const s = this.#state;
    const loads = dynamics.loads as AirframeLoads;
    const { roll, pitch, yaw } = eulerAngles(s, bodyState.quaternion);
    const driveTorques = [...dynamics.torques];
    return {
      time,
      phase,
      airspeed: this.#along(),
      wantedAirspeed: reference.airspeed,
      height: -(s[bodyState.down] as number),
      distance: s[bodyState.north] as number,
      aside: s[bodyState.east] as number,
      pitch,
      roll,
      heading: yaw,
      clutch: this.#isOpen ? "open" : (driveTorques[0] ?? 0) > 0 ? "closed" : "overrunning",
      rotorRates: this.#plan.rotors.map((_, i) => s[dynamics.rotorAt(i)] as number),
      driveTorques,
      controls: Float64Array.from(dynamics.controls),
      loads,
      kinetic: energyState(dynamics, s).kinetic,
    };
  }
}
