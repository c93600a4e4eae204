import type { TableFigure } from "@wingseed/engine";
import { type ColumnText, formatColumn, type UnitSystem } from "../format/index.ts";
import { cellWidth, type Ink, wrapCells } from "./ink.ts";

const gap = "  ";
const widestHead = 14;

export interface TableTextOptions {
  readonly width: number;
  readonly system: UnitSystem;
  readonly ink: Ink;
  /** Rows shown at most; the middle of a longer table is left out and said to be. */
  readonly mostRows: number;
}

interface LaidColumn {
  readonly text: ColumnText;
  readonly head: readonly string[];
  readonly width: number;
}

/**
 * A table for a terminal: figures right-aligned under their heads, units in the head. Columns that do not fit are
 * dropped from the right but one of words at the end is kept, and the dropped ones are named.
 */
export function tableText(table: TableFigure, options: TableTextOptions): readonly string[] {
  const columns = table.columns.map((column, index) =>
    layColumn(
      formatColumn(
        column,
        table.rows.map((row) => row[index] ?? null),
        options.system,
      ),
    ),
  );
  const { kept, dropped } = fitting(columns, options.width - gap.length);
  const headRows = Math.max(0, ...kept.map((column) => column.head.length));
  const lines: string[] = [];
  for (let row = 0; row < headRows; row++) {
    const cells = kept.map((column) => aligned(column.head[row - headRows + column.head.length] ?? "", column));
    lines.push(options.ink.quiet(rowText(cells)));
  }
  const shown = shownRows(table.rows.length, options.mostRows);
  for (const row of shown) {
    if (row === "left out") lines.push(`${gap}… ${table.rows.length - options.mostRows + 1} rows left out; all in --format csv or json`);
    else lines.push(rowText(kept.map((column) => aligned(column.text.cells[row] ?? "", column))));
  }
  if (dropped.length > 0) {
    const names = dropped.map((column) => column.text.head).join("; ");
    lines.push(...wrapCells(`${gap}Left out at this width: ${names}.`, options.width, gap).map(options.ink.quiet));
  }
  return lines;
}

function layColumn(text: ColumnText): LaidColumn {
  const head = wrapCells(text.head, widestHead);
  return { text, head, width: Math.max(...[...head, ...text.cells].map(cellWidth), 1) };
}

function fitting(
  columns: readonly LaidColumn[],
  room: number,
): { readonly kept: readonly LaidColumn[]; readonly dropped: readonly LaidColumn[] } {
  const total = (list: readonly LaidColumn[]) => list.reduce((sum, column) => sum + column.width + gap.length, -gap.length);
  const last = columns.at(-1);
  const wordsAtEnd = last !== undefined && !last.text.numeric && columns.length > 2;
  const [body, tail] = wordsAtEnd ? [columns.slice(0, -1), [last]] : [columns, []];
  let count = body.length;
  while (count > 1 && total([...body.slice(0, count), ...tail]) > room) count--;
  const kept = [...body.slice(0, count), ...tail];
  return { kept: total(kept) > room ? body.slice(0, count) : kept, dropped: [...body.slice(count), ...(total(kept) > room ? tail : [])] };
}

function aligned(text: string, column: LaidColumn): string {
  const space = " ".repeat(Math.max(0, column.width - cellWidth(text)));
  return column.text.numeric ? space + text : text + space;
}

function rowText(cells: readonly string[]): string {
  return (gap + cells.join(gap)).trimEnd();
}

function shownRows(count: number, most: number): readonly (number | "left out")[] {
  const all = Array.from({ length: count }, (_, index) => index);
  if (count <= most) return all;
  const first = Math.ceil((most - 1) / 2);
  return [...all.slice(0, first), "left out", ...all.slice(count - (most - 1 - first))];
}
