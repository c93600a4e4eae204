import type { TableColumn } from "@wingseed/engine";
import { displayUnit, inUnit, type UnitSystem } from "./display-unit.ts";
import { decade, fixedText, significantText } from "./number.ts";
import type { DisplayUnit } from "./units.ts";

export type CellValue = number | string | boolean | null;

/** A column ready to print: unit in the head, one unit for all cells, figures aligned where that tells no lie. */
export interface ColumnText {
  readonly head: string;
  readonly label: string;
  readonly unit: string;
  readonly cells: readonly string[];
  readonly numeric: boolean;
}

/** What stands for "no value" in a cell. */
export const noValue = "–";

/** Formats one table column. Numbers without a quantity are printed as plain numbers. */
export function formatColumn(column: TableColumn, values: readonly CellValue[], system: UnitSystem = "si"): ColumnText {
  const numbers = values.filter((value): value is number => typeof value === "number");
  const numeric = numbers.length > 0 && values.every((value) => value === null || typeof value === "number");
  const kind = column.quantity ?? "dimensionless";
  const largest = numbers.reduce((size, value) => Math.max(size, Math.abs(value)), 0);
  const unit = displayUnit(kind, largest, { ...column, system });
  const shownAs = (value: number) => withoutNoise(inUnit(value, unit), inUnit(largest, unit));
  const print = numberPrinter(numbers.map(shownAs), unit);
  const withUnit = unit.symbol === "" ? column.label : `${column.label}, ${unit.symbol}`;
  return {
    head: column.datum && !column.label.includes(column.datum) ? `${withUnit} ${column.datum}` : withUnit,
    label: column.label,
    unit: unit.symbol,
    numeric,
    cells: values.map((value) => (typeof value === "number" ? print(shownAs(value)) : wordCell(value))),
  };
}

/** Differences of large numbers leave crumbs where zero is meant: anything a million million times smaller than the largest. */
function withoutNoise(shown: number, largest: number): number {
  return Math.abs(shown) < 1e-12 * Math.abs(largest) ? 0 : shown;
}

function wordCell(value: string | boolean | null): string {
  if (value === null) return noValue;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return value;
}

/**
 * One way of printing for all numbers of a column: whole numbers stay whole; else the decimals of the largest at three
 * figures; else, when they span too wide a range, three figures each.
 */
function numberPrinter(shown: readonly number[], unit: DisplayUnit): (value: number) => string {
  if (unit.decimals !== undefined) {
    const decimals = unit.decimals;
    return (value) => fixedText(value, decimals);
  }
  const whole = shown.every((value) => Math.abs(value - Math.round(value)) < 1e-9 && Math.abs(value) < 1e6);
  if (whole) return (value) => fixedText(value, 0);
  const sizes = shown.map(Math.abs).filter((size) => size > 0);
  const [largest, smallest] = [Math.max(...sizes), Math.min(...sizes)];
  const figures = unit.figures ?? 3;
  const decimals = Math.max(0, figures - 1 - decade(Number(largest.toPrecision(figures))));
  if (largest >= 1e6 || decimals > 4 || smallest * 10 ** decimals < 2.5) return (value) => significantText(value, figures);
  return (value) => fixedText(value, decimals);
}
