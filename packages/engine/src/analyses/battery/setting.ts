import {
  type BlockState,
  type CellPack,
  type PreparedPack,
  preparedPack,
  type RunLimits,
  type RunPlan,
  scaledCell,
} from "../../drivetrain/battery/index.ts";
import type { Context, Problem, ProjectView, Warning } from "../contract.ts";
import { type Assumed, isProblem } from "../inputs/flight-conditions.ts";
import { type CellReading, cellOf } from "./cell-input.ts";
import { loadOf } from "./load-input.ts";
import type { BatteryInputs } from "./schema.ts";

/** A question with everything decided that it left open. */
export interface BatterySetting {
  readonly pack: CellPack;
  readonly prepared: PreparedPack;
  readonly plan: RunPlan;
  readonly limits: RunLimits;
  readonly title: string;
  readonly warnings: readonly Warning[];
  readonly assumed: Assumed;
}

/** Thermal resistance of one cell to still air, for a block over its cells [K/W] (common practice: 11 W/(m² K) on 42 cm²). */
const usualThermalResistance = 22;
/** The run ends here at the latest [s], and so many steps and values of rows are taken at most. */
const longestRun = 3.6e6;
const mostSteps = 200_000;
const mostRowValues = 2e6;

type Assume = <Value>(path: string, value: Value, because: string) => Value;

/** Brings inputs, aircraft and common practice together, or says why that cannot be. */
export function batterySetting(
  view: ProjectView,
  inputs: BatteryInputs,
  context: Pick<Context<unknown>, "analysis">,
): BatterySetting | Problem {
  const read = cellOf(inputs.cell, view, inputs.capacity, inputs.cellMass);
  if (read.problem) return read.problem;
  const assumed: { path: string; value: unknown; because: string }[] = [...read.assumed];
  const assume: Assume = (path, value, because) => {
    assumed.push({ path, value, because });
    return value;
  };
  const load = loadOf(inputs.load, view, context);
  if (isProblem(load)) return load;
  const pack = cellPackOf(read, inputs, load.blocks, assume);
  if (isProblem(pack)) return pack;
  const limits = limitsOf(read, inputs);
  const outside = temperatureProblem(pack);
  if (outside) return outside;
  const prepared = preparedPack(pack);
  const plan: RunPlan = {
    model: prepared.model,
    start: prepared.start,
    profile: load.profile,
    timeStep: inputs.timeStep,
    rowInterval: inputs.rowInterval ?? inputs.timeStep,
    longest: longestRun,
    limits,
    endAtFirstLimit: inputs.endAtFirstLimit,
    mostSteps,
    mostRowValues,
  };
  return { pack, prepared, plan, limits, title: read.title, warnings: [...read.warnings, ...load.warnings], assumed };
}

/** What was given, else the aircraft's, else the usual value, and says so. */
function picker(assume: Assume) {
  return (path: string, given: number | undefined, theirs: number | undefined, usual: number, because: string): number => {
    if (given !== undefined) return given;
    return theirs === undefined ? assume(path, usual, because) : assume(path, theirs, "the aircraft file");
  };
}

function cellPackOf(
  read: Extract<CellReading, { cell: unknown }>,
  inputs: BatteryInputs,
  flown: number | undefined,
  assume: Assume,
): CellPack | Problem {
  const { aircraft } = read;
  const pick = picker(assume);
  const scaled = scaledCell(read.cell, inputs.capacity ?? read.cell.capacity);
  const cell = { ...scaled, mass: inputs.cellMass ?? scaled.mass };
  const series = pick("/series", inputs.series, aircraft?.seriesCells, 1, "one cell");
  const parallel = pick("/parallel", inputs.parallel, aircraft?.parallelCells, 1, "one cell");
  const count =
    inputs.blocks === undefined && flown !== undefined
      ? assume("/blocks", flown, "the mission's pack")
      : pick("/blocks", inputs.blocks, aircraft ? Math.max(...aircraft.packs) : undefined, 1, "one block");
  const offset = pick("/cooling/bayOffset", inputs.cooling.bayOffset, aircraft?.bayTemperatureRise, 0, "air around the cells at ambient");
  const usual = usualThermalResistance / (series * parallel);
  const blocks = blockStates(inputs, count);
  if (isProblem(blocks)) return blocks;
  return {
    cell,
    series,
    parallel,
    blocks,
    isolatorResistance: inputs.isolatorResistance,
    wiringResistance: pick("/wiringResistance", inputs.wiringResistance, aircraft?.wiringResistance, 0, "none"),
    thermalResistance: pick(
      "/cooling/thermalResistance",
      inputs.cooling.thermalResistance,
      aircraft?.thermalResistance,
      usual,
      "22 K/W of each cell to still air, common practice",
    ),
    bayTemperature: inputs.ambientTemperature + offset,
    cutoffVoltage: inputs.limits.cutoffVoltage ?? cell.cutoffVoltage,
  };
}

function blockStates(inputs: BatteryInputs, count: number): readonly (BlockState | null)[] | Problem {
  const beyond = [...inputs.isolatedBlocks, ...inputs.differingBlocks.map(({ block }) => block)].find((block) => block > count);
  if (beyond !== undefined)
    return { kind: "no-such-block", message: `Block ${beyond} is named, but the pack has ${count} ${count === 1 ? "block" : "blocks"}.` };
  const isolated = new Set(inputs.isolatedBlocks);
  if (isolated.size === count) return { kind: "all-isolated", message: "Every block is isolated; nothing is left on the bus." };
  return Array.from({ length: count }, (_, index) => {
    if (isolated.has(index + 1)) return null;
    const own = inputs.differingBlocks.find(({ block }) => block === index + 1);
    return {
      ...(own?.age ?? inputs.age),
      stateOfCharge: own?.startStateOfCharge ?? inputs.startStateOfCharge,
      temperature: own?.startTemperature ?? inputs.startTemperature ?? inputs.ambientTemperature,
    };
  });
}

function limitsOf({ cell, aircraft }: Extract<CellReading, { cell: unknown }>, { limits }: BatteryInputs): RunLimits {
  return {
    continuousCurrent: limits.continuousCurrent ?? aircraft?.continuousCurrent ?? null,
    shortTimeCurrent: limits.shortTimeCurrent ?? aircraft?.shortCurrent ?? null,
    shortTime: limits.shortTime ?? aircraft?.shortTime ?? 0,
    temperatureMinimum: limits.temperatureMinimum ?? cell.temperatureMinimum,
    temperatureMaximum: limits.temperatureMaximum ?? cell.temperatureMaximum,
    lowestStateOfCharge: limits.lowestStateOfCharge ?? null,
  };
}

function temperatureProblem({ bayTemperature }: CellPack): Problem | undefined {
  if (bayTemperature > 180) return undefined;
  return { kind: "bay-too-cold", message: `The air of the bay would be at ${bayTemperature.toFixed(1)} K.` };
}
