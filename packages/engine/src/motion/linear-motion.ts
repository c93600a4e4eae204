/** What a state of the linearised motion is; names of modes and the split of the motion follow from it. */
export type StateKind =
  | "speed"
  | "heave"
  | "pitch-rate"
  | "pitch"
  | "sideslip"
  | "roll-rate"
  | "yaw-rate"
  | "roll"
  | "rotor-speed"
  | "inflow";

export interface LinearState {
  /** Unique within the system. */
  readonly id: string;
  readonly kind: StateKind;
}

/** Small motion about a steady flight: the rate of change of the states is `matrix` times the states. */
export interface LinearMotion {
  readonly states: readonly LinearState[];
  /** Row-major, as many rows as states [SI of state over SI of state and second]. */
  readonly matrix: Float64Array;
}

/** Which part of the motion a mode belongs to. `coupled`: neither has two thirds of it. */
export type ModeGroup = "longitudinal" | "lateral" | "rotor" | "coupled";

/** One way in which the aircraft moves by itself. */
export interface Mode {
  readonly name: string;
  readonly group: ModeGroup;
  /** Growth rate [1/s]; negative dies away. */
  readonly real: number;
  /** Circular frequency of the oscillation [rad/s]; 0 where there is none. One mode stands for both of a pair. */
  readonly imaginary: number;
  /** Time until a disturbance has halved [s]; null where it does not die away. */
  readonly timeToHalf: number | null;
  /** Time until it has doubled [s]; null where it does not grow. */
  readonly timeToDouble: number | null;
  /** Of an oscillation [s]. */
  readonly period: number | null;
  /** Share of critical damping of an oscillation [1]; negative where it grows. */
  readonly damping: number | null;
  /** Undamped circular frequency [rad/s]. */
  readonly naturalFrequency: number;
  /** Share of every state in the mode, adding up to 1, whatever the units of the states; null where modes cannot be told apart. */
  readonly participation: readonly number[] | null;
}
