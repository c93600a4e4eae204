import { standardGravity } from "../aircraft/index.ts";
import { type Airframe, rotorStateWidth } from "../airframe/index.ts";
import { type FullTrimmed, runningLines } from "../equilibrium/index.ts";
import { writeQuaternion } from "./attitude.ts";
import { FlightDynamics } from "./flight-dynamics.ts";
import { bodyState } from "./rigid-body.ts";
import type { RotorDrive } from "./rotor-drive.ts";

/** A trimmed flight, ready to move. */
export interface MovingFlight {
  readonly dynamics: FlightDynamics;
  /** The trim as a state of the equations of motion. */
  readonly state: Float64Array;
}

/** Of a governor whose file does not say one [s]: common practice for small electric drives. */
const usualTimeConstant = 0.6;

/**
 * The equations of motion at a trim: heading north over the place 0, in still air. Rotors that are driven are governed at the trimmed speed, up to
 * the short-time power of their motors less the losses at the trim; the others turn free.
 */
export function movingFlight(airframe: Airframe, trimmed: FullTrimmed, flapTolerance?: number): MovingFlight {
  const { evaluation, point } = trimmed;
  const dynamics = new FlightDynamics(airframe, standardGravity, flapTolerance);
  dynamics.controls.set(evaluation.controls);
  dynamics.rotorStates.set(evaluation.rotorStates);
  dynamics.running = [...runningLines(airframe, point)];
  dynamics.drives = airframe.rotors.map((_, rotor) => rotorDrive(airframe, trimmed, rotor, dynamics.running));
  const state = new Float64Array(dynamics.size);
  state.set(evaluation.flight.velocity, bodyState.u);
  state.set(evaluation.flight.rates, bodyState.p);
  writeQuaternion({ roll: evaluation.roll, pitch: evaluation.pitch, yaw: 0 }, state, bodyState.quaternion);
  airframe.rotors.forEach(({ part }, i) => {
    const tipSpeed = evaluation.rotorStates[i * rotorStateWidth] as number;
    const at = dynamics.rotorAt(i);
    const drive = dynamics.drives[i] as RotorDrive;
    state[at] = tipSpeed / part.radius;
    state[at + 1] = (evaluation.rotorStates[i * rotorStateWidth + 1] as number) * tipSpeed;
    state[at + 2] = drive.kind === "governed" ? drive.torque : 0;
  });
  return { dynamics, state };
}

/** How a rotor is turned at a trim. */
function rotorDrive(airframe: Airframe, { evaluation }: FullTrimmed, rotor: number, running: readonly boolean[]): RotorDrive {
  if (!airframe.isDriven(rotor, running)) return { kind: "torque", torque: 0 };
  const { part } = airframe.rotors[rotor] as Airframe["rotors"][number];
  const line = airframe.lines[airframe.rotorLine(rotor)] as Airframe["lines"][number];
  const power = evaluation.loads.drives.find(({ id }) => id === line.id);
  const definition = airframe.controls[airframe.tipSpeedControl(rotor)]?.definition;
  const timeConstant = definition?.what === "tip-speed" ? definition.timeConstant : undefined;
  const electric = line.motors.reduce((sum, { motor }) => sum + (motor.shortPower ?? Number.POSITIVE_INFINITY), 0);
  const efficiency = power && power.electricPower > 0 && power.shaftPower > 0 ? power.shaftPower / power.electricPower : 1;
  return {
    kind: "governed",
    rate: (evaluation.rotorStates[rotor * rotorStateWidth] as number) / part.radius,
    timeConstant: timeConstant ?? usualTimeConstant,
    largestPower: line.motors.length > 0 ? electric * efficiency : Number.POSITIVE_INFINITY,
    torque: evaluation.loads.rotors[rotor]?.torque ?? 0,
  };
}
