import type { AirframeLoads } from "../airframe/index.ts";
import { type FullTrimmer, runningLines } from "../equilibrium/index.ts";
import { Actuators } from "./actuators.ts";
import { eulerAngles } from "./attitude.ts";
import { type EnergyState, energyGap, energyState } from "./energy-balance.ts";
import type { FlightDynamics } from "./flight-dynamics.ts";
import { rotorStateCount } from "./moving-aircraft.ts";
import { MultistepIntegrator } from "./multistep.ts";
import { bodyState } from "./rigid-body.ts";
import type { RotorDrive } from "./rotor-drive.ts";
import { courseStates } from "./tracking-gain.ts";
import { gainAt, gainsAlong, isOpen, type ScheduledGain } from "./transition-gains.ts";
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
  /** Tilt of every disc against its shaft [rad]. */
  readonly flapping: readonly number[];
  readonly controls: Float64Array;
  readonly loads: AirframeLoads;
  /** Of the trims of the reference at this moment [W]. */
  readonly trimmedPower: number;
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
/** Torque below which the clutch counts as free, of that in hover [1], and how long it is waited for [s]. */
const freeShare = 0.01;
const longestWait = 10;
/** In which a governor that takes over leaves the rotor's speed for the reference's [s]. */
const takeOverTime = 1;
/** So far the controller moves a collective from the reference's [rad]: beyond the stall more of it is less thrust. */
const collectiveReach = (2.5 * Math.PI) / 180;
/** Beyond these the reference is lost. */
const lostHeight = 100;
const lostTurn = 6;

/**
 * Flies a transition: six degrees of freedom, rotor speed, inflow lag, actuators with their rates, governor and one-way clutch. The reference
 * controller puts out the controls of the reference and what a regulator of least squares makes of the deviations from it. The
 * clutch opens once the torque has gone; closing, the motor is taken to turn with the shaft.
 *
 * @throws what `cancelled` throws, which is asked ten times in a second of flight
 */
export function flyTransition(
  trimmer: FullTrimmer,
  plan: TransitionPlan,
  cancelled: () => void = () => {},
): TransitionTrace | { readonly kind: "no-gain"; readonly airspeed: number } {
  const gains = gainsAlong(trimmer, plan);
  if (!Array.isArray(gains)) return gains;
  return new TransitionFlight(trimmer, plan, gains).run(cancelled);
}

/** Of the first rotor [N m]. */
function torqueOf({ trimmed }: PlanKnot): number {
  return trimmed.evaluation.loads.rotors[0]?.torque ?? 0;
}

class TransitionFlight {
  readonly #plan: TransitionPlan;
  readonly #gains: readonly ScheduledGain[];
  readonly #dynamics: FlightDynamics;
  readonly #state: Float64Array;
  readonly #actuators: Actuators;
  readonly #integrator: MultistepIntegrator;
  /** Drives and running lines with the clutch closed and open. */
  readonly #closed: { readonly drives: readonly RotorDrive[]; readonly lines: boolean[] };
  readonly #open: { readonly drives: readonly RotorDrive[]; readonly lines: boolean[] };
  readonly #collectives: readonly number[];
  readonly #deviation: Float64Array;
  readonly #asked: Float64Array;
  readonly #freeTorque: number;
  #isOpen: boolean;
  #switched: TransitionTrace["switched"];
  /** Rotor speeds less those of the reference when the clutch closed [rad/s]. */
  #surplus: readonly number[] = [];

  constructor(trimmer: FullTrimmer, plan: TransitionPlan, gains: readonly ScheduledGain[]) {
    this.#plan = plan;
    this.#gains = gains;
    const first = plan.knots[0] as PlanKnot;
    const { dynamics, state } = movingFlight(trimmer.airframe, first.trimmed);
    this.#dynamics = dynamics;
    this.#state = state;
    this.#isOpen = isOpen(first);
    const sideOf = (open: boolean) => {
      // The hardest driven one: what the motor can give is judged by its losses there.
      const side = plan.knots.filter((knot) => isOpen(knot) === open).sort((a, b) => torqueOf(b) - torqueOf(a));
      const { trimmed } = side[0] as PlanKnot;
      return { drives: movingFlight(trimmer.airframe, trimmed).dynamics.drives, lines: [...runningLines(trimmer.airframe, trimmed.point)] };
    };
    this.#closed = sideOf(false);
    this.#open = sideOf(true);
    this.#actuators = new Actuators(dynamics.aircraft.controls, dynamics.controls);
    this.#integrator = new MultistepIntegrator(dynamics.size, dynamics.rates);
    const rotors = plan.rotors.length;
    this.#collectives = plan.rotors.map((_, i) => trimmer.airframe.collectiveControl(i));
    this.#deviation = new Float64Array(8 + 2 * rotors + courseStates);
    this.#asked = new Float64Array(dynamics.controls.length);
    this.#freeTorque = freeShare * Math.max(...plan.knots.map(torqueOf));
  }

  run(cancelled: () => void): TransitionTrace {
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
      const record = () => {
        cancelled();
        samples.push(this.#sample(time, phase, reference.state));
      };
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
      this.#state[this.#dynamics.rotorAt(i) + 2] = 0;
    });
    this.#switched = { time, torque, airspeed: this.#along() };
    const wanted = referenceAt(this.#plan, this.#plan.switchTime).state.rotorRates;
    this.#surplus = wanted.map((rate, i) => (this.#isOpen ? 0 : (this.#state[this.#dynamics.rotorAt(i)] as number) - rate));
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
    const gain = gainAt(this.#gains, this.#isOpen, planTime);
    const n = deviation.length;
    for (let i = 0; i < this.#asked.length; i++) {
      let change = 0;
      for (let j = 0; j < n; j++) change -= gain(i * n + j) * (deviation[j] as number);
      const most = this.#collectives.includes(i) ? collectiveReach : Number.POSITIVE_INFINITY;
      this.#asked[i] = (reference.controls[i] as number) + Math.min(most, Math.max(-most, change));
    }
    this.#actuators.move(this.#asked, step);
    this.#dynamics.controls.set(this.#actuators.positions);
    this.#dynamics.drives = this.#dynamics.drives.map((drive, i) =>
      drive.kind === "governed" ? { ...drive, rate: (reference.rotorRates[i] as number) + this.#surplusAt(i, planTime) } : drive,
    );
  }

  /** A governor takes over at the speed that the rotor has, and lets it go to that of the reference. */
  #surplusAt(rotor: number, planTime: number): number {
    return (this.#surplus[rotor] ?? 0) * Math.exp(-Math.max(0, planTime - this.#plan.switchTime) / takeOverTime);
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
      flapping: this.#plan.rotors.map((_, i) =>
        Math.hypot(dynamics.rotorStates[i * rotorStateCount + 2] as number, dynamics.rotorStates[i * rotorStateCount + 3] as number),
      ),
      controls: Float64Array.from(dynamics.controls),
      loads,
      trimmedPower: reference.electricPower,
    };
  }
}
