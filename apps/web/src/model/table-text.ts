import { quantityValue } from "./field-text.ts";
import type { Field, RowsField } from "./schema.ts";
import { fieldUnit, plain } from "./units.ts";

/** A column as its head names it. */
export interface ColumnHead {
  readonly name: string;
  /** As written in square brackets. */
  readonly unit?: string;
}

export type TableText =
  | { readonly head?: readonly ColumnHead[]; readonly rows: readonly (readonly string[])[]; readonly slip?: never }
  | { readonly slip: string; readonly rows?: never; readonly head?: never };

/** True for text of several cells, as spreadsheets copy it. */
export function isTableText(text: string): boolean {
  return /[\t]/.test(text.trim()) || (/\n/.test(text.trim()) && !/^\s*[[{]/.test(text));
}

/**
 * Cells of a table: lines of cells between tabs, semicolons or commas; `#` begins a comment. A first line without numbers
 * names the columns, with the unit in square brackets.
 */
export function readTableText(text: string): TableText {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.replace(/#.*$/, ""))
    .filter((line) => line.trim() !== "");
  if (lines.length === 0) return { slip: "there is no row in it." };
  const sign = ["\t", ";", ","].find((one) => lines[0]?.includes(one)) ?? "\t";
  const cells = lines.map((line) => line.split(sign).map((cell) => plain(cell.replace(/^\s*"(.*)"\s*$/, "$1"))));
  const [first = []] = cells;
  const uneven = cells.findIndex((row) => row.length !== first.length);
  if (uneven >= 0) return { slip: `row ${uneven + 1} has ${cells[uneven]?.length} cells, the first ${first.length}.` };
  const named = first.every((cell) => cell !== "" && !/^[-+.\d]/.test(cell));
  return named ? { head: first.map(columnHead), rows: cells.slice(1) } : { rows: cells };
}

function columnHead(cell: string): ColumnHead {
  const [, name = cell, unit] = /^(.*?)\s*\[([^\]]*)\]\s*$/.exec(cell) ?? [];
  return unit === undefined || unit.trim() === "" ? { name: name.trim() } : { name: name.trim(), unit: unit.trim() };
}

export type MatchedRows =
  | { readonly rows: readonly Readonly<Record<string, unknown>>[]; readonly slip?: never }
  | { readonly slip: string; readonly rows?: never };

/** How many of these columns a list has. */
export function knownColumns(field: RowsField, head: readonly ColumnHead[]): number {
  return head.filter(({ name }) => field.columns.some((column) => isNamed(column, name))).length;
}

/** Rows under the names of a list's columns; numbers get the unit of their column's head, other texts stay as they are. */
export function matchedRows(field: RowsField, head: readonly ColumnHead[], cells: readonly (readonly string[])[]): MatchedRows {
  const columns = head.map((one) => {
    const named = field.columns.find((column) => isNamed(column, one.name));
    return { ...one, ...(one.unit === undefined && usualUnit(named) === one.name ? { unit: one.name } : {}), field: named };
  });
  const unknown = columns.find((column) => !column.field);
  if (unknown) return { slip: `there is no column ${unknown.name}; there are ${field.columns.map((column) => column.path).join(", ")}` };
  const unitless = columns.find(({ field: column, unit }) => unit === undefined && isMeasured(column));
  if (unitless) {
    const example = `${unitless.name} [${usualUnit(unitless.field) ?? "unit"}]`;
    return { slip: `column ${unitless.name} needs its unit in square brackets, as in "${example}"` };
  }
  const missing = field.columns.find((column) => column.required && !columns.some((one) => one.field === column));
  if (missing) return { slip: `column ${missing.path} is missing` };
  return {
    rows: cells.map((row) =>
      Object.fromEntries(
        columns.flatMap(({ field: column, unit }, index) => {
          const cell = row[index] ?? "";
          return column && cell !== "" ? [[column.path, cellValue(column, cell, unit)] as const] : [];
        }),
      ),
    ),
  };
}

function isNamed(column: Field, name: string): boolean {
  const known = [column.path, column.label, ...(column.otherNames ?? [])].map(bare);
  return known.includes(bare(name));
}

function bare(name: string): string {
  return name.toLowerCase().replace(/[\s_-]/g, "");
}

function isMeasured(column: Field | undefined): boolean {
  return column?.kind === "quantity" && column.quantity !== "dimensionless";
}

/** The unit in which a column is usually typed; a head that is this unit, as "rpm", needs no other. */
function usualUnit(column: Field | undefined): string | undefined {
  return column?.kind === "quantity" ? fieldUnit(column.quantity, 0, "si").name : undefined;
}

/** A cell as it is sent: a number with the unit of its head, else with the one in which its kind is usually typed. */
export function cellValue(column: Field, cell: string, unit?: string): unknown {
  if (column.kind === "toggle") return cell === "yes" || cell === "true";
  if (column.kind !== "quantity") return cell;
  return unit !== undefined && Number.isFinite(Number(cell)) ? `${cell} ${unit}` : quantityValue(cell, column.quantity);
}
