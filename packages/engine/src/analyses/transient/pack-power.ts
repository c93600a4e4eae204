import type { AircraftDefinition } from "../../aircraft/index.ts";
import { piecewiseLinear } from "../../numerics/index.ts";

/**
 * Most that blocks give for a short time: their short-time current, or where the voltage would fall to cut-off or the power to its peak first, at 25 °C [W].
 *
 *     I = n min(I_short, (U₀ − U_cut)/R_block)      P = I (U₀ − I R_block/n − I R_wiring)
 *
 * @derivation Kirchhoff's laws of n equal blocks in parallel
 */
export function packPower({ battery }: AircraftDefinition, blocks: number, stateOfCharge: number): number {
  if (blocks <= 0) return 0;
  const { cell, seriesCells, parallelCells, wiringResistance, shortCurrent } = battery;
  const open = seriesCells * between(cell.openCircuitVoltage, stateOfCharge);
  const block = (seriesCells * cell.resistance * between(cell.resistanceFactor, stateOfCharge)) / parallelCells;
  const whole = block / blocks + wiringResistance;
  const toCutoff = Math.max(0, open - seriesCells * cell.cutoffVoltage) / whole;
  const current = Math.min(blocks * shortCurrent, toCutoff, open / (2 * whole));
  return current * (open - current * whole);
}

function between(points: readonly { readonly stateOfCharge: number; readonly value: number }[], at: number): number {
  return piecewiseLinear(
    points.map(({ stateOfCharge }) => stateOfCharge),
    points.map(({ value }) => value),
    at,
  );
}
