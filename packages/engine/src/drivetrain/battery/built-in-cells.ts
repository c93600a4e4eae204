import { piecewiseLinear } from "../../numerics/index.ts";
import { type CellDefinition, cellFromCurves } from "./cell-definition.ts";
import demo from "./data/demo-cell.json" with { type: "json" };
import nca from "./data/reference-nca.json" with { type: "json" };

/** Cells that need no file. */
export const builtInCellNames = ["reference-nca", "demo"] as const;

export type BuiltInCellName = (typeof builtInCellNames)[number];

/** Where a built-in cell's numbers come from. */
export interface CellProvenance {
  readonly title: string;
  /** Key of docs/sources.bib; null where the values are invented. */
  readonly source: string | null;
  readonly provenance: string;
  readonly note: string;
}

/** Where the numbers of a built-in cell come from. @derivation not a formula */
export function builtInCellProvenance(name: BuiltInCellName): CellProvenance {
  if (name === "demo") return { title: demo.title, source: null, provenance: demo.provenance, note: demo.note };
  return { title: nca.title, source: nca.source, provenance: nca.provenance, note: nca.note };
}

/**
 * A built-in cell.
 *
 * @derivation resistances of the table are carried over to the states of charge of the rest voltages: straight between, level beyond
 * @source kollmeyer-2017, pulse test at 25 °C as tabulated by a user of the data set, unchecked
 */
export function builtInCell(name: BuiltInCellName): CellDefinition {
  if (name === "demo") return cellFromCurves(demo, demo);
  const { stateOfCharge } = nca.openCircuitVoltage;
  const grid = [...new Set([...stateOfCharge, ...nca.resistances.stateOfCharge])].sort((a, b) => a - b);
  const onGrid = (states: readonly number[], values: readonly number[]) => [grid.map((at) => piecewiseLinear(states, values, at))];
  const level = (value: number) => [grid.map(() => value)];
  const { resistances, timeConstants, temperature } = nca;
  const of = (values: readonly number[]) => onGrid(resistances.stateOfCharge, values);
  return {
    capacity: nca.capacity,
    mass: nca.mass,
    specificHeat: nca.specificHeat,
    temperatures: [298.15],
    statesOfCharge: grid,
    openCircuitVoltage: onGrid(stateOfCharge, nca.openCircuitVoltage.value),
    ohmicResistance: of(resistances.ohmic),
    ohmicActivation: temperature.resistanceActivation,
    pairs: [
      { resistance: of(resistances.fastPair), timeConstant: level(timeConstants.fastPair), activation: temperature.resistanceActivation },
      { resistance: of(resistances.slowPair), timeConstant: level(timeConstants.slowPair), activation: temperature.resistanceActivation },
    ],
    diffusion: { time: temperature.diffusionTime, activation: temperature.diffusionActivation },
    cutoffVoltage: nca.cutoffVoltage,
    temperatureMinimum: nca.temperatureMinimum,
    temperatureMaximum: nca.temperatureMaximum,
  };
}
