import { Actuators } from "./actuators.ts";
import { type EulerAngles, eulerAngles } from "./attitude.ts";
import { type EnergyState, energyGap, energyState } from "./energy-balance.ts";
import { MultistepIntegrator } from "./multistep.ts";
import type { ReferenceController } from "./reference-controller.ts";
import { bodyState } from "./rigid-body.ts";
import type { MovingFlight } from "./trimmed-flight.ts";

/** One moment of a flight. */
export interface FlightSample {
  /** [s] */
  readonly time: number;
  /** Through the air, body axes [m/s]. */
  readonly airspeed: readonly [number, number, number];
  /** North, east, up, since the start [m]. */
  readonly place: readonly [number, number, number];
  /** Up over ground [m/s]. */
  readonly climbRate: number;
  readonly attitude: EulerAngles;
  readonly rates: readonly [number, number, number];
  /** Force of the air up along the body's z axis over weight [1]. */
  readonly loadFactor: number;
  /** [rad/s] */
  readonly rotorRates: readonly number[];
  readonly rotorThrusts: readonly number[];
  readonly rotorTorques: readonly number[];
  /** Of the drives on the shafts [N m]. */
  readonly driveTorques: readonly number[];
  readonly controls: readonly number[];
  readonly electricPower: number;
}

/** Something that happens at a time. */
export interface FlightEvent {
  readonly time: number;
  apply(simulation: FlightSimulation): void;
}

export interface SimulationOptions {
  readonly duration: number;
  /** Of control and record [s]. */
  readonly step: number;
  /** Steps of the integrator in each. @defaultValue 1 */
  readonly substeps?: number;
  readonly events?: readonly FlightEvent[];
  /** Attitude that is wanted over time; that of the start when absent. */
  readonly wanted?: (time: number) => EulerAngles;
  /** Steps from one record to the next. @defaultValue 1 */
  readonly recordEvery?: number;
}

/** How a flight ended. */
export interface FlightTrace {
  readonly samples: readonly FlightSample[];
  /** Why it was not followed to the end; undefined where it was. */
  readonly stopped: string | undefined;
  /** Energy missing over energy turned over [1]. */
  readonly energyGap: number;
  readonly energy: readonly [before: EnergyState, after: EnergyState];
  readonly evaluations: number;
  /** Moments at which the flapping balance was not met. */
  readonly flapMissed: number;
}

/** Beyond these a flight is no longer one that these models describe. */
const fastest = 150;
const fastestTurn = 20;
const slowestShare = 0.1;

/** Flies an aircraft in steps: controller, actuators, equations of motion; events on the way. */
export class FlightSimulation {
  readonly flight: MovingFlight;
  readonly actuators: Actuators;
  readonly controller: ReferenceController | undefined;
  readonly #integrator: MultistepIntegrator;
  time = 0;

  constructor(flight: MovingFlight, controller?: ReferenceController) {
    this.flight = flight;
    this.controller = controller;
    const { dynamics } = flight;
    this.actuators = new Actuators(dynamics.aircraft.controls, dynamics.controls);
    this.#integrator = new MultistepIntegrator(dynamics.size, dynamics.rates);
  }

  /** Something jumped: steps before no longer say what comes. */
  restart(): void {
    this.#integrator.restart();
    this.flight.dynamics.flap.restart();
  }

  run(options: SimulationOptions): FlightTrace {
    const { dynamics, state } = this.flight;
    const { step, substeps = 1, recordEvery = 1 } = options;
    const events = [...(options.events ?? [])].sort((a, b) => a.time - b.time);
    const start = eulerAngles(state, bodyState.quaternion);
    const rotorStart = dynamics.aircraft.rotors.map((_, i) => state[dynamics.rotorAt(i)] as number);
    const before = energyState(dynamics, state);
    const samples: FlightSample[] = [];
    const count = Math.round(options.duration / step);
    let stopped: string | undefined;
    for (let k = 0; k <= count; k++) {
      this.time = k * step;
      while (events[0] && events[0].time <= this.time + 1e-9) {
        events.shift()?.apply(this);
        this.restart();
      }
      this.#steer(options.wanted?.(this.time) ?? start, step);
      const recording = k % recordEvery === 0 || k === count;
      if (k < count)
        for (let j = 0; j < substeps; j++) this.#advance(this.time + (j * step) / substeps, step / substeps, j === 0 && recording, samples);
      else this.#sampleHere(samples);
      stopped = stopReason(this, rotorStart);
      if (stopped !== undefined) break;
    }
    const after = energyState(dynamics, state);
    return {
      samples,
      stopped,
      energyGap: energyGap(before, after),
      energy: [before, after],
      evaluations: this.#integrator.evaluations,
      flapMissed: dynamics.flap.missed,
    };
  }

  #steer(wanted: EulerAngles, step: number): void {
    const { dynamics, state } = this.flight;
    if (this.controller) {
      this.controller.act(
        eulerAngles(state, bodyState.quaternion),
        [state[3] as number, state[4] as number, state[5] as number],
        wanted,
        step,
      );
      this.actuators.move(this.controller.asked, step);
    }
    dynamics.controls.set(this.actuators.positions);
  }

  /** One step; the loads of its first evaluation are those of its beginning, and that is what is recorded. */
  #advance(time: number, step: number, recording: boolean, samples: FlightSample[]): void {
    const { state } = this.flight;
    if (!recording) {
      this.#integrator.advance(time, state, step);
      return;
    }
    this.#integrator.advance(time, state, step, () => samples.push(sampleOf(this, state, time)));
  }

  #sampleHere(samples: FlightSample[]): void {
    const { dynamics, state } = this.flight;
    dynamics.rates(this.time, state, new Float64Array(dynamics.size));
    samples.push(sampleOf(this, state, this.time));
  }
}

function sampleOf({ flight: { dynamics } }: FlightSimulation, state: Float64Array, time: number): FlightSample {
  const { loads, body, gravity } = dynamics;
  const airspeed = dynamics.airspeed(time, state);
  const m = dynamics.rotation;
  const [u, v, w] = [state[0] as number, state[1] as number, state[2] as number];
  const rotors = dynamics.aircraft.rotors.map((_, i) => i);
  return {
    time,
    airspeed,
    place: [state[bodyState.north] as number, state[bodyState.east] as number, -(state[bodyState.down] as number)],
    climbRate: -((m[6] as number) * u + (m[7] as number) * v + (m[8] as number) * w),
    attitude: eulerAngles(state, bodyState.quaternion),
    rates: [state[3] as number, state[4] as number, state[5] as number],
    loadFactor: -(loads?.force[2] ?? 0) / (body.mass * gravity),
    rotorRates: rotors.map((i) => state[dynamics.rotorAt(i)] as number),
    rotorThrusts: rotors.map((i) => loads?.rotors[i]?.thrust ?? 0),
    rotorTorques: rotors.map((i) => loads?.rotors[i]?.torque ?? 0),
    driveTorques: rotors.map((i) => dynamics.torques[i] as number),
    controls: [...dynamics.controls],
    electricPower: loads?.electricPower ?? 0,
  };
}

function stopReason({ flight: { dynamics, state } }: FlightSimulation, rotorStart: readonly number[]): string | undefined {
  let sum = 0;
  for (let i = 0; i < state.length; i++) sum += state[i] as number;
  if (!Number.isFinite(sum)) return "the motion ran away beyond all numbers";
  if (Math.hypot(state[0] as number, state[1] as number, state[2] as number) > fastest) return `it became faster than ${fastest} m/s`;
  if (Math.hypot(state[3] as number, state[4] as number, state[5] as number) > fastestTurn)
    return `it tumbled faster than ${fastestTurn} rad/s`;
  const slow = rotorStart.findIndex((rate, i) => (state[dynamics.rotorAt(i)] as number) < slowestShare * rate);
  return slow >= 0 ? "a rotor lost nine tenths of its speed" : undefined;
}
