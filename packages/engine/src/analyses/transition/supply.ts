import type { AircraftDefinition } from "../../aircraft/index.ts";
import type { AirframeLoads } from "../../airframe/index.ts";
import { batteryPack, dischargeStep } from "../../drivetrain/battery/index.ts";

/** What motors and cells are like at a moment. */
export interface SupplyMoment {
  /** Per drive line, of one motor [K]. */
  readonly windings: readonly number[];
  readonly stateOfCharge: number;
  /** Of the pack at rest [V]. */
  readonly restVoltage: number;
  /** None where the pack cannot give the power. */
  readonly voltage: number | null;
  readonly blockCurrent: number | null;
  /** Asked for over what it can give, where it cannot [1]. */
  readonly excess: number;
}

export interface SupplySetting {
  readonly aircraft: AircraftDefinition;
  readonly blocks: number;
  readonly airTemperature: number;
  readonly cells: { readonly temperature: number; readonly capacityFactor: number; readonly resistanceFactor: number };
  readonly stateOfCharge: number;
}

interface Load {
  readonly time: number;
  readonly loads: Pick<AirframeLoads, "drives" | "electricPower">;
}

/**
 * Motors and cells along a history. A winding starts where it stays in the first moment's flight and takes up copper loss and that of turning alone;
 * cells are a voltage behind a resistance.
 *
 *     C T' = I² R + I₀ ω/K − (T − T_air)/R_th
 *
 * @derivation first-order motor and lumped heat, exact for losses that do not change between two moments
 */
export function supplyAlong(setting: SupplySetting, history: readonly Load[]): SupplyMoment[] {
  const { aircraft, blocks, airTemperature } = setting;
  const { cell, seriesCells, parallelCells, wiringResistance } = aircraft.battery;
  const pack = batteryPack(cell, { seriesCells, parallelCells, blocks, wiringResistance }, setting.cells);
  const moments: SupplyMoment[] = [];
  const first = history[0];
  if (!first) return moments;
  let windings = aircraft.driveLines.map((line, i) => airTemperature + steadyRise(line, first, i));
  let charge = setting.stateOfCharge;
  history.forEach((here, k) => {
    const next = history[k + 1];
    const power = Math.max(here.loads.electricPower, 0);
    const duration = next ? next.time - here.time : 0;
    const drawn = dischargeStep(pack, charge, power, duration);
    const restVoltage = pack.openCircuitVoltage(charge);
    moments.push({
      windings,
      stateOfCharge: charge,
      restVoltage,
      voltage: drawn.kind === "stepped" ? drawn.voltage : null,
      blockCurrent: drawn.kind === "stepped" ? drawn.current / blocks : null,
      excess: drawn.kind === "stepped" ? 0 : power / Math.max(drawn.largestPower, 1e-9),
    });
    if (!next) return;
    // A pack that is asked too much is emptied as if it could: what comes after is the optimistic side.
    charge = drawn.kind === "stepped" ? drawn.stateOfCharge : Math.max(0, charge - (power * duration) / (restVoltage * pack.capacity));
    windings = aircraft.driveLines.map((line, i) => {
      const motor = line.motors[0]?.motor;
      if (!motor) return airTemperature;
      const loss = (windingLoss(line, here, i) + windingLoss(line, next, i)) / 2;
      const final = airTemperature + motor.thermalResistance * loss;
      return final + ((windings[i] as number) - final) * Math.exp(-duration / (motor.thermalResistance * motor.heatCapacity));
    });
  });
  return moments;
}

type Line = AircraftDefinition["driveLines"][number];

function steadyRise(line: Line, load: Load, index: number): number {
  return (line.motors[0]?.motor.thermalResistance ?? 0) * windingLoss(line, load, index);
}

function windingLoss(line: Line, { loads }: Load, index: number): number {
  const motor = line.motors[0]?.motor;
  const state = loads.drives[index];
  if (!motor || !state || state.motorRate === 0) return 0;
  return state.motor.current ** 2 * motor.resistance + (motor.noLoadCurrent * state.motorRate) / motor.speedConstant;
}
