import type { TableFigure } from "@wingseed/engine";
import { formatColumn, type UnitSystem } from "../format/index.ts";
import { cellWidth, type Ink, wrapCells } from "./ink.ts";

/** A table of one row with this many columns reads better as a list of names and values. */
export const uprightColumns = 5;

const indent = "  ";
const between = "    ";

/** True when a table is better printed upright: one row of many values. */
export function isUpright(table: TableFigure): boolean {
  return table.rows.length === 1 && table.columns.length >= uprightColumns;
}

/** One row as names and values, in two columns where there is room: nothing has to be left out. */
export function uprightText(table: TableFigure, { width, system, ink }: UprightOptions): readonly string[] {
  const [row = []] = table.rows;
  const entries = table.columns.map((column, index) => {
    const { label, unit, cells } = formatColumn(column, [row[index] ?? null], system);
    const value = cells[0] ?? "";
    return { label, text: unit === "" ? value : unit === "°" ? value + unit : `${value} ${unit}` };
  });
  const label = Math.max(...entries.map((entry) => cellWidth(entry.label)));
  const value = Math.max(...entries.map((entry) => cellWidth(entry.text)));
  const one = label + 2 + value;
  const columns = indent.length + 2 * one + between.length <= width ? 2 : 1;
  const height = Math.ceil(entries.length / columns);
  const head = wrapCells(`${indent}${table.caption}`, width, indent).map(ink.quiet);
  const lines = Array.from({ length: height }, (_, line) => {
    const there = [entries[line], columns === 2 ? entries[line + height] : undefined].flatMap((entry) => (entry ? [entry] : []));
    return (
      indent +
      there.map((entry) => `${entry.label}${" ".repeat(one - cellWidth(entry.label) - cellWidth(entry.text))}${entry.text}`).join(between)
    );
  });
  return [
    ...head,
    ...(one + indent.length <= width
      ? lines
      : entries.flatMap((entry) => wrapCells(`${indent}${entry.label} ${entry.text}`, width, indent + indent))),
  ];
}

interface UprightOptions {
  readonly width: number;
  readonly system: UnitSystem;
  readonly ink: Ink;
}
