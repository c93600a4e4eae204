import type { TableFigure } from "@wingseed/engine";
import { formatColumn } from "@wingseed/reports/format";
import { askedOf, type Origin } from "../model/slip.ts";
import { Reading } from "../reading/reading.tsx";
import { ExportButtons } from "./export-buttons.tsx";

interface UprightTableProps {
  readonly table: TableFigure;
  readonly origin: Origin;
}

/** One row of many values, as names and values in as many columns as there is room for. */
export function UprightTable({ table, origin }: UprightTableProps) {
  const [row = []] = table.rows;
  return (
    <section className="table-figure wide-picture" data-figure={table.id} aria-label={table.caption}>
      <h2>{table.caption}</h2>
      <dl className="upright">
        {table.columns.map((column, index) => {
          const value = row[index] ?? null;
          const { unit, cells } = formatColumn(column, [value], origin.system);
          const text = `${cells[0] ?? ""}${unit === "" ? "" : unit === "°" ? unit : `\u00a0${unit}`}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two columns may bear one name
            <div key={`${index} ${column.label}`}>
              <dt>{column.label}</dt>
              <dd>{typeof value === "number" ? <Reading asked={{ ...askedOf(column), value }} origin={origin} text={text} /> : text}</dd>
            </div>
          );
        })}
      </dl>
      <ExportButtons figure={table} origin={origin} />
    </section>
  );
}
