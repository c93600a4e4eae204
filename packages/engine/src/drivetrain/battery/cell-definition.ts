import { piecewiseLinear } from "../../numerics/index.ts";
import type { CellCurves } from "./pack.ts";

/** One relaxing part of a cell's resistance: a resistor beside a capacitor. */
export interface RelaxationPair {
  /** [Ω], one list per temperature, one value per state of charge. */
  readonly resistance: readonly (readonly number[])[];
  /** [s], likewise; greater than 0. */
  readonly timeConstant: readonly (readonly number[])[];
  /** B in R(T) = R(298.15 K) exp(B (1/T − 1/298.15 K)) [K]; 0 where the table itself runs over temperature. */
  readonly activation: number;
}

/**
 * One cell type as an equivalent circuit over state of charge and temperature. SI throughout. Linear between the points of the
 * grid, level beyond its ends; who uses it there has to say so.
 */
export interface CellDefinition {
  /** Charge of a new cell between full and empty at 25 °C [C]. */
  readonly capacity: number;
  /** [kg] */
  readonly mass: number;
  /** [J/(kg K)] */
  readonly specificHeat: number;
  /** Rising, at least one [K]. */
  readonly temperatures: readonly number[];
  /** Rising, at least two, within 0 to 1. */
  readonly statesOfCharge: readonly number[];
  /** Voltage at rest [V], one list per temperature, one value per state of charge. */
  readonly openCircuitVoltage: readonly (readonly number[])[];
  /** What answers at once [Ω], likewise. */
  readonly ohmicResistance: readonly (readonly number[])[];
  /** B of the ohmic part [K]. */
  readonly ohmicActivation: number;
  /** None, one or two. */
  readonly pairs: readonly RelaxationPair[];
  /**
   * How far the surface of the electrodes runs ahead of their mean: at a steady current I the surface lacks I · time / capacity of
   * state of charge, and approaches that with the same time constant. Absent: surface and mean are one.
   */
  readonly diffusion?: {
    /** At 25 °C [s]. */
    readonly time: number;
    /** B of the time [K]. */
    readonly activation: number;
  };
  /** Share of the charge that can be drawn at all over temperature [K], rising; 1 everywhere when absent. */
  readonly availableCapacity?: readonly { readonly temperature: number; readonly value: number }[];
  /** Lowest permitted voltage under load [V]. */
  readonly cutoffVoltage: number;
  /** Coldest and hottest permitted cell [K]; null where nothing is stated. */
  readonly temperatureMinimum: number | null;
  readonly temperatureMaximum: number | null;
}

/** Temperature at which resistances, diffusion time and capacity are stated [K]. */
export const cellReferenceTemperature = 298.15;

/** What a circuit needs of a cell beyond its curves. */
interface CellBeyondCurves {
  /** Part of the resistance that relaxes; none when absent. */
  readonly relaxation?: { readonly resistance: number; readonly timeConstant: number } | undefined;
  readonly mass: number;
  readonly specificHeat: number;
  readonly temperatureMinimum: number | null;
  readonly temperatureMaximum: number | null;
}

/**
 * The cell of an aircraft file as an equivalent circuit: the same rest voltage, resistance and capacity over temperature. Of the
 * resistance one part may relax, over charge and temperature like the whole.
 *
 * @derivation both curves of the file on the union of their states of charge; exact, for both are straight between points
 */
export function cellFromCurves(curves: CellCurves, more: CellBeyondCurves): CellDefinition {
  const statesOfCharge = [...new Set([...curves.openCircuitVoltage, ...curves.resistanceFactor].map((point) => point.stateOfCharge))].sort(
    (a, b) => a - b,
  );
  const overCharge = (resistance: number) => [statesOfCharge.map((at) => resistance * along(curves.resistanceFactor, at))];
  const { relaxation } = more;
  return {
    capacity: curves.capacity,
    temperatures: [cellReferenceTemperature],
    statesOfCharge,
    openCircuitVoltage: [statesOfCharge.map((at) => along(curves.openCircuitVoltage, at))],
    ohmicResistance: overCharge(curves.resistance - (relaxation?.resistance ?? 0)),
    ohmicActivation: curves.resistanceActivation,
    pairs: relaxation
      ? [
          {
            resistance: overCharge(relaxation.resistance),
            timeConstant: [statesOfCharge.map(() => relaxation.timeConstant)],
            activation: curves.resistanceActivation,
          },
        ]
      : [],
    availableCapacity: curves.capacityFactor,
    cutoffVoltage: curves.cutoffVoltage,
    mass: more.mass,
    specificHeat: more.specificHeat,
    temperatureMinimum: more.temperatureMinimum,
    temperatureMaximum: more.temperatureMaximum,
  };
}

function along(points: readonly { readonly stateOfCharge: number; readonly value: number }[], at: number): number {
  return piecewiseLinear(
    points.map((point) => point.stateOfCharge),
    points.map((point) => point.value),
    at,
  );
}

/**
 * The same chemistry in another size: at equal rate per capacity every voltage stays what it was, so resistances go with the
 * inverse of capacity, times a factor of their own; mass goes with capacity.
 *
 * @derivation cells of one kind side by side
 */
export function scaledCell(cell: CellDefinition, capacity: number, resistanceFactor = 1): CellDefinition {
  const size = capacity / cell.capacity;
  const factor = resistanceFactor / size;
  if (factor === 1 && size === 1) return cell;
  const times = (table: readonly (readonly number[])[]) => table.map((row) => row.map((value) => value * factor));
  return {
    ...cell,
    capacity,
    mass: cell.mass * size,
    ohmicResistance: times(cell.ohmicResistance),
    pairs: cell.pairs.map((pair) => ({ ...pair, resistance: times(pair.resistance) })),
  };
}
