import type { AircraftDefinition } from "../aircraft/index.ts";
import { batteryPack } from "../drivetrain/battery/index.ts";
import type { FullConditions, FullTrimmed, TrimLimit } from "../equilibrium/index.ts";
import { windingTemperature } from "./winding-temperature.ts";

/** A limit and the share of it that a flight uses; 1 is the limit itself [1]. */
export interface LimitShare {
  readonly name: string;
  readonly family: TrimLimit["family"];
  readonly share: number;
}

/** What the aircraft file does not say about where flight ends. */
export interface EnvelopeRules {
  /** Largest Mach number of the advancing blade tip [1]. */
  readonly tipMachMaximum: number;
  /** Of the pack [1]. */
  readonly stateOfCharge: number;
  /** Resistance of the cells grown by age; new cells are 1 [1]. */
  readonly cellResistanceFactor: number;
  /** Of what is carried [K]. */
  readonly payloadTemperatureMinimum?: number;
  readonly payloadTemperatureMaximum?: number;
}

/** Stands for a share without bound: a pack that gives nothing above its cut-off voltage [1]. */
const beyondMeasure = 1000;

/**
 * Limits that a steady flight meets beside those of its trim: every motor's winding in the long run, cells by their voltage and warmth,
 * Mach number of the advancing tip.
 *
 * Cells are as warm as the bay, ambient plus its rise, for the voltage that they hold; for their hottest, what their own loss adds in the
 * long run comes on top.
 *
 *     P_most = U_c (U₀ − U_c)/R,   T = T_bay + R_th I² R_block,   M = (Ω R + V)/a
 *
 * @derivation Ohm's law at the cut-off voltage; heat that a block's resistance makes and its surface passes on
 */
export function furtherLimits(trimmed: FullTrimmed, conditions: FullConditions, rules: EnvelopeRules): readonly LimitShare[] {
  return [...rotorLimits(trimmed, conditions, rules), ...motorLimits(trimmed, conditions), ...cellLimits(trimmed, conditions, rules)];
}

function rotorLimits({ evaluation }: FullTrimmed, { air, aircraft }: FullConditions, { tipMachMaximum }: EnvelopeRules): LimitShare[] {
  return aircraft.rotors.map(({ id }, i) => {
    const tipSpeed = evaluation.rotorStates[i * 5] as number;
    const mach = (tipSpeed + evaluation.airspeed) / air.speedOfSound;
    return { name: named("tip Mach number", id, aircraft.rotors.length), family: "air", share: mach / tipMachMaximum };
  });
}

function motorLimits({ evaluation }: FullTrimmed, { air, aircraft }: FullConditions): LimitShare[] {
  return evaluation.loads.drives.flatMap(({ motor: state }, i) => {
    const line = aircraft.driveLines[i] as AircraftDefinition["driveLines"][number];
    const first = line.motors[0];
    if (!first || state.current === 0) return [];
    const { motor } = first;
    const winding = windingTemperature(motor, state, air);
    const share = winding === null ? beyondMeasure : (winding - air.temperature) / (motor.temperatureMaximum - air.temperature);
    return [
      { name: `${words(line.id)} motor heat`, family: "power", share: motor.temperatureMaximum > air.temperature ? share : beyondMeasure },
    ];
  });
}

function cellLimits({ evaluation }: FullTrimmed, { aircraft, loading, air }: FullConditions, rules: EnvelopeRules): LimitShare[] {
  const { battery } = aircraft;
  const bay = air.temperature + battery.bayTemperatureRise;
  const pack = batteryPack(
    battery.cell,
    { ...battery, blocks: loading.blocks },
    { temperature: bay, capacityFactor: 1, resistanceFactor: rules.cellResistanceFactor },
  );
  const power = evaluation.loads.electricPower;
  const rest = pack.openCircuitVoltage(rules.stateOfCharge);
  const resistance = pack.resistance(rules.stateOfCharge);
  const most = (pack.cutoffVoltage * (rest - pack.cutoffVoltage)) / resistance;
  const share = most > 0 ? Math.min(beyondMeasure, power / most) : beyondMeasure;
  const root = rest * rest - 4 * resistance * power;
  const current = root > 0 ? (rest - Math.sqrt(root)) / (2 * resistance) : rest / (2 * resistance);
  const blockCurrent = current / loading.blocks;
  const blockResistance = (resistance - battery.wiringResistance) * loading.blocks;
  const rise = steadyRise(battery.thermalResistance * blockCurrent ** 2 * blockResistance, bay, battery.cell.resistanceActivation);
  const range = battery.cell.temperatureMaximum - bay;
  return [
    { name: "cell voltage", family: "power", share },
    { name: "cell heat", family: "power", share: range > 0 ? Math.min(beyondMeasure, rise / range) : beyondMeasure },
  ];
}

/**
 * How much warmer than the bay a cell is in the long run [K]: the warmer it is, the less its resistance makes.
 *
 * @param rise with the resistance of the bay's temperature [K]
 * @derivation R(T) = R(T_bay) exp(B (1/T − 1/T_bay)); halving
 */
function steadyRise(rise: number, bay: number, activation: number): number {
  let low = 0;
  let high = rise;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (rise * Math.exp(activation * (1 / (bay + middle) - 1 / bay)) > middle) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A limit of the air itself that is broken at an altitude, whatever is flown there. */
export interface AirLimit {
  readonly name: string;
  readonly family: TrimLimit["family"];
}

/** The first limit of altitude or temperature that forbids any flight here, undefined where there is none. @derivation not a formula */
export function brokenAirLimit({ aircraft, air }: FullConditions, altitude: number, rules: EnvelopeRules): AirLimit | undefined {
  const { limits, battery } = aircraft;
  const { temperature } = air;
  const bay = temperature + battery.bayTemperatureRise;
  const rule = (name: string): AirLimit => ({ name, family: "rule" });
  if (altitude > limits.altitudeMaximum + 1e-9) return rule("altitude limit");
  if (temperature < limits.airTemperatureMinimum) return rule("coldest permitted air");
  if (temperature > limits.airTemperatureMaximum) return rule("hottest permitted air");
  if (bay < battery.cell.temperatureMinimum) return { name: "coldest permitted cell", family: "power" };
  if (bay > battery.cell.temperatureMaximum) return { name: "hottest permitted cell", family: "power" };
  if (temperature < (rules.payloadTemperatureMinimum ?? 0)) return rule("coldest air for the payload");
  if (temperature > (rules.payloadTemperatureMaximum ?? Number.POSITIVE_INFINITY)) return rule("hottest air for the payload");
  return undefined;
}

const words = (id: string) => id.replaceAll("-", " ");

function named(limit: string, id: string, count: number): string {
  return count > 1 ? `${limit}, ${words(id)}` : limit;
}
