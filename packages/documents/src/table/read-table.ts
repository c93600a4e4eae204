import { mostTableRows, type TableData } from "@wingseed/engine";
import type { DocumentReading, DocumentText } from "../document/index.ts";
import { type DocumentProblem, fileProblem, inReadingOrder } from "../document-problem.ts";
import { type HeaderColumn, tableHeader } from "./table-header.ts";
import { type Cell, type TableLine, tableLines } from "./table-lines.ts";

/** More complaints than these help nobody. */
const mostProblems = 50;

/**
 * Reads a file of comma-separated numbers: the first line names the columns with their units in square brackets, `#` begins a
 * comment. Everything is SI after reading. Every problem has its line and column. Never throws.
 */
export function readTable({ file, text, hash }: DocumentText): DocumentReading {
  const problems: DocumentProblem[] = [];
  const complain = (line: number, column: number, read: string, allowed: string, message: string): void => {
    problems.push(fileProblem(file, { kind: "syntax", line, column, read, allowed, message }));
  };
  const { lines, openQuotes } = tableLines(text);
  for (const { line, column } of openQuotes)
    complain(line, column, '"', "a closed quotation", "a quotation mark opens here and nothing closes it");
  const [head, ...body] = lines;
  if (head === undefined) complain(1, 1, "nothing", "a line of column names", "the table is empty; its first line names the columns");
  const header = head && tableHeader(head, complain);
  if (head && header && body.length === 0 && openQuotes.length === 0)
    complain(head.line, 1, "no row", "at least one row", "the table has names of columns but no row");
  if (body.length > mostTableRows) {
    const count = `${body.length} rows`;
    complain(
      body[mostTableRows]?.line ?? 1,
      1,
      count,
      `at most ${mostTableRows}`,
      `the table has ${count}; at most ${mostTableRows} are read`,
    );
  } else if (header !== undefined) {
    const rows = body.map((line) => rowOf(line, header, complain));
    if (problems.length === 0)
      return { document: { path: file, kind: "table", data: tableData(header, body, rows), written: {}, hash }, problems, references: [] };
  }
  const sorted = inReadingOrder(problems);
  const more = sorted.length - mostProblems;
  return {
    problems: more > 0 ? [...sorted.slice(0, mostProblems), furtherProblems(file, sorted[mostProblems] as DocumentProblem, more)] : sorted,
    references: [],
  };
}

type Complain = Parameters<typeof tableHeader>[1];

function rowOf({ line, cells }: TableLine, header: readonly HeaderColumn[], complain: Complain): readonly number[] {
  if (cells.length !== header.length) {
    const place = cells[Math.min(cells.length, header.length + 1) - 1]?.column ?? 1;
    const read = cells.length === 1 ? "1 value" : `${cells.length} values`;
    complain(line, place, read, `${header.length} values`, `${read} in this line, ${header.length} columns are named above`);
    return [];
  }
  return cells.map((cell, index) => numberOf(line, cell, header[index] as HeaderColumn, complain));
}

function numberOf(line: number, { text, column }: Cell, { column: { name }, unit }: HeaderColumn, complain: Complain): number {
  const refuse = (reason: string): number => {
    complain(line, column, text, "a number", `${name}: ${reason}`);
    return 0;
  };
  if (text === "") return refuse("a value is missing here");
  const plain = text.replace(/^[−–]/u, "-");
  if (!/^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/u.test(plain)) {
    const shown = JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
    const withUnit = /^[+-]?[\d.]+(?:[eE][+-]?\d+)?\s*[a-zA-Z°%]/u.test(plain);
    return refuse(`${shown} is no number${withUnit ? "; the unit stands in the first line, after the name of the column" : ""}`);
  }
  const value = (Number(plain) * unit.times) / unit.per + unit.offset;
  if (!Number.isFinite(value)) return refuse(`${text} is too large for a number`);
  if (unit.kinds[0] === "temperature" && value < 0 && unit.offset > 0) return refuse(`${text} is below absolute zero`);
  return value;
}

function tableData(header: readonly HeaderColumn[], body: readonly TableLine[], rows: readonly (readonly number[])[]): TableData {
  return {
    columns: header.map(({ column }) => column),
    rows,
    places: body.map(({ line, cells }) => ({ line, columns: cells.map(({ column }) => column) })),
  };
}

function furtherProblems(file: string, { line, column }: DocumentProblem, count: number): DocumentProblem {
  const message = `and ${count} more problems from here on`;
  return fileProblem(file, { kind: "syntax", line, column, read: `${count} problems`, allowed: "none", message });
}
