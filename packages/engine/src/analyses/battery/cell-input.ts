import { z } from "zod";
import {
  builtInCell,
  builtInCellNames,
  builtInCellProvenance,
  type CellDefinition,
  cellFromCurves,
} from "../../drivetrain/battery/index.ts";
import { quantity } from "../../quantities/index.ts";
import type { Need, Problem, ProjectView, Warning } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { tableInput, tableNeeds, tableRows } from "../inputs/table-input.ts";
import { cellGrid } from "./cell-grid.ts";
import { cellRow } from "./cell-row.ts";
import { type BatteryAircraft, batteryFromAircraft } from "./from-aircraft.ts";

const activation = (description: string) => quantity("temperatureDifference", { description, minimum: 0, maximum: 10_000 }).default(0);

const tableCell = z
  .strictObject({
    table: tableInput(cellRow, { description: "Rows over state of charge and, where known, temperature.", fewest: 2 }),
    specificHeat: quantity("specificHeat", { description: "Specific heat of the cell.", minimum: 100, maximum: 5000 }).optional(),
    resistanceActivation: activation(
      "B in R(T) = R25 exp(B (1/T − 1/298.15 K)) for the ohmic part and the faster pair; for tables at one temperature.",
    ),
    slowActivation: activation("The same for the slower pair."),
    diffusionTime: quantity("time", {
      description: "Surface of the electrodes behind their mean, as the time of charge it lacks at a steady current; 25 °C.",
      minimum: 0,
      maximum: 1e4,
    }).default(0),
    diffusionActivation: activation("B of that time."),
    availableCapacity: z
      .array(
        z.strictObject({
          temperature: quantity("temperature", { description: "Cell temperature.", minimum: 200, maximum: 380 }),
          value: quantity("dimensionless", { description: "Share of the charge that can be drawn.", minimum: 0.05, maximum: 1.2 }),
        }),
      )
      .max(100)
      .optional()
      .meta({ description: "Charge that can be drawn over temperature, over that at 25 °C; all of it when absent." }),
  })
  .meta({ label: "A table" });

/** A cell: built in, of an aircraft of the project, or by a table. */
export const cellInput = z
  .union([
    z.enum(builtInCellNames).meta({ label: "Built in" }),
    tableCell,
    z
      .strictObject({
        aircraft: z.string().min(1).meta({ description: "Aircraft file whose battery it is.", reference: "aircraft", part: "battery" }),
      })
      .meta({ label: "From this project" }),
  ])
  .meta({ description: "The cell: built in, a table over state of charge and temperature, or the battery of an aircraft file." });

export type CellInput = z.infer<typeof cellInput>;

export type CellReading =
  | {
      readonly cell: CellDefinition;
      /** What it is called in the answer. */
      readonly title: string;
      /** The whole battery, where an aircraft has it. */
      readonly aircraft: BatteryAircraft | null;
      readonly warnings: readonly Warning[];
      readonly assumed: readonly { readonly path: string; readonly value: unknown; readonly because: string }[];
      readonly problem?: never;
    }
  | { readonly problem: Problem; readonly cell?: never };

/** What must be read before this cell can be used. */
export function cellNeeds(cell: CellInput): readonly Need[] {
  if (typeof cell === "string") return [];
  return "aircraft" in cell ? [{ kind: "document", path: cell.aircraft }] : tableNeeds(cell.table);
}

const note = (kind: string, message: string): Warning => ({ grade: "note", kind, message });

/**
 * The cell that an input means.
 *
 * @param capacity of one cell as given [C]; a table has none of its own
 * @param mass of one cell as given [kg]
 */
export function cellOf(input: CellInput, view: ProjectView, capacity: number | undefined, mass: number | undefined): CellReading {
  if (typeof input === "string") {
    const { title, provenance, note: words } = builtInCellProvenance(input);
    const warnings = [note("cell-data", `Cell data, ${provenance}: ${title}. ${words}`)];
    return { cell: builtInCell(input), title, aircraft: null, warnings, assumed: [] };
  }
  if ("aircraft" in input) {
    const battery = batteryFromAircraft(view, input.aircraft);
    if (isProblem(battery)) return { problem: battery };
    const { cell } = battery;
    return { cell: cellFromCurves(cell, cell), title: `cell of ${input.aircraft}`, aircraft: battery, warnings: [], assumed: [] };
  }
  return cellOfTable(input, view, capacity, mass);
}

/** Mass per charge [kg/C] and specific heat of a cell that nobody stated: 14 g for 1 A h (common practice). */
const massPerCharge = 0.014 / 3600;
const usualSpecificHeat = 950;
const usualCutoff = 2.5;

function cellOfTable(
  input: z.infer<typeof tableCell>,
  view: ProjectView,
  capacity: number | undefined,
  mass: number | undefined,
): CellReading {
  if (capacity === undefined)
    return {
      problem: { kind: "capacity-missing", message: "A cell given by a table needs capacity, the charge of one new cell at 25 °C." },
    };
  const table = tableRows(view, input.table, cellRow);
  if (table.problem) return table;
  const grid = cellGrid(table);
  if (typeof grid === "string") return { problem: { kind: "cell-table", message: grid } };
  const slip = temperatureSlip(input, grid.temperatures.length, table.name);
  if (slip) return { problem: { kind: "cell-table", message: slip } };
  const available = input.availableCapacity ?? [];
  const activations = [input.resistanceActivation, input.slowActivation];
  const cell: CellDefinition = {
    ...grid,
    capacity,
    mass: mass ?? massPerCharge * capacity,
    specificHeat: input.specificHeat ?? usualSpecificHeat,
    ohmicActivation: input.resistanceActivation,
    pairs: grid.pairs.map((pair) => ({ ...pair, activation: activations[pair.slow ? 1 : 0] ?? 0 })),
    ...(input.diffusionTime > 0 ? { diffusion: { time: input.diffusionTime, activation: input.diffusionActivation } } : {}),
    ...(available.length > 0 ? { availableCapacity: available } : {}),
    cutoffVoltage: usualCutoff,
    temperatureMinimum: null,
    temperatureMaximum: null,
  };
  const assumed = [
    ...(mass === undefined ? [{ path: "/cellMass", value: cell.mass, because: "14 g for 1 A h, common practice" }] : []),
    ...(input.specificHeat === undefined ? [{ path: "/cell/specificHeat", value: usualSpecificHeat, because: "common practice" }] : []),
  ];
  return { cell, title: `cell of ${table.name}`, aircraft: null, warnings: [], assumed };
}

/** What is wrong with how a table and the laws beside it go with temperature. */
function temperatureSlip(
  { availableCapacity = [], resistanceActivation, slowActivation }: z.infer<typeof tableCell>,
  temperatures: number,
  name: string,
): string | undefined {
  if (availableCapacity.some((point, i) => i > 0 && point.temperature <= (availableCapacity[i - 1]?.temperature ?? 0)))
    return "availableCapacity: temperatures must rise from point to point.";
  if (temperatures > 1 && resistanceActivation + slowActivation > 0)
    return `${name} runs over temperature itself; resistanceActivation and slowActivation are for tables at one temperature.`;
  return undefined;
}
