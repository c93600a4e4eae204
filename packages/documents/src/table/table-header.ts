import type { TableData } from "@wingseed/engine";
import { type ColumnUnit, readColumnUnit } from "../units/index.ts";
import type { Cell, TableLine } from "./table-lines.ts";

/** A column with what turns its numbers into SI. */
export interface HeaderColumn {
  readonly column: TableData["columns"][number];
  readonly unit: ColumnUnit;
}

export const mostColumns = 60;

/** Says what is wrong at a place of the file. */
export type Complain = (line: number, column: number, read: string, allowed: string, message: string) => void;

/** The first line: names of columns, each with its unit in square brackets. Undefined where it cannot be used. */
export function tableHeader({ line, cells }: TableLine, complain: Complain): readonly HeaderColumn[] | undefined {
  const separator = foreignSeparator(cells);
  if (separator !== undefined) {
    const message = `columns are separated by commas, and a decimal point stands in a number; this line is separated by ${separator}`;
    complain(line, 1, separator, "commas", message);
    return undefined;
  }
  if (cells.length > mostColumns) {
    complain(
      line,
      1,
      `${cells.length} columns`,
      `at most ${mostColumns}`,
      `the table has ${cells.length} columns; at most ${mostColumns} are read`,
    );
    return undefined;
  }
  const found = cells.map((cell) => headerColumn(line, cell, complain));
  for (const [index, cell] of cells.entries()) {
    const name = found[index]?.column.name;
    const earlier = name === undefined ? -1 : found.findIndex((other) => other?.column.name.toLowerCase() === name.toLowerCase());
    if (earlier >= 0 && earlier < index)
      complain(
        line,
        cell.column,
        cell.text,
        "each name once",
        `the column "${name}" stands twice, first at column ${cells[earlier]?.column}`,
      );
  }
  const columns = found.filter((column) => column !== undefined);
  return columns.length === cells.length ? columns : undefined;
}

function foreignSeparator(cells: readonly Cell[]): string | undefined {
  const [only, ...others] = cells;
  if (only === undefined || others.length > 0) return undefined;
  if (only.text.includes(";")) return "semicolons";
  return only.text.includes("\t") ? "tabs" : undefined;
}

function headerColumn(line: number, { text, column }: Cell, complain: Complain): HeaderColumn | undefined {
  const refuse = (message: string): undefined => {
    complain(line, column, text, 'a name with its unit, as in "angle [deg]"', message);
    return undefined;
  };
  if (text === "") return refuse("a column has no name");
  const parts = /^(?<name>[^[\]]*?)\s*(?:\[(?<unit>[^[\]]*)\])?$/u.exec(text)?.groups;
  if (parts?.name === undefined) return refuse(`"${text}" is no name with a unit in square brackets, as in "angle [deg]"`);
  if (parts.name === "") return refuse(`"${text}" has a unit but no name`);
  if (/^[+\-−]?[\d.]/u.test(parts.name)) return refuse(`"${text}" is a number; the first line names the columns, as in "angle [deg]"`);
  const written = parts.unit?.trim() ?? null;
  if (written === "") return refuse(`"${text}" has empty brackets; a number without unit has none`);
  const unit = readColumnUnit(written);
  if (unit.kind === "problem") return refuse(unit.message);
  return { column: { name: parts.name, unit: written, kinds: unit.kinds, offset: unit.offset, line, column }, unit };
}
