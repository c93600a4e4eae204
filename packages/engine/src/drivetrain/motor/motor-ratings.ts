import { lineMinimum } from "../../numerics/index.ts";
import { type MotorDefinition, noLoadCurrentAt, windingResistance } from "./motor-definition.ts";
import type { HeatingConditions } from "./motor-heat.ts";
import { fullRate, type MotorPoint, motorPoint } from "./motor-point.ts";
import { heating, type MotorThermal, steadyTemperature } from "./winding-heat.ts";

/** The largest steady or short power of a motor, and what keeps it from more. */
export interface MotorRating {
  readonly point: MotorPoint;
  readonly limitedBy: "temperature" | "current" | "voltage";
}

/** State at full duty with this current; its rate may come out below zero, which callers avoid. */
export function fullDutyPoint(motor: MotorDefinition, voltage: number, temperature: number, current: number): MotorPoint {
  const inner = motor.controller.dutyMaximum * voltage - current * windingResistance(motor, temperature);
  return motorPoint(motor, { voltage, temperature }, current, Math.max(0, motor.speedConstant * inner));
}

/** Current that holds the motor still at full duty [A]. */
export function stallCurrent(motor: MotorDefinition, voltage: number, temperature: number): number {
  return (motor.controller.dutyMaximum * voltage) / windingResistance(motor, temperature);
}

/** State without load behind the gear at full duty, or undefined where turning alone asks for more than there is. */
export function idlePoint(motor: MotorDefinition, voltage: number, temperature: number): MotorPoint | undefined {
  const stall = stallCurrent(motor, voltage, temperature);
  const torque = (current: number): number => fullDutyPoint(motor, voltage, temperature, current).torque;
  if (torque(stall) <= 0) return undefined;
  let [low, high] = [0, stall];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (torque(middle) > 0) high = middle;
    else low = middle;
  }
  return fullDutyPoint(motor, voltage, temperature, high);
}

/** The largest of a measure of states at full duty over current: a coarse march, then a line search around the best. */
export function largestAtFullDuty(
  motor: MotorDefinition,
  voltage: number,
  temperature: number,
  measure: (point: MotorPoint) => number,
): MotorPoint {
  const stall = stallCurrent(motor, voltage, temperature);
  const at = (share: number): MotorPoint => fullDutyPoint(motor, voltage, temperature, stall * share ** 3);
  const marks = 80;
  let best = 1;
  for (let i = 1; i <= marks; i++) if (measure(at(i / marks)) > measure(at(best / marks))) best = i;
  const cost = (share: number): number => -measure(at(share));
  const { x } = lineMinimum(cost, Math.max(0, (best - 1) / marks), Math.min(1, (best + 1) / marks), 1e-9);
  return at(x);
}

/**
 * The largest shaft power at full duty that a winding bears for ever, or null where it does not even bear turning.
 *
 * @param currentMaximum of the motor [A]; Infinity for none
 */
export function continuousRating(motor: MotorDefinition, thermal: MotorThermal, at: HeatingConditions, currentMaximum: number) {
  const limit = thermal.temperatureMaximum;
  const bears = (current: number): boolean => {
    const steady = steadyTemperature(thermal, at.ambient, (temperature) => heatOf(fullDutyPoint(motor, at.voltage, temperature, current)));
    return steady !== null && steady <= limit;
  };
  return rating(motor, at, limit, currentMaximum, bears);
}

/** The same for a short time [s] from the temperature at the start. */
export function shortRating(
  motor: MotorDefinition,
  thermal: MotorThermal,
  at: HeatingConditions,
  currentMaximum: number,
  duration: number,
) {
  const bears = (current: number): boolean =>
    heating(thermal, { ...at, duration }, (temperature) => heatOf(fullDutyPoint(motor, at.voltage, temperature, current))).timeToLimit ===
    null;
  return rating(motor, at, thermal.temperatureMaximum, currentMaximum, bears);
}

const heatOf = ({ copperLoss, noLoadLoss }: MotorPoint) => ({ copper: copperLoss, idle: noLoadLoss });

function rating(
  motor: MotorDefinition,
  at: HeatingConditions,
  limit: number,
  currentMaximum: number,
  bears: (current: number) => boolean,
): MotorRating | null {
  const peak = largestAtFullDuty(motor, at.voltage, limit, (point) => point.shaftPower).current;
  const idle = noLoadCurrentAt(motor.noLoadCurrent, fullRate(motor, at.voltage));
  const most = Math.min(peak, currentMaximum);
  const point = (current: number): MotorPoint => fullDutyPoint(motor, at.voltage, limit, current);
  if (bears(most)) return given(point(most), most === peak ? "voltage" : "current");
  let [low, high] = [Math.min(idle, most), most];
  if (!bears(low)) return null;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (bears(middle)) low = middle;
    else high = middle;
  }
  return given(point(low), "temperature");
}

function given(point: MotorPoint, limitedBy: MotorRating["limitedBy"]): MotorRating | null {
  return point.shaftPower > 0 ? { point, limitedBy } : null;
}
