import type { EulerAngles } from "./attitude.ts";
import type { StateKind } from "./linear-motion.ts";
import type { Linearisation } from "./linearisation.ts";
import type { MovingControl } from "./moving-aircraft.ts";
import { quadraticRegulator } from "./quadratic-regulator.ts";

/**
 * Deviations that count as one: our own choice, moderate so that no aircraft is flattered by its autopilot. Inflow is not
 * measured in flight and does not count; the speed of a rotor is held by its governor, or by the air where it turns free.
 */
const stateScales: Readonly<Record<StateKind, number>> = {
  speed: 0.7,
  heave: 0.7,
  sideslip: 0.7,
  "pitch-rate": 0.5,
  "roll-rate": 0.5,
  "yaw-rate": 0.5,
  pitch: 0.07,
  roll: 0.07,
  "rotor-speed": 4,
  inflow: Number.POSITIVE_INFINITY,
};

/** Of what stands beside the linearised states: down, to the right of the course [m], heading [rad]. */
const courseScales = [0.5, 1.5, 0.1] as const;
export const courseStates = courseScales.length;

/** How far ahead a control's rate counts as its authority [s]. */
const authorityTime = 0.2;
/** Time between two actions that the gain is made for [s]. */
const actionTime = 0.02;

/**
 * Gain of a path-following controller about a flight (controls by states, row-major): linearised states first, then down, to the right,
 * heading. Undefined where no feedback keeps the motion bounded.
 *
 * @param flight attitude and velocity of the body over ground [m/s] in that flight
 * @param usable which controls it may move
 * @derivation kinematics of place and heading beside the linear motion; least sum of squares
 */
export function trackingGain(
  linear: Linearisation,
  controls: readonly MovingControl[],
  usable: readonly boolean[],
  flight: { readonly attitude: EulerAngles; readonly velocity: readonly [number, number, number] },
): Float64Array | undefined {
  const n = linear.states.length;
  const size = n + courseStates;
  const matrix = new Float64Array(size * size);
  for (let i = 0; i < n; i++) matrix.set(linear.matrix.subarray(i * n, (i + 1) * n), i * size);
  const column = (id: string) => linear.states.findIndex((state) => state.id === id);
  const put = (row: number, id: string, value: number) => {
    matrix[(n + row) * size + column(id)] = value;
  };
  const { roll, pitch } = flight.attitude;
  const [u, v, w] = flight.velocity;
  const [st, ct, sp, cp] = [Math.sin(pitch), Math.cos(pitch), Math.sin(roll), Math.cos(roll)];
  put(0, "u", -st);
  put(0, "v", sp * ct);
  put(0, "w", cp * ct);
  put(0, "theta", -ct * u - st * (sp * v + cp * w));
  put(0, "phi", ct * (cp * v - sp * w));
  put(1, "v", cp);
  put(1, "w", -sp);
  put(1, "phi", -sp * v - cp * w);
  matrix[(n + 1) * size + n + 2] = ct * u + st * (sp * v + cp * w);
  put(2, "q", sp / ct);
  put(2, "r", cp / ct);
  const effects = new Float64Array(size * controls.length);
  effects.set(linear.controls);
  return quadraticRegulator({
    matrix,
    controls: effects,
    stateScale: [...linear.states.map(({ kind }) => stateScales[kind]), ...courseScales],
    controlScale: controls.map((control, i) => (usable[i] ? authority(control) : 0)),
    step: actionTime,
  });
}

/** Half the range of a control, or what its rate allows in a short time. */
function authority({ minimum, maximum, rate }: MovingControl): number {
  const range = (maximum - minimum) / 2;
  return rate === undefined ? range : Math.min(range, rate * authorityTime);
}
