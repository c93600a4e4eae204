import { eulerAngles, writeQuaternion } from "./attitude.ts";
import type { FlightDynamics } from "./flight-dynamics.ts";
import type { LinearState, StateKind } from "./linear-motion.ts";
import { bodyState } from "./rigid-body.ts";

/** A steady flight, linearised: rates of change per state and per control [SI]. */
export interface Linearisation {
  readonly states: readonly LinearState[];
  /** Row-major, states by states. */
  readonly matrix: Float64Array;
  /** Row-major, states by controls of the aircraft. */
  readonly controls: Float64Array;
  readonly controlCount: number;
  /** Rates of change in the flight itself, in the order of the states: zero where it is steady. */
  readonly rates: readonly number[];
}

/**
 * Half width of the central difference per kind [SI]: wide enough for the steps of section tables and, near hover, for the rounded start of the
 * inflow's distribution (a tenth of a metre per second); small against what bends.
 */
const halfWidths: Readonly<Record<StateKind, number>> = {
  speed: 0.3,
  heave: 0.3,
  sideslip: 0.3,
  "pitch-rate": 0.01,
  "roll-rate": 0.01,
  "yaw-rate": 0.01,
  pitch: 0.002,
  roll: 0.002,
  "rotor-speed": 0.2,
  inflow: 0.02,
};

/** Half width for a control, over its range [1]. */
const controlWidth = 0.002;

const bodyStates: readonly LinearState[] = [
  { id: "u", kind: "speed" },
  { id: "w", kind: "heave" },
  { id: "q", kind: "pitch-rate" },
  { id: "theta", kind: "pitch" },
  { id: "v", kind: "sideslip" },
  { id: "p", kind: "roll-rate" },
  { id: "r", kind: "yaw-rate" },
  { id: "phi", kind: "roll" },
];

/** Where the body's states stand in the equations of motion; −1 for the two angles. */
const places = [0, 2, 4, -1, 1, 3, 5, -1] as const;

/**
 * Linear motion about a state of the equations of motion by central differences: speeds and rates in body axes, pitch and roll,
 * then speed and induced velocity of every rotor. Controls stand still, torques of drives follow their law; a governor's integral does not move.
 * Heading and place take no part. Flapping follows at once.
 *
 * @param scale of all half widths; two calls with different ones say how far the answer can be trusted
 * @derivation (f(x + h) − f(x − h))/2h, error of second order in h
 */
export function linearise(dynamics: FlightDynamics, state: Float64Array, scale = 1): Linearisation {
  const rotors = dynamics.aircraft.rotors.map((_, i) => i);
  const states = [
    ...bodyStates,
    ...rotors.map((i): LinearState => ({ id: `rotor-speed-${i + 1}`, kind: "rotor-speed" })),
    ...rotors.map((i): LinearState => ({ id: `inflow-${i + 1}`, kind: "inflow" })),
  ];
  const n = states.length;
  const at = (moved: Float64Array) => reducedRates(dynamics, moved);
  const rates = at(state);
  const matrix = new Float64Array(n * n);
  states.forEach(({ kind }, j) => {
    const half = halfWidths[kind] * scale;
    const up = at(displaced(dynamics, state, j, half));
    const down = at(displaced(dynamics, state, j, -half));
    for (let i = 0; i < n; i++) matrix[i * n + j] = ((up[i] as number) - (down[i] as number)) / (2 * half);
  });
  const controls = controlSlopes(dynamics, scale, () => at(state), n);
  return { states, matrix, controls, controlCount: dynamics.controls.length, rates };
}

function controlSlopes(dynamics: FlightDynamics, scale: number, rates: () => readonly number[], n: number): Float64Array {
  const list = dynamics.aircraft.controls;
  const slopes = new Float64Array(n * list.length);
  list.forEach(({ minimum, maximum }, j) => {
    const half = Math.max(maximum - minimum, 1e-6) * controlWidth * scale;
    const held = dynamics.controls[j] as number;
    dynamics.controls[j] = held + half;
    const up = rates();
    dynamics.controls[j] = held - half;
    const down = rates();
    dynamics.controls[j] = held;
    for (let i = 0; i < n; i++) slopes[i * list.length + j] = ((up[i] as number) - (down[i] as number)) / (2 * half);
  });
  return slopes;
}

/** A copy of the state with the j-th of the reduced states moved. */
function displaced(dynamics: FlightDynamics, state: Float64Array, j: number, by: number): Float64Array {
  const moved = Float64Array.from(state);
  if (j < places.length) {
    const place = places[j] as number;
    if (place >= 0) {
      moved[place] = (moved[place] as number) + by;
      return moved;
    }
    const { roll, pitch, yaw } = eulerAngles(state, bodyState.quaternion);
    const turned = j === 3 ? { roll, pitch: pitch + by, yaw } : { roll: roll + by, pitch, yaw };
    writeQuaternion(turned, moved, bodyState.quaternion);
    return moved;
  }
  const count = dynamics.aircraft.rotors.length;
  const rotor = (j - places.length) % count;
  const place = dynamics.rotorAt(rotor) + (j - places.length < count ? 0 : 1);
  moved[place] = (moved[place] as number) + by;
  return moved;
}

/** Rates of the reduced states. */
function reducedRates(dynamics: FlightDynamics, state: Float64Array): readonly number[] {
  const rate = new Float64Array(dynamics.size);
  // Differences are taken between unrelated states: no flapping of one is a hint for the next.
  dynamics.flap.restart();
  dynamics.rates(0, state, rate);
  const [p, q, r] = [state[3] as number, state[4] as number, state[5] as number];
  const { roll, pitch } = eulerAngles(state, bodyState.quaternion);
  const pitching = q * Math.cos(roll) - r * Math.sin(roll);
  const rolling = p + Math.tan(pitch) * (q * Math.sin(roll) + r * Math.cos(roll));
  const count = dynamics.aircraft.rotors.length;
  const own = (offset: number) => Array.from({ length: count }, (_, i) => rate[dynamics.rotorAt(i) + offset] as number);
  const [a, b, c, d, e, f] = rate as unknown as readonly number[] as [number, number, number, number, number, number];
  return [a, c, e, pitching, b, d, f, rolling, ...own(0), ...own(1)];
}
