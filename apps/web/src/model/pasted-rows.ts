import type { Field, RowsField } from "./schema.ts";
import { cellValue, matchedRows, type TableText } from "./table-text.ts";

interface Pasted {
  readonly field: RowsField;
  /** Columns that the table shows, in order. */
  readonly columns: readonly Field[];
  readonly values: readonly unknown[];
  readonly table: TableText;
  /** Cell in which the paste began. */
  readonly at: { readonly row: number; readonly column: number };
}

export type PastedRows = { readonly rows: readonly unknown[]; readonly slip?: never } | { readonly slip: string; readonly rows?: never };

/** The rows after a table was pasted: one with named columns replaces all, one without is laid over the cells from where it began. */
export function pastedRows({ field, columns, values, table, at }: Pasted): PastedRows {
  if (table.slip !== undefined) return { slip: table.slip };
  if (table.head) return matchedRows(field, table.head, table.rows);
  const width = table.rows[0]?.length ?? 0;
  if (at.column + width > columns.length)
    return {
      slip: `${width} columns were pasted; from here there are ${columns.length - at.column}: ${columns
        .slice(at.column)
        .map((one) => one.label.toLowerCase())
        .join(", ")}.`,
    };
  const rows = Array.from({ length: Math.max(values.length, at.row + table.rows.length) }, (_, index) => {
    const before = (values[index] ?? {}) as Readonly<Record<string, unknown>>;
    const cells = table.rows[index - at.row];
    if (!cells) return before;
    const pairs = cells.flatMap((cell, place) => {
      const column = columns[at.column + place];
      return column && cell !== "" ? [[column.path, cellValue(column, cell)] as const] : [];
    });
    return { ...before, ...Object.fromEntries(pairs) };
  });
  return { rows };
}
