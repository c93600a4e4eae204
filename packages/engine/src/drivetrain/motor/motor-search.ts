import { torqueOut } from "./gear-train.ts";
import { type MotorDefinition, noLoadCurrentAt, totalRatio, windingResistance } from "./motor-definition.ts";
import { currentForTorque, fullRate, type MotorConditions, type MotorPoint, motorPoint } from "./motor-point.ts";

/** An intersection of motor and load. */
export interface MotorRoot {
  readonly point: MotorPoint;
  /** A rate that is a little too high falls back. */
  readonly stable: boolean;
}

/** What is held: voltage at the motor's leads with one more number, or rate and torque of the last shaft. */
export type MotorHeld =
  | { readonly kind: "current"; readonly current: number; readonly duty: number }
  | { readonly kind: "rate"; readonly rotationRate: number; readonly duty: number }
  | { readonly kind: "load"; readonly torqueAt: (rotationRate: number) => number; readonly duty: number }
  | { readonly kind: "rate-and-torque"; readonly rotationRate: number; readonly torque: number };

export type MotorFinding =
  /** By falling rate. */
  { readonly roots: readonly MotorRoot[]; readonly problem?: never } | { readonly problem: string; readonly roots?: never };

const samples = 400;
/** How far above the rate without load a driving load is looked for. */
const overdriven = 3;

/** All states of a motor that agree with what is held. */
export function motorStates(motor: MotorDefinition, at: MotorConditions, held: MotorHeld): MotorFinding {
  const alone = (point: MotorPoint): MotorFinding => ({ roots: [{ point, stable: true }] });
  switch (held.kind) {
    case "current": {
      const rate = motor.speedConstant * (held.duty * at.voltage - held.current * windingResistance(motor, at.temperature));
      if (rate < 0) return { problem: stallWords(motor, at, held.duty, held.current) };
      return alone(motorPoint(motor, at, held.current, rate));
    }
    case "rate": {
      const rate = held.rotationRate * totalRatio(motor.gear);
      return alone(motorPoint(motor, at, currentAtRate(motor, at, held.duty, rate), rate));
    }
    case "rate-and-torque": {
      const rate = held.rotationRate * totalRatio(motor.gear);
      const point = motorPoint(motor, at, currentForTorque(motor, at.voltage, held.torque, rate), rate);
      const most = motor.controller.dutyMaximum;
      if (point.duty > most + 1e-12) return { problem: voltageWords(point.motorVoltage, most * at.voltage) };
      if (point.duty < -1e-12) return { problem: "The torque brakes more than the motor can with its leads shorted." };
      return alone(point);
    }
    case "load":
      return loadStates(motor, at, held);
  }
}

function currentAtRate(motor: MotorDefinition, at: MotorConditions, duty: number, motorRate: number): number {
  return (duty * at.voltage - motorRate / motor.speedConstant) / windingResistance(motor, at.temperature);
}

function loadStates(motor: MotorDefinition, at: MotorConditions, held: MotorHeld & { readonly kind: "load" }): MotorFinding {
  const full = fullRate(motor, at.voltage);
  const ratio = totalRatio(motor.gear);
  const surplus = (rate: number): number => {
    const current = currentAtRate(motor, at, held.duty, rate);
    const own = (current - noLoadCurrentAt(motor.noLoadCurrent, rate)) / motor.speedConstant;
    return torqueOut(motor.gear, own, rate, full) - held.torqueAt(rate / ratio);
  };
  const roots = crossings(surplus, held.duty * full);
  if (roots.length === 0) {
    const which = surplus(0) < 0 ? "at no rate does the motor give what the load asks for" : "the load drives beyond every rate looked at";
    return { problem: `No equilibrium of motor and load: ${which}.` };
  }
  return {
    roots: roots.toReversed().map(({ rate, falling }) => ({
      point: motorPoint(motor, at, currentAtRate(motor, at, held.duty, rate), rate),
      stable: falling,
    })),
  };
}

/** Where a function crosses zero, by rising place: a march over the usual range and one above it, then halving. */
function crossings(f: (rate: number) => number, idle: number): readonly { readonly rate: number; readonly falling: boolean }[] {
  const found: { rate: number; falling: boolean }[] = [];
  let low = 0;
  let atLow = f(0);
  for (let i = 1; i <= 2 * samples; i++) {
    const high = i <= samples ? (idle * i) / samples : idle * (1 + ((overdriven - 1) * (i - samples)) / samples);
    const atHigh = f(high);
    if (atLow > 0 !== atHigh > 0) found.push({ rate: halved(f, low, high, atLow > 0), falling: atLow > 0 });
    low = high;
    atLow = atHigh;
  }
  return found;
}

function halved(f: (rate: number) => number, from: number, to: number, positiveBelow: boolean): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0 === positiveBelow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function stallWords(motor: MotorDefinition, at: MotorConditions, duty: number, current: number): string {
  const most = (duty * at.voltage) / windingResistance(motor, at.temperature);
  return `${current.toPrecision(4)} A do not flow: at ${(duty * at.voltage).toPrecision(4)} V the motor stands still with ${most.toPrecision(4)} A.`;
}

function voltageWords(needed: number, available: number): string {
  return `This takes ${needed.toPrecision(4)} V at the motor; the controller can give ${available.toPrecision(4)} V.`;
}
