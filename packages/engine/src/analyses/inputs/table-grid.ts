import type { Problem } from "../contract.ts";
import type { TableRows } from "./table-input.ts";

/** A table whose rows fill a grid. */
export interface TableGrid<Row> {
  /** Values of each axis, rising. */
  readonly axes: readonly (readonly number[])[];
  /** The row at these indices into the axes. */
  readonly at: (...indices: readonly number[]) => Row;
  readonly problem?: never;
}

type Failed = { readonly problem: Problem; readonly axes?: never };

/**
 * Rows as a grid over some of their numbers: every combination once, in any order. A combination that stands twice or is missing
 * is told with its place. For tables that are interpolated along each axis by itself.
 *
 * @param names properties of a row that are numbers in every row
 */
export function tableGrid<Row>(table: TableRows<Row>, names: readonly (keyof Row & string)[]): TableGrid<Row> | Failed {
  const number = (row: Row, name: keyof Row & string): number => Number(row[name]);
  const axes = names.map((name) => [...new Set(table.rows.map((row) => number(row, name)))].sort((a, b) => a - b));
  const cells = new Map<number, { readonly row: Row; readonly index: number }>();
  for (const [index, row] of table.rows.entries()) {
    const cell = position(
      axes,
      names.map((name, axis) => axes[axis]?.indexOf(number(row, name)) ?? 0),
    );
    const before = cells.get(cell);
    if (before) return failed(`${table.place(index)}: ${inWords(names, row)} stands already at ${table.place(before.index)}.`);
    cells.set(cell, { row, index });
  }
  const size = axes.reduce((product, axis) => product * axis.length, 1);
  for (let cell = 0; cell < size; cell++) {
    if (cells.has(cell)) continue;
    const values = indicesOf(axes, cell).map((index, axis) => `${names[axis]} ${shown(axes[axis]?.[index] ?? 0)}`);
    return failed(`${table.name}: the grid has a gap: there is no row with ${values.join(", ")}.`);
  }
  return { axes, at: (...indices) => cells.get(position(axes, indices))?.row as Row };
}

function position(axes: readonly (readonly number[])[], indices: readonly number[]): number {
  return axes.reduce((sum, axis, i) => sum * axis.length + (indices[i] ?? 0), 0);
}

function indicesOf(axes: readonly (readonly number[])[], cell: number): readonly number[] {
  let rest = cell;
  const indices = [...axes].reverse().map((axis) => {
    const index = rest % axis.length;
    rest = (rest - index) / axis.length;
    return index;
  });
  return indices.reverse();
}

function inWords<Row>(names: readonly (keyof Row & string)[], row: Row): string {
  return names.map((name) => `${name} ${shown(Number(row[name]))}`).join(", ");
}

function shown(value: number): string {
  return String(Number(value.toPrecision(6)));
}

function failed(message: string): Failed {
  return { problem: { kind: "table-grid", message } };
}
