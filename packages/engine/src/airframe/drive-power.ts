import type { DriveLine } from "../aircraft/index.ts";
import { type MotorState, motorState } from "../drivetrain/motor/index.ts";

/** How losses between pack and shafts are counted: by component, or by one constant efficiency per drive line, for comparison. */
export type LossModel = "component" | "constant";

/** What a drive line takes for what its shaft gives. */
export interface DrivePower {
  readonly id: string;
  readonly drives: string;
  /** At the rotor or propeller [W]. */
  readonly shaftPower: number;
  /** From the pack, all motors together [W]. */
  readonly electricPower: number;
  /** Of one of its motors. */
  readonly motor: MotorState;
  /** Of the motors [rad/s]. */
  readonly motorRate: number;
}

const atRest: MotorState = { electricPower: 0, current: 0, voltage: 0 };

/** A drive line that stands still. @derivation not a formula */
export function restingDrive(line: DriveLine): DrivePower {
  return { id: line.id, drives: line.drives, shaftPower: 0, electricPower: 0, motor: atRest, motorRate: 0 };
}

/**
 * Electric power of a drive line from the power and rate of its shaft.
 *
 *     P_in = P_out (1 + p) + P_c   stage by stage towards the motors, which share it in equal parts
 *
 * Without motors the power at the last gear stands for electric power.
 *
 * @param shaftPower [W]
 * @param rotationRate of the shaft [rad/s]
 * @derivation power balance of gear stages
 */
export function drivePower(line: DriveLine, shaftPower: number, rotationRate: number, losses: LossModel): DrivePower {
  let power = shaftPower;
  let motorRate = rotationRate;
  let constantLoss = 0;
  for (let i = line.gearStages.length - 1; i >= 0; i--) {
    const stage = line.gearStages[i] as DriveLine["gearStages"][number];
    power = power + stage.proportionalLoss * Math.abs(power) + stage.constantLoss;
    motorRate *= stage.ratio;
    constantLoss += stage.constantLoss;
  }
  const base = { id: line.id, drives: line.drives, shaftPower, motorRate };
  const count = line.motors.length;
  if (losses === "constant" && line.constantEfficiency !== undefined) {
    const electricPower = (shaftPower + constantLoss) / line.constantEfficiency;
    return { ...base, electricPower, motor: { electricPower: electricPower / Math.max(count, 1), current: 0, voltage: 0 } };
  }
  if (count === 0) return { ...base, electricPower: power, motor: { electricPower: power, current: 0, voltage: 0 } };
  let electricPower = 0;
  let first = atRest;
  line.motors.forEach(({ motor }, i) => {
    const state = motorState(motor, { power: power / count, rotationRate: motorRate });
    electricPower += state.electricPower;
    if (i === 0) first = state;
  });
  return { ...base, electricPower, motor: first };
}
