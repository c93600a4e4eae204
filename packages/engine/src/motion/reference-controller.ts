import { solveLinearInPlace } from "../numerics/index.ts";
import type { EulerAngles } from "./attitude.ts";
import type { Linearisation } from "./linearisation.ts";
import type { MovingControl } from "./moving-aircraft.ts";

/** Gains of the reference controller: stiffness as a frequency, damping as its share of critical. */
export interface ControllerGains {
  /** Of roll and pitch [rad/s]. */
  readonly attitude: number;
  /** How fast a lasting error of attitude is taken away [1/s]. */
  readonly integral: number;
  /** Of heading [rad/s]. */
  readonly heading: number;
  /** [1] */
  readonly damping: number;
}

/** Moderate, so that no aircraft is flattered by its autopilot: common practice for small rotorcraft. */
export const referenceGains: ControllerGains = { attitude: 3, integral: 0.5, heading: 1, damping: 0.8 };

/** Largest error of attitude that the integral stands for [rad]: it does not wind up beyond. */
const mostIntegral = 0.35;

/** How far ahead a control's rate counts as its authority [s]. */
const authorityTime = 0.1;

/** Rows of roll, pitch and yaw acceleration in a linearisation. */
const rows = [5, 2, 6] as const;

/**
 * Attitude hold with integral and rate damping, the same for every aircraft: wanted accelerations about the three axes are given to the controls by the
 * linearised effect of each, shares by the square of what each can do within a tenth of a second. Speed of rotors is the governors' business; height
 * and airspeed are not held.
 *
 *     p' = −ω² (φ − φ₀ + k ∫(φ − φ₀) dt) − 2 ζ ω p      and so for pitch; heading without the integral
 *     Δu = W Bᵀ (B W Bᵀ)⁻¹ a
 *
 * @derivation least sum of (Δu over authority)² with B Δu = a
 */
export class ReferenceController {
  readonly #gains: ControllerGains;
  readonly #trim: Float64Array;
  /** Controls by axes, row-major. */
  readonly #allocation: Float64Array;
  readonly #sums = { roll: 0, pitch: 0 };
  /** Asked positions of all controls, SI. */
  readonly asked: Float64Array;

  /** @param usable which controls it may move */
  constructor(
    linear: Linearisation,
    controls: readonly MovingControl[],
    usable: readonly boolean[],
    trim: Float64Array,
    gains: ControllerGains = referenceGains,
  ) {
    this.#gains = gains;
    this.#trim = Float64Array.from(trim);
    this.asked = Float64Array.from(trim);
    this.#allocation = allocationOf(linear, controls, usable);
  }

  /** Undeflected positions: moves them for what follows, by a schedule or a manoeuvre. */
  setTrim(control: number, position: number): void {
    this.#trim[control] = position;
  }

  /** Writes what is asked of the controls for an attitude and rates when another attitude is wanted; `step` since the last time [s]. */
  act(now: EulerAngles, rates: readonly [number, number, number], wanted: EulerAngles, step: number): void {
    const { attitude, integral, heading, damping } = this.#gains;
    const summed = (sum: number, error: number) => Math.min(Math.max(sum + integral * error * step, -mostIntegral), mostIntegral);
    this.#sums.roll = summed(this.#sums.roll, now.roll - wanted.roll);
    this.#sums.pitch = summed(this.#sums.pitch, now.pitch - wanted.pitch);
    const acceleration = [
      -attitude * attitude * (now.roll - wanted.roll + this.#sums.roll) - 2 * damping * attitude * rates[0],
      -attitude * attitude * (now.pitch - wanted.pitch + this.#sums.pitch) - 2 * damping * attitude * rates[1],
      -heading * heading * wrapped(now.yaw - wanted.yaw) - 2 * damping * heading * rates[2],
    ];
    for (let i = 0; i < this.asked.length; i++) {
      let change = 0;
      for (let k = 0; k < 3; k++) change += (this.#allocation[i * 3 + k] as number) * (acceleration[k] as number);
      this.asked[i] = (this.#trim[i] as number) + change;
    }
  }
}

function wrapped(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

function allocationOf(linear: Linearisation, controls: readonly MovingControl[], usable: readonly boolean[]): Float64Array {
  const n = controls.length;
  const weight = controls.map(({ minimum, maximum, rate }, i) => {
    const range = (maximum - minimum) / 2;
    return usable[i] ? Math.min(range, rate === undefined ? range : rate * authorityTime) ** 2 : 0;
  });
  const effect = (k: number, i: number) => linear.controls[(rows[k] as number) * n + i] as number;
  const allocation = new Float64Array(n * 3);
  for (let axis = 0; axis < 3; axis++) {
    const matrix = new Float64Array(9);
    for (let k = 0; k < 3; k++)
      for (let l = 0; l < 3; l++)
        for (let i = 0; i < n; i++) matrix[k * 3 + l] = (matrix[k * 3 + l] as number) + effect(k, i) * (weight[i] as number) * effect(l, i);
    // An axis that nothing moves gets nothing, and does not spoil the others.
    for (let k = 0; k < 3; k++) if (!((matrix[k * 3 + k] as number) > 1e-9)) matrix[k * 3 + k] = 1;
    const solution = new Float64Array(3);
    solution[axis] = 1;
    if (!solveLinearInPlace(matrix, solution, 3)) continue;
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let k = 0; k < 3; k++) sum += effect(k, i) * (solution[k] as number);
      allocation[i * 3 + axis] = (weight[i] as number) * sum;
    }
  }
  return allocation;
}
