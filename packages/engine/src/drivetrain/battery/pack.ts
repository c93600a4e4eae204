import { piecewiseLinear } from "../../numerics/index.ts";

/** One cell type: charge, rest voltage and ohmic resistance. SI: coulomb, volt, ohm, kelvin. */
export interface CellCurves {
  readonly capacity: number;
  readonly openCircuitVoltage: readonly { readonly stateOfCharge: number; readonly value: number }[];
  readonly resistance: number;
  readonly resistanceFactor: readonly { readonly stateOfCharge: number; readonly value: number }[];
  readonly resistanceActivation: number;
  readonly capacityFactor: readonly { readonly temperature: number; readonly value: number }[];
  readonly cutoffVoltage: number;
}

/** How cells make a pack: `blocks` in parallel, each of `seriesCells` times `parallelCells`. */
export interface PackLayout {
  readonly seriesCells: number;
  readonly parallelCells: number;
  readonly blocks: number;
  readonly wiringResistance: number;
}

/** What the cells are like now: temperature [K] and ageing factors [1] on capacity and resistance. */
export interface CellState {
  readonly temperature: number;
  readonly capacityFactor: number;
  readonly resistanceFactor: number;
}

/** A pack reduced to its terminals at one cell temperature and age. */
export interface BatteryPack {
  /** Charge between full and empty [C]. */
  readonly capacity: number;
  readonly blocks: number;
  /** Lowest permitted terminal voltage [V]. */
  readonly cutoffVoltage: number;
  /** Terminal voltage at rest [V] at a state of charge [1]. */
  openCircuitVoltage(stateOfCharge: number): number;
  /** Terminal resistance [Ω] at a state of charge [1]. */
  resistance(stateOfCharge: number): number;
}

const referenceTemperature = 298.15;

/**
 * The pack seen from its terminals: series cells multiply voltage and resistance, parallel blocks divide resistance,
 * wiring comes on top. Resistance follows R(T) = R₂₅ exp(B (1/T − 1/298.15 K)).
 *
 * @derivation Kirchhoff's laws for equal blocks in parallel; unequal blocks are not modelled here.
 */
export function batteryPack(cell: CellCurves, layout: PackLayout, state: CellState): BatteryPack {
  const socVoltage = Float64Array.from(cell.openCircuitVoltage, (point) => point.stateOfCharge);
  const voltage = Float64Array.from(cell.openCircuitVoltage, (point) => point.value * layout.seriesCells);
  const socFactor = Float64Array.from(cell.resistanceFactor, (point) => point.stateOfCharge);
  const factor = Float64Array.from(cell.resistanceFactor, (point) => point.value);
  const thermal = Math.exp(cell.resistanceActivation * (1 / state.temperature - 1 / referenceTemperature));
  const cells = (cell.resistance * thermal * state.resistanceFactor * layout.seriesCells) / (layout.parallelCells * layout.blocks);
  const cold = piecewiseLinear(
    cell.capacityFactor.map((point) => point.temperature),
    cell.capacityFactor.map((point) => point.value),
    state.temperature,
  );
  return {
    capacity: cell.capacity * layout.parallelCells * layout.blocks * cold * state.capacityFactor,
    blocks: layout.blocks,
    cutoffVoltage: cell.cutoffVoltage * layout.seriesCells,
    openCircuitVoltage: (stateOfCharge) => piecewiseLinear(socVoltage, voltage, stateOfCharge),
    resistance: (stateOfCharge) => cells * piecewiseLinear(socFactor, factor, stateOfCharge) + layout.wiringResistance,
  };
}
