// Packs and loads that the tests of this folder have in common.
import {
  type BlockState,
  builtInCell,
  type CellPack,
  type LoadStage,
  preparedPack,
  type RunLimits,
  type RunRecord,
  runPack,
} from "./index.ts";

/** A new full block at 25 °C. */
export const fresh: BlockState = { capacityFactor: 1, resistanceFactor: 1, stateOfCharge: 1, temperature: 298.15 };
/** Limits that never bind. */
export const noLimits: RunLimits = {
  continuousCurrent: null,
  shortTimeCurrent: null,
  shortTime: 0,
  temperatureMinimum: null,
  temperatureMaximum: null,
  lowestStateOfCharge: null,
};
/** The built-in cell of the tests. */
export const reference = builtInCell("reference-nca");

/** A pack of such cells, changed where a test says so. @derivation plain */
export function pack(blocks: readonly (BlockState | null)[], change: Partial<CellPack> = {}): CellPack {
  return {
    cell: reference,
    series: 14,
    parallel: 1,
    blocks,
    isolatorResistance: 0.002,
    wiringResistance: 0.004,
    thermalResistance: 1.6,
    bayTemperature: 298.15,
    cutoffVoltage: 2.5,
    ...change,
  };
}

interface Asked {
  readonly stages: readonly LoadStage[];
  readonly timeStep?: number;
  readonly limits?: Partial<RunLimits>;
  readonly endAtFirstLimit?: boolean;
}

/** A pack run over stages of load. @derivation plain */
export function run(of: CellPack, { stages, timeStep = 5, limits = {}, endAtFirstLimit = false }: Asked): RunRecord {
  const { model, start } = preparedPack(of);
  const plan = { model, start, profile: { stages, repeats: 1 }, timeStep, rowInterval: timeStep, longest: 1e6, endAtFirstLimit };
  return runPack({ ...plan, limits: { ...noLimits, ...limits }, mostSteps: 1e6, mostRowValues: 1e8 });
}

/** A stage of power [W], [s]. @derivation plain */
export const power = (value: number, duration = Number.POSITIVE_INFINITY): LoadStage => ({ kind: "power", value, duration });
/** A stage of current [A], [s]. @derivation plain */
export const current = (value: number, duration = Number.POSITIVE_INFINITY): LoadStage => ({ kind: "current", value, duration });

/** A column of the last row. @derivation plain */
export const last = ({ rows, width }: RunRecord, column: number) => rows[rows.length - width + column] ?? Number.NaN;
