import type { TableFigure } from "@wingseed/engine";
import { type ColumnText, formatColumn } from "@wingseed/reports/format";
import { type KeyboardEvent, useMemo, useState } from "react";
import { askedOf, type Origin } from "../model/slip.ts";
import { Reading } from "../reading/reading.tsx";
import { ExportButtons } from "./export-buttons.tsx";

interface DataTableProps {
  readonly table: TableFigure;
  readonly origin: Origin;
  readonly small?: boolean;
}

/** Rows that are set at once; a longer table is set whole when asked, since each number in it can be questioned. */
const rowsAtOnce = 120;

/** A table whose numbers can be questioned; arrows move between them. Wider than the page it scrolls alone. */
export function DataTable({ table, origin, small = false }: DataTableProps) {
  const columns = useMemo(
    () =>
      table.columns.map((column, index) =>
        formatColumn(
          column,
          table.rows.map((row) => row[index] ?? null),
          origin.system,
        ),
      ),
    [table, origin.system],
  );
  const [whole, setWhole] = useState(false);
  const long = !whole && table.rows.length > rowsAtOnce;
  const rows = long ? table.rows.slice(0, rowsAtOnce) : table.rows;
  const [place, setPlace] = useState("0 0");
  const first = firstNumber(table);
  const current = typeof cellAt(table, place) === "number" ? place : first;
  return (
    <section className={small ? "table-figure" : "table-figure wide-picture"} data-figure={table.id} aria-label={table.caption}>
      <div className="table-scroll">
        <table onKeyDown={moveFocus}>
          <caption>{table.caption}</caption>
          <thead>
            <tr>
              {columns.map((column, index) =>
                column.head === "" ? (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns are known by their place
                  <td key={index} />
                ) : (
                  // biome-ignore lint/suspicious/noArrayIndexKey: two columns may bear one head
                  <th key={`${index} ${column.head}`} scope="col" className={columnClass(column)}>
                    {column.head}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, rowIndex) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows are known by their place
              <tr key={rowIndex}>
                {row.map((cell, index) => {
                  const column = columns[index];
                  const here = `${rowIndex} ${index}`;
                  if (!column) return null;
                  if (column.head === "" && typeof cell === "string") {
                    return (
                      <th key={here} scope="row">
                        {cell}
                      </th>
                    );
                  }
                  return (
                    <td key={here} data-cell={here} className={columnClass(column)} onFocus={() => setPlace(here)}>
                      <Cell
                        table={table}
                        row={rowIndex}
                        index={index}
                        columns={columns}
                        origin={origin}
                        value={cell}
                        tabIndex={here === current ? 0 : -1}
                      />
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {long && (
        <button type="button" className="quiet-button" onClick={() => setWhole(true)}>
          Show all {table.rows.length} rows
        </button>
      )}
      <ExportButtons figure={table} origin={origin} />
    </section>
  );
}

/** Words up to this long [letters] stay in one line. */
const shortWords = 16;

function columnClass({ numeric, cells }: ColumnText): string {
  if (numeric) return "number";
  return cells.every((cell) => cell.length <= shortWords) ? "short" : "words";
}

interface CellProps extends Pick<DataTableProps, "table" | "origin"> {
  readonly row: number;
  readonly index: number;
  readonly columns: readonly ColumnText[];
  readonly value: number | string | boolean | null;
  readonly tabIndex: number;
}

function Cell({ table, row, index, columns, origin, value, tabIndex }: CellProps) {
  const column = table.columns[index];
  const text = columns[index]?.cells[row] ?? "";
  if (typeof value !== "number" || !column) return text;
  const before = columns.slice(0, Math.min(2, index)).map((one) => `${one.label} ${one.cells[row]}${one.unit ? `\u00a0${one.unit}` : ""}`);
  return <Reading asked={{ ...askedOf(column), value, row: before }} origin={origin} text={text} tabIndex={tabIndex} />;
}

function firstNumber(table: TableFigure): string {
  for (const [row, cells] of table.rows.entries()) {
    const index = cells.findIndex((cell) => typeof cell === "number");
    if (index >= 0) return `${row} ${index}`;
  }
  return "";
}

function cellAt(table: TableFigure, place: string): unknown {
  const [row = -1, index = -1] = place.split(" ").map(Number);
  return table.rows[row]?.[index];
}

const moves: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

function moveFocus(event: KeyboardEvent<HTMLTableElement>): void {
  const move = event.altKey || event.ctrlKey || event.metaKey ? undefined : moves[event.key];
  const cell = (event.target as HTMLElement).closest<HTMLElement>("[data-cell]");
  if (!move || !cell) return;
  event.preventDefault();
  let [row = 0, index = 0] = (cell.dataset.cell ?? "").split(" ").map(Number);
  for (;;) {
    row += move[0];
    index += move[1];
    const next = event.currentTarget.querySelector<HTMLElement>(`[data-cell="${row} ${index}"]`);
    if (!next) return;
    const button = next.querySelector("button");
    if (button) {
      button.focus();
      return;
    }
  }
}
