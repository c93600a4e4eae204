import { readFileSync } from "node:fs";

/** One row of a cases.csv by column name. Every column is a number except `place`. */
export type CaseRow = Readonly<Record<string, number>> & { readonly place: string };

/** Reads a table of cases: first line names the columns, `#` begins a comment, no quotes. */
export function readCases(file: URL): readonly CaseRow[] {
  const lines = readFileSync(file, "utf8")
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "" && !line.startsWith("#"));
  const [head = "", ...rows] = lines;
  const columns = head.split(",");
  return rows.map((line, index) => {
    const cells = line.split(",");
    if (cells.length !== columns.length)
      throw new Error(`${file.pathname}: row ${index + 1} has ${cells.length} cells, not ${columns.length}`);
    const entries = columns.map((column, i): [string, string | number] => [
      column,
      column === "place" ? (cells[i] ?? "") : number(cells[i], file, index),
    ]);
    return Object.fromEntries(entries) as CaseRow;
  });
}

function number(text: string | undefined, file: URL, row: number): number {
  const value = Number(text);
  if (text === undefined || text === "" || !Number.isFinite(value))
    throw new Error(`${file.pathname}: row ${row + 1}: "${text}" is no number`);
  return value;
}

/** The value of a column; a missing column is a mistake in the table. */
export function column(row: CaseRow, name: string): number {
  const value = row[name];
  if (value === undefined) throw new Error(`no column ${name}`);
  return value;
}
