import type { TableFigure } from "@wingseed/engine";
import { type ColumnText, formatColumn, type UnitSystem } from "../format/index.ts";
import { cellWidth, type Ink, wrapCells } from "./ink.ts";
import { isUpright, uprightText } from "./upright-text.ts";

const gap = "  ";
const widestHead = 8;

export interface TableTextOptions {
  readonly width: number;
  readonly system: UnitSystem;
  readonly ink: Ink;
  /** Rows shown at most; the middle of a longer table is left out and said to be. */
  readonly mostRows: number;
}

interface LaidColumn {
  readonly text: ColumnText;
  readonly width: number;
}

/**
 * A table for a terminal: figures right-aligned under their heads, units in the head, long words wrapped in their
 * column. Columns that do not fit follow below in a part of their own, each part led by the first column.
 */
export function tableText(table: TableFigure, options: TableTextOptions): readonly string[] {
  if (isUpright(table)) return uprightText(table, options);
  const all = table.columns.map((column, index) =>
    formatColumn(
      column,
      table.rows.map((row) => row[index] ?? null),
      options.system,
    ),
  );
  const isSweep = all[0]?.numeric === true;
  const count = table.rows.length;
  const shown = isSweep ? evenRows(count, options.mostRows) : shownRows(count, options.mostRows);
  const parts = partsThatFit(all, options.width - gap.length);
  const lines = parts.flatMap((part, index) => [...(index === 0 ? [] : [""]), ...partLines(part, shown, count, options)]);
  if (isSweep && shown.length < count) lines.push(`${gap}${shown.length} of ${count} rows; all in --format csv or json`);
  return lines;
}

function partLines(
  part: readonly LaidColumn[],
  shown: readonly (number | "left out")[],
  count: number,
  { ink, mostRows }: TableTextOptions,
): readonly string[] {
  const head = part.map((column) => wrapCells(column.text.head, Math.max(widestHead, column.width)));
  const body = shown.flatMap((row) =>
    row === "left out"
      ? [`${gap}… ${count - mostRows + 1} rows left out; all in --format csv or json`]
      : rowLines(
          part.map((column) => wrapCells(column.text.cells[row] ?? "", column.width)),
          part,
          "top",
        ),
  );
  return [...rowLines(head, part, "bottom").map(ink.quiet), ...body];
}

/** The columns cut into parts that fit side by side, each led by the first one, or by row numbers where that repeats itself. */
function partsThatFit(all: readonly ColumnText[], room: number): readonly (readonly LaidColumn[])[] {
  const whole = fitting(all, room);
  const [first] = all;
  if (whole.dropped.length === 0 || first === undefined) return [whole.kept];
  const tells = new Set(first.cells).size === first.cells.length;
  const lead = tells ? first : rowNumbers(first.cells.length);
  let rest = tells ? all.slice(1) : all;
  const parts: (readonly LaidColumn[])[] = [];
  while (rest.length > 0) {
    const led = fitting([lead, ...rest], room);
    // A lead that leaves no room for another column is left out.
    const { kept, dropped } = led.kept.length > 1 ? led : fitting(rest, room);
    parts.push(kept);
    rest = dropped;
  }
  return parts;
}

function rowNumbers(count: number): ColumnText {
  const cells = Array.from({ length: count }, (_, index) => String(index + 1));
  return { head: "row", label: "row", unit: "", cells, numeric: true };
}

/** Narrowest column of words before a column is dropped instead. */
const narrowestWords = 15;

/** The widths of the columns that fit: words give way first, then whole columns. */
function fitting(
  all: readonly ColumnText[],
  room: number,
): { readonly kept: readonly LaidColumn[]; readonly dropped: readonly ColumnText[] } {
  const last = all.at(-1);
  const tail = last && !last.numeric && all.length > 2 ? [last] : [];
  const body = all.slice(0, all.length - tail.length);
  for (let count = body.length; count > 0; count--) {
    const kept = [...body.slice(0, count), ...tail].map(layColumn);
    const laid = narrowed(kept, room);
    if (laid) return { kept: laid, dropped: body.slice(count) };
  }
  return { kept: all.slice(0, 1).map(layColumn), dropped: all.slice(1) };
}

function layColumn(text: ColumnText): LaidColumn {
  const head = wrapCells(text.head, widestHead);
  return { text, width: Math.max(...[...head, ...text.cells].map(cellWidth), 1) };
}

/** The columns with those of words narrowed until all fit, or undefined when they cannot. */
function narrowed(columns: readonly LaidColumn[], room: number): readonly LaidColumn[] | undefined {
  let excess = columns.reduce((sum, column) => sum + column.width + gap.length, -gap.length) - room;
  const laid = columns.toReversed().map((column) => {
    const give = column.text.numeric ? 0 : Math.min(Math.max(0, excess), Math.max(0, column.width - narrowestWords));
    excess -= give;
    return { ...column, width: column.width - give };
  });
  return excess <= 0 ? laid.toReversed() : undefined;
}

/** One row of the table, as many lines high as its highest cell. */
function rowLines(cells: readonly (readonly string[])[], columns: readonly LaidColumn[], align: "top" | "bottom"): string[] {
  const height = Math.max(1, ...cells.map((cell) => cell.length));
  return Array.from({ length: height }, (_, line) => {
    const texts = columns.map((column, index) => {
      const cell = cells[index] ?? [];
      return aligned(cell[align === "top" ? line : line - height + cell.length] ?? "", column);
    });
    return (gap + texts.join(gap)).trimEnd();
  });
}

function aligned(text: string, column: LaidColumn): string {
  const space = " ".repeat(Math.max(0, column.width - cellWidth(text)));
  return column.text.numeric ? space + text : text + space;
}

function shownRows(count: number, most: number): readonly (number | "left out")[] {
  const all = Array.from({ length: count }, (_, index) => index);
  if (count <= most) return all;
  const first = Math.ceil((most - 1) / 2);
  return [...all.slice(0, first), "left out", ...all.slice(count - (most - 1 - first))];
}

/** Rows of a sweep, thinned evenly, the last one kept. */
function evenRows(count: number, most: number): readonly number[] {
  const stride = Math.ceil((count - 1) / Math.max(1, most - 1));
  const all = Array.from({ length: count }, (_, index) => index);
  return count <= most ? all : all.filter((index) => index % stride === 0 || index === count - 1);
}
