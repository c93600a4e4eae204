import type { CellDefinition } from "./cell-definition.ts";
import { cellTable } from "./cell-table.ts";
import { type PackModel, stateSize } from "./pack-step.kernel.ts";

/** What one block is like: its age and how it starts. */
export interface BlockState {
  /** Charge left by age over charge when new [1]. */
  readonly capacityFactor: number;
  /** Resistance over resistance when new [1]. */
  readonly resistanceFactor: number;
  readonly stateOfCharge: number;
  /** [K] */
  readonly temperature: number;
}

/** A pack of cells with everything around them. SI. */
export interface CellPack {
  readonly cell: CellDefinition;
  /** Cells in series and in parallel in one block. */
  readonly series: number;
  readonly parallel: number;
  /** Every block in order; an isolated one is null and takes no part. */
  readonly blocks: readonly (BlockState | null)[];
  readonly isolatorResistance: number;
  readonly wiringResistance: number;
  /** One block to bay air [K/W]. */
  readonly thermalResistance: number;
  /** [K] */
  readonly bayTemperature: number;
  /** Per cell [V]. */
  readonly cutoffVoltage: number;
}

/** The flat model of a pack, its state at the start and which group each block belongs to (null: isolated). */
export interface PreparedPack {
  readonly model: PackModel;
  readonly start: Float64Array;
  readonly groupOf: readonly (number | null)[];
}

/** Makes a pack flat. Blocks that are alike in every number are one group, so thirteen equal blocks cost as much as one. */
export function preparedPack(pack: CellPack): PreparedPack {
  const keys = pack.blocks.map((block) => (block === null ? null : JSON.stringify(block)));
  const distinct = [...new Set(keys.filter((key) => key !== null))];
  const groupOf = keys.map((key) => (key === null ? null : distinct.indexOf(key)));
  const members = distinct.map((key) => pack.blocks[keys.indexOf(key)] as BlockState);
  const cells = pack.series * pack.parallel;
  const model: PackModel = {
    table: cellTable(pack.cell),
    groups: members.length,
    series: pack.series,
    parallel: pack.parallel,
    counts: Float64Array.from(members, (_, group) => groupOf.filter((of) => of === group).length),
    capacities: Float64Array.from(members, (block) => pack.cell.capacity * block.capacityFactor),
    resistanceFactors: Float64Array.from(members, (block) => block.resistanceFactor),
    isolatorResistance: pack.isolatorResistance,
    wiringResistance: pack.wiringResistance,
    heatCapacity: cells * pack.cell.mass * pack.cell.specificHeat,
    thermalResistance: pack.thermalResistance,
    bayTemperature: pack.bayTemperature,
    cutoffVoltage: pack.cutoffVoltage * pack.series,
  };
  const start = new Float64Array(members.length * stateSize);
  members.forEach((block, group) => {
    start[group * stateSize] = block.stateOfCharge;
    start[group * stateSize + 4] = block.temperature;
  });
  return { model, start, groupOf };
}
