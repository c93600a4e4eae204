// Electric power of drive lines written out plainly, from the power of their shafts.
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";

export type DriveLine = AircraftDefinition["driveLines"][number];
type Motor = DriveLine["motors"][number]["motor"];

/** What one motor draws for a torque [N m] at a rate [rad/s]. */
export interface PlainMotor {
  readonly electric: number;
  readonly current: number;
  readonly voltage: number;
}

export function plainMotor(motor: Motor, torque: number, rate: number): PlainMotor {
  const current = torque * motor.speedConstant + (rate > 0 ? motor.noLoadCurrent : 0);
  const voltage = rate / motor.speedConstant + current * motor.resistance;
  return { electric: (voltage * current + motor.controllerConstantLoss) / (1 - motor.controllerProportionalLoss), current, voltage };
}

/** All motors of a line together, and one of them, for what its shaft passes [W] at a rate [rad/s]. */
export function plainDrive(line: DriveLine, shaftPower: number, rate: number): { readonly electric: number; readonly motor?: PlainMotor } {
  let power = shaftPower;
  let turning = rate;
  for (const stage of [...line.gearStages].reverse()) {
    power += Math.abs(power) * stage.proportionalLoss + stage.constantLoss;
    turning *= stage.ratio;
  }
  const first = line.motors[0];
  if (first === undefined) return { electric: power };
  const share = power / line.motors.length;
  const motor = plainMotor(first.motor, share / turning, turning);
  return { electric: motor.electric * line.motors.length, motor };
}
