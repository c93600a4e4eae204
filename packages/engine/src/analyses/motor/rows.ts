import {
  idlePoint,
  loadTorque,
  type MotorHeld,
  type MotorPoint,
  motorStates,
  type PointHeating,
  pointHeating,
  stallCurrent,
  usualRoot,
} from "../../drivetrain/motor/index.ts";
import type { MotorReading } from "./input.ts";
import type { MotorRow, MotorStateOutput } from "./output-schema.ts";
import type { MotorInputs, MotorPointInput } from "./schema.ts";

/** Temperature of the motor at the start [K]. */
export function startOf({ startTemperature, ambientTemperature }: MotorInputs): number {
  return startTemperature ?? ambientTemperature;
}

/** The points asked for, or those that stand in for none. */
export function askedPoints(reading: MotorReading, inputs: MotorInputs): readonly MotorPointInput[] {
  if (inputs.points.length > 0) return inputs.points;
  if (reading.load) return [{ throttle: 1 }];
  const { definition, currentMaximum } = reading;
  const stall = stallCurrent(definition, inputs.voltage, startOf(inputs));
  const idle = idlePoint(definition, inputs.voltage, startOf(inputs))?.current ?? 0;
  const most = Math.max(idle, Math.min(currentMaximum ?? stall / 2, stall));
  return Array.from({ length: 12 }, (_, i) => ({ current: idle + ((most - idle) * i) / 11 }));
}

/** Below this a shaft is at rest [rad/s]. */
const leastRate = 1e-6;

/** What a point holds, or why it cannot be put. */
function heldOf(point: MotorPointInput, reading: MotorReading): MotorHeld | string {
  const duty = (point.throttle ?? 1) * reading.definition.controller.dutyMaximum;
  const { current, torque, rotationRate, shaftPower } = point;
  if (current !== undefined) return { kind: "current", current, duty };
  if (rotationRate !== undefined && torque !== undefined) return { kind: "rate-and-torque", rotationRate, torque };
  if (rotationRate !== undefined && shaftPower !== undefined) {
    if (rotationRate > leastRate) return { kind: "rate-and-torque", rotationRate, torque: shaftPower / rotationRate };
    return shaftPower === 0 ? { kind: "rate-and-torque", rotationRate, torque: 0 } : "A shaft at rest passes no power.";
  }
  if (rotationRate !== undefined) return { kind: "rate", rotationRate, duty };
  if (torque !== undefined) return { kind: "load", torqueAt: () => torque, duty };
  const { load } = reading;
  if (!load) return "There is no load to meet.";
  return { kind: "load", torqueAt: (rate) => loadTorque(load, rate), duty };
}

/** A point at work, heated where there are thermal data. */
export function motorRow(point: MotorPointInput, reading: MotorReading, inputs: MotorInputs): MotorRow {
  const held = heldOf(point, reading);
  if (typeof held === "string") return unsolved(point, held);
  const { definition, thermal } = reading;
  const start = startOf(inputs);
  const finding = motorStates(definition, { voltage: inputs.voltage, temperature: start }, held);
  if (finding.problem !== undefined) return unsolved(point, finding.problem);
  const root = usualRoot(finding.roots);
  if (!root) return unsolved(point, "No equilibrium of motor and load.");
  const conditions = { voltage: inputs.voltage, ambient: inputs.ambientTemperature, start };
  const heat = thermal ? pointHeating(definition, thermal, conditions, held) : undefined;
  const otherStates = finding.roots
    .filter((other) => other !== root)
    .map(({ point: { rotationRate, torque, current }, stable }) => ({ rotationRate, torque, current, stable }));
  return { ...stateOutput(root.point), ...moreOutput(root.point), ...heatOutput(heat), otherStates, problem: null };
}

export function stateOutput(point: MotorPoint): MotorStateOutput {
  const { current, rotationRate, torque, shaftPower, electricPower, efficiency } = point;
  return { current, rotationRate, torque, shaftPower, electricPower, efficiency };
}

function moreOutput(point: MotorPoint) {
  const { duty, supplyCurrent, motorRotationRate, motorTorque, motorVoltage, electricalRate, mode, temperature } = point;
  const { copperLoss, noLoadLoss, controllerLoss, gearLoss } = point;
  return {
    duty,
    supplyCurrent,
    motorRotationRate,
    motorTorque,
    motorVoltage,
    electricalRate,
    copperLoss,
    noLoadLoss,
    controllerLoss,
    gearLoss,
    mode,
    windingTemperature: temperature,
  };
}

function heatOutput(heat: PointHeating | undefined) {
  return {
    steadyTemperature: heat?.steadyTemperature ?? null,
    timeToLimit: heat?.timeToLimit ?? null,
    heating: heat?.because ?? null,
    steady: heat?.steadyPoint ? stateOutput(heat.steadyPoint) : null,
    history: heat ? [...heat.samples] : [],
  };
}

function unsolved(point: MotorPointInput, problem: string): MotorRow {
  return {
    current: point.current ?? null,
    rotationRate: point.rotationRate ?? null,
    torque: point.torque ?? null,
    shaftPower: point.shaftPower ?? null,
    electricPower: null,
    efficiency: null,
    duty: null,
    supplyCurrent: null,
    motorRotationRate: null,
    motorTorque: null,
    motorVoltage: null,
    electricalRate: null,
    copperLoss: null,
    noLoadLoss: null,
    controllerLoss: null,
    gearLoss: null,
    mode: null,
    windingTemperature: null,
    ...heatOutput(undefined),
    otherStates: [],
    problem,
  };
}
