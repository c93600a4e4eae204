import type { CellDefinition } from "./cell-definition.ts";

/** Values per node: rest voltage, ohmic resistance, then resistance and time constant of two pairs. */
export const cellColumns = 6;

/** A cell made flat for the stepper. */
export interface CellTable {
  readonly states: Float64Array;
  readonly temperatures: Float64Array;
  /** [temperature][state of charge][column]. */
  readonly nodes: Float64Array;
  /** B of the ohmic part and of the two pairs [K]. */
  readonly activation: Float64Array;
  readonly pairs: 0 | 1 | 2;
  /** [s] at 25 °C; 0 without diffusion. */
  readonly diffusionTime: number;
  readonly diffusionActivation: number;
  /** Knots of the available share of the charge; none where it is 1 everywhere. */
  readonly shareTemperatures: Float64Array;
  readonly shares: Float64Array;
  readonly capacity: number;
}

/** Lays a cell out in flat arrays. A pair that is absent has no resistance and a time constant of 1 s. */
export function cellTable(cell: CellDefinition): CellTable {
  const { statesOfCharge, temperatures, pairs } = cell;
  const count = statesOfCharge.length;
  const nodes = new Float64Array(temperatures.length * count * cellColumns);
  for (let t = 0; t < temperatures.length; t++) {
    for (let s = 0; s < count; s++) {
      const at = (t * count + s) * cellColumns;
      nodes[at] = cell.openCircuitVoltage[t]?.[s] ?? 0;
      nodes[at + 1] = cell.ohmicResistance[t]?.[s] ?? 0;
      for (let pair = 0; pair < 2; pair++) {
        nodes[at + 2 + 2 * pair] = pairs[pair]?.resistance[t]?.[s] ?? 0;
        nodes[at + 3 + 2 * pair] = pairs[pair]?.timeConstant[t]?.[s] ?? 1;
      }
    }
  }
  const available = cell.availableCapacity ?? [];
  return {
    states: Float64Array.from(statesOfCharge),
    temperatures: Float64Array.from(temperatures),
    nodes,
    activation: Float64Array.of(cell.ohmicActivation, pairs[0]?.activation ?? 0, pairs[1]?.activation ?? 0),
    pairs: Math.min(2, pairs.length) as 0 | 1 | 2,
    diffusionTime: cell.diffusion?.time ?? 0,
    diffusionActivation: cell.diffusion?.activation ?? 0,
    shareTemperatures: Float64Array.from(available, (point) => point.temperature),
    shares: Float64Array.from(available, (point) => point.value),
    capacity: cell.capacity,
  };
}
