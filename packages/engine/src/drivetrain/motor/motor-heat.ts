import { piecewiseLinear } from "../../numerics/index.ts";
import { type MotorDefinition, windingResistance } from "./motor-definition.ts";
import { type MotorPoint, motorPoint } from "./motor-point.ts";
import { type MotorFinding, type MotorHeld, motorStates } from "./motor-search.ts";
import {
  type HeatAt,
  type HeatingSample,
  heating,
  type MotorHeat,
  type MotorThermal,
  slowestTime,
  steadyTemperature,
} from "./winding-heat.ts";

/** What an operating point does to the winding. */
export interface PointHeating {
  /** [K]; null where there is none. */
  readonly steadyTemperature: number | null;
  /** The point with the winding at that temperature, where the motor may stay there. */
  readonly steadyPoint: MotorPoint | null;
  /** From the start to the limit [s]; null means never. */
  readonly timeToLimit: number | null;
  /** Why there is no steady temperature, or no time to the limit. */
  readonly because: string;
  readonly samples: readonly HeatingSample[];
}

export interface HeatingConditions {
  readonly voltage: number;
  readonly ambient: number;
  readonly start: number;
}

/** So many time constants are as good as for ever. */
const forEver = 30;
const heatNodes = 49;

/** Heating of a motor that holds a point, the current following the resistance where the voltage is held. */
export function pointHeating(motor: MotorDefinition, thermal: MotorThermal, at: HeatingConditions, held: MotorHeld): PointHeating {
  const stateAt = (temperature: number): MotorPoint | undefined => usual(motorStates(motor, { voltage: at.voltage, temperature }, held));
  const cold = stateAt(at.start);
  if (!cold) throw new Error("a point without state has no heating");
  const heatAt: HeatAt = (temperature) => heatOf(motor, at.voltage, temperature, held, stateAt, cold);
  const steady = steadyTemperature(thermal, at.ambient, heatAt);
  const limit = thermal.temperatureMaximum;
  const duration = forEver * slowestTime(thermal);
  const reading = held.kind === "load" ? tabulated(heatAt, Math.min(at.start, at.ambient), Math.max(limit, at.start)) : heatAt;
  const { timeToLimit, samples } = heating(thermal, { ambient: at.ambient, start: at.start, duration }, reading);
  const settled = steady !== null && steady <= limit ? stateAt(steady) : undefined;
  const short = steady !== null && steady <= limit && !settled ? " Warm as it is then, the voltage no longer suffices." : "";
  return {
    steadyTemperature: steady,
    steadyPoint: settled ?? null,
    timeToLimit,
    because: `${reason(steady, timeToLimit, limit)}${short}`,
    samples: thinned(samples),
  };
}

/** Heat at a temperature; where current is held it is held however hot, though the voltage may no longer suffice. */
function heatOf(
  motor: MotorDefinition,
  voltage: number,
  temperature: number,
  held: MotorHeld,
  stateAt: (temperature: number) => MotorPoint | undefined,
  cold: MotorPoint,
): MotorHeat {
  const follows = held.kind === "load" || held.kind === "rate";
  const state = follows
    ? (stateAt(temperature) ?? cold)
    : held.kind === "current"
      ? motorPoint(motor, { voltage, temperature }, cold.current, slowed(motor, voltage, temperature, held))
      : motorPoint(motor, { voltage, temperature }, cold.current, cold.motorRotationRate);
  return { copper: state.copperLoss, idle: state.noLoadLoss };
}

/** Rate at which a current flows, none where it would hold the shaft [rad/s]. */
function slowed(motor: MotorDefinition, voltage: number, temperature: number, held: MotorHeld & { readonly kind: "current" }): number {
  return Math.max(0, motor.speedConstant * (held.duty * voltage - held.current * windingResistance(motor, temperature)));
}

function usual(finding: MotorFinding): MotorPoint | undefined {
  return usualRoot(finding.roots ?? [])?.point;
}

/** Of several states the fastest that holds: where a motor that was started without load ends. */
export function usualRoot<Root extends { readonly stable: boolean }>(roots: readonly Root[]): Root | undefined {
  return roots.find(({ stable }) => stable) ?? roots[0];
}

/** Heat read from a table: where each reading is a search. */
function tabulated(heatAt: HeatAt, low: number, high: number): HeatAt {
  const nodes = Array.from({ length: heatNodes }, (_, i) => low + ((high - low) * i) / (heatNodes - 1));
  const heats = nodes.map(heatAt);
  const copper = heats.map((heat) => heat.copper);
  const idle = heats.map((heat) => heat.idle);
  return (temperature) => ({ copper: piecewiseLinear(nodes, copper, temperature), idle: piecewiseLinear(nodes, idle, temperature) });
}

const celsius = (temperature: number): string => `${(temperature - 273.15).toFixed(0)} °C`;

function reason(steady: number | null, timeToLimit: number | null, limit: number): string {
  if (timeToLimit === 0) return "The winding starts at or above its limit.";
  if (steady === null) return "Runs away: resistance grows faster with temperature than heat can leave; no temperature is steady.";
  if (timeToLimit === null) return `The winding stays at ${celsius(steady)}, below its limit of ${celsius(limit)}.`;
  if (steady <= limit) return `The housing starts so warm that the winding passes its limit before it settles at ${celsius(steady)}.`;
  return `In the long run ${celsius(steady)}, above the limit of ${celsius(limit)}: stop before the time is up.`;
}

const mostSamples = 80;

function thinned(samples: readonly HeatingSample[]): readonly HeatingSample[] {
  const every = Math.max(1, Math.ceil(samples.length / mostSamples));
  return samples.filter((_, i) => i % every === 0 || i === samples.length - 1);
}
