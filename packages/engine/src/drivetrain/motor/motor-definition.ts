import { piecewiseLinear } from "../../numerics/index.ts";

/** Current that turning alone takes, over the rate of the motor [A]. */
export type NoLoadCurrent =
  | { readonly kind: "coefficients"; readonly constant: number; readonly perRate: number; readonly perRateSquared: number }
  | { readonly kind: "table"; readonly rotationRates: readonly number[]; readonly currents: readonly number[] };

/** One stage of a gear, from the motor outward. */
export interface GearStage {
  /** Turns of its input for one turn of its output [1]. */
  readonly ratio: number;
  /** Taken whenever it turns [W]. */
  readonly constantLoss: number;
  /** Share of the power that it hands on [1]. */
  readonly proportionalLoss: number;
}

export interface MotorController {
  /** Taken whenever it runs [W]. */
  readonly constantLoss: number;
  /** Share of its input [1]. */
  readonly proportionalLoss: number;
  /** Largest share of the supply voltage that reaches the motor [1]. */
  readonly dutyMaximum: number;
}

/** A motor with its controller and gear. SI. */
export interface MotorDefinition {
  /** [rad/(s V)] */
  readonly speedConstant: number;
  /** Of winding and leads at `resistanceTemperature` [Ohm]. */
  readonly resistance: number;
  /** [K] */
  readonly resistanceTemperature: number;
  /** Growth of resistance at 20 °C [1/K]; 0 for a resistance that does not change. */
  readonly temperatureCoefficient: number;
  readonly noLoadCurrent: NoLoadCurrent;
  readonly poleCount: number;
  readonly controller: MotorController;
  readonly gear: readonly GearStage[];
}

/** Temperature at which the coefficient of resistance is stated [K]. */
const coefficientTemperature = 293.15;

/**
 * Resistance of the winding at a temperature [Ohm].
 *
 *     R = R_ref (1 + α (T − 20 °C)) / (1 + α (T_ref − 20 °C))
 *
 * @source iec-60028, coefficient of copper at 20 °C, from memory
 */
export function windingResistance(motor: MotorDefinition, temperature: number): number {
  const { temperatureCoefficient: a, resistanceTemperature } = motor;
  const growth = (at: number): number => Math.max(1 + a * (at - coefficientTemperature), 0.01);
  return (motor.resistance * growth(temperature)) / growth(resistanceTemperature);
}

/** Current that turning alone takes at a rate of the motor [A]; a table is held at its ends. */
export function noLoadCurrentAt(law: NoLoadCurrent, rotationRate: number): number {
  const rate = Math.abs(rotationRate);
  if (law.kind === "table") return piecewiseLinear(law.rotationRates, law.currents, rate);
  return law.constant + law.perRate * rate + law.perRateSquared * rate * rate;
}

/** Turns of the motor for one turn of the last shaft [1]. */
export function totalRatio(gear: readonly GearStage[]): number {
  return gear.reduce((product, stage) => product * stage.ratio, 1);
}
