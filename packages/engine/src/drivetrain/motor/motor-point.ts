import { torqueIn, torqueOut } from "./gear-train.ts";
import { type MotorController, type MotorDefinition, noLoadCurrentAt, totalRatio, windingResistance } from "./motor-definition.ts";

/** Supply and winding as they are: what an operating point stands on. */
export interface MotorConditions {
  /** At the controller's input [V]. */
  readonly voltage: number;
  /** Of the winding [K]. */
  readonly temperature: number;
}

/** `generator`: the shaft drives and power goes back; `brake`: the shaft drives and the supply pays too. */
export type MotorMode = "motor" | "generator" | "brake";

/** A motor at work. Rate, torque and power are those of the last shaft, behind the gear. SI. */
export interface MotorPoint {
  readonly current: number;
  readonly rotationRate: number;
  readonly torque: number;
  readonly shaftPower: number;
  /** Drawn from the supply; negative where power goes back. */
  readonly electricPower: number;
  /** Power out over power in, gear and controller included; null where neither side gives. */
  readonly efficiency: number | null;
  readonly mode: MotorMode;
  readonly motorRotationRate: number;
  readonly motorTorque: number;
  readonly motorVoltage: number;
  readonly duty: number;
  readonly supplyCurrent: number;
  /** Motor's rate times pole pairs. */
  readonly electricalRate: number;
  readonly copperLoss: number;
  /** Iron, bearings and air: what turning alone takes. */
  readonly noLoadLoss: number;
  readonly controllerLoss: number;
  readonly gearLoss: number;
  readonly temperature: number;
}

/** Rate of the motor without load and resistance at the full supply voltage [rad/s]. */
export function fullRate(motor: MotorDefinition, voltage: number): number {
  return motor.speedConstant * voltage;
}

/**
 * Power drawn from the supply for a power at the motor's leads [W].
 *
 * @derivation the controller takes its constant part and a share of what goes into it, from whichever side that comes
 */
function controllerInput({ constantLoss, proportionalLoss }: MotorController, atMotor: number): number {
  const passed = atMotor + constantLoss;
  return passed >= 0 ? passed / (1 - proportionalLoss) : passed * (1 - proportionalLoss);
}

/**
 * Everything about a motor that carries a current [A] at a rate of its own shaft [rad/s].
 *
 *     U = ω/K + I R,   Q = (I − I₀)/K
 *
 * @source drela-2007, first-order model, unchecked
 */
export function motorPoint(motor: MotorDefinition, at: MotorConditions, current: number, motorRate: number): MotorPoint {
  const resistance = windingResistance(motor, at.temperature);
  const idle = noLoadCurrentAt(motor.noLoadCurrent, motorRate);
  const motorVoltage = motorRate / motor.speedConstant + current * resistance;
  const motorTorque = (current - idle) / motor.speedConstant;
  const torque = torqueOut(motor.gear, motorTorque, motorRate, fullRate(motor, at.voltage));
  const rotationRate = motorRate / totalRatio(motor.gear);
  const shaftPower = torque * rotationRate;
  const electricPower = controllerInput(motor.controller, motorVoltage * current);
  const mode = shaftPower >= 0 ? "motor" : electricPower < 0 ? "generator" : "brake";
  return {
    current,
    rotationRate,
    torque,
    shaftPower,
    electricPower,
    efficiency: efficiencyOf(mode, shaftPower, electricPower),
    mode,
    motorRotationRate: motorRate,
    motorTorque,
    motorVoltage,
    duty: motorVoltage / at.voltage,
    supplyCurrent: electricPower / at.voltage,
    electricalRate: (motorRate * motor.poleCount) / 2,
    copperLoss: current * current * resistance,
    noLoadLoss: (idle * motorRate) / motor.speedConstant,
    controllerLoss: electricPower - motorVoltage * current,
    gearLoss: motorTorque * motorRate - shaftPower,
    temperature: at.temperature,
  };
}

function efficiencyOf(mode: MotorMode, shaftPower: number, electricPower: number): number | null {
  if (mode === "generator") return electricPower / shaftPower;
  return mode === "motor" && electricPower > 0 ? shaftPower / electricPower : null;
}

/** The current at which a motor gives a torque of the last shaft [A], at a rate of its own [rad/s]. */
export function currentForTorque(motor: MotorDefinition, voltage: number, torque: number, motorRate: number): number {
  const own = torqueIn(motor.gear, torque, motorRate, fullRate(motor, voltage));
  return own * motor.speedConstant + noLoadCurrentAt(motor.noLoadCurrent, motorRate);
}
