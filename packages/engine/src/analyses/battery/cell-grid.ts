import type { CellDefinition, RelaxationPair } from "../../drivetrain/battery/index.ts";
import type { TableRows } from "../inputs/table-input.ts";
import type { CellRow } from "./cell-row.ts";

type Grid = Pick<CellDefinition, "temperatures" | "statesOfCharge" | "openCircuitVoltage" | "ohmicResistance"> & {
  readonly pairs: readonly (Omit<RelaxationPair, "activation"> & { readonly slow: boolean })[];
};

const referenceTemperature = 298.15;
const mostTemperatures = 60;

/** The rows of a cell's table as a grid without gap, or a sentence about what is wrong with them and where. */
export function cellGrid({ rows, name, place }: TableRows<CellRow>): Grid | string {
  const stated = rows.filter((row) => row.temperature !== undefined).length;
  if (stated > 0 && stated < rows.length) return `${name}: some rows have a temperature and some have none; give all of them or none.`;
  const temperatures = distinct(rows.map((row) => row.temperature ?? referenceTemperature));
  const states = distinct(rows.map((row) => row.stateOfCharge));
  if (states.length < 2) return `${name}: at least two states of charge are needed.`;
  if (temperatures.length > mostTemperatures)
    return `${name}: ${temperatures.length} temperatures; at most ${mostTemperatures} are allowed.`;
  const found = new Map<string, CellRow>();
  for (const [index, row] of rows.entries()) {
    const key = `${row.temperature ?? referenceTemperature} ${row.stateOfCharge}`;
    if (found.has(key)) return `${place(index)}: a second row at ${placeInWords(row)}.`;
    found.set(key, row);
  }
  const grid = temperatures.map((temperature) => states.map((state) => found.get(`${temperature} ${state}`)));
  for (const [t, line] of grid.entries()) {
    const gap = line.indexOf(undefined);
    if (gap >= 0)
      return `${name}: no row at ${placeInWords({ stateOfCharge: states[gap] ?? 0, temperature: temperatures[t] })}; every temperature needs the same states of charge.`;
  }
  const whole = grid as readonly (readonly CellRow[])[];
  return fallingVoltage(whole, name) ?? pairsOf(whole, rows, name, temperatures, states);
}

function distinct(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

function placeInWords(row: { readonly stateOfCharge: number; readonly temperature?: number | undefined }): string {
  const at = `state of charge ${row.stateOfCharge}`;
  return row.temperature === undefined ? at : `${at} and ${(row.temperature - 273.15).toFixed(2)} °C`;
}

function fallingVoltage(grid: readonly (readonly CellRow[])[], name: string): string | null {
  for (const line of grid) {
    const wrong = line.find((row, i) => i > 0 && row.openCircuitVoltage < (line[i - 1]?.openCircuitVoltage ?? 0));
    if (wrong) return `${name}: the voltage at rest falls up to ${placeInWords(wrong)}; it must not fall as charge rises.`;
  }
  return null;
}

function pairsOf(
  grid: readonly (readonly CellRow[])[],
  rows: readonly CellRow[],
  name: string,
  temperatures: readonly number[],
  statesOfCharge: readonly number[],
): Grid | string {
  const pairs: Grid["pairs"][number][] = [];
  for (const speed of ["fast", "slow"] as const) {
    const resistance = `${speed}Resistance` as const;
    const timeConstant = `${speed}TimeConstant` as const;
    const given = rows.filter((row) => row[resistance] !== undefined).length;
    const timed = rows.filter((row) => row[timeConstant] !== undefined).length;
    if (given === 0 && timed === 0) continue;
    if (given < rows.length || timed < rows.length)
      return `${name}: ${resistance} and ${timeConstant} are needed in every row, or in none.`;
    const column = (key: typeof resistance | typeof timeConstant) => grid.map((line) => line.map((row) => row[key] ?? 0));
    pairs.push({ resistance: column(resistance), timeConstant: column(timeConstant), slow: speed === "slow" });
  }
  return {
    temperatures,
    statesOfCharge,
    openCircuitVoltage: grid.map((line) => line.map((row) => row.openCircuitVoltage)),
    ohmicResistance: grid.map((line) => line.map((row) => row.ohmicResistance)),
    pairs,
  };
}
