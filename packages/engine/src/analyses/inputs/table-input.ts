import { z } from "zod";
import { type QuantityKind, quantityKinds } from "../../quantities/index.ts";
import type { Need, Problem, ProjectView } from "../contract.ts";
import { columnsOf, matchedColumns } from "./table-columns.ts";
import { mostTableRows, type TableData } from "./table-data.ts";

/** Rows written out, or the path of a file with them. */
export type TableInput<Row> = readonly Row[] | { readonly file: string };

/** The rows of a table with a way to say where one of them stands. */
export interface TableRows<Row> {
  readonly rows: readonly Row[];
  /** The file, or "the rows given". */
  readonly name: string;
  /** "polar.csv:12" or "row 3" for the row of this index. */
  readonly place: (index: number) => string;
  readonly problem?: never;
}

type Failed = { readonly problem: Problem; readonly rows?: never };

/**
 * Input for a table: a list of rows or `{ file }`. Columns of the file are the properties of a row, with the unit in square
 * brackets after the name; further names that a column may have stand in the property's meta as `columnNames`.
 */
export function tableInput<Row extends z.ZodObject>(row: Row, options: { readonly description: string; readonly fewest?: number }) {
  return z.union([
    z
      .array(row)
      .min(options.fewest ?? 1)
      .max(mostTableRows)
      .meta({ label: "Rows", description: options.description }),
    tableFile,
  ]);
}

const tableFile = z
  .strictObject({
    file: z.string().min(1).max(1000).meta({
      description: "Path of a file with comma-separated values, from the project folder, the folder of the inputs or the working folder.",
      reference: "table",
    }),
  })
  .meta({ label: "A file" });

/** What must be read before the tables among these inputs can be used. */
export function tableNeeds(...inputs: readonly unknown[]): readonly Need[] {
  return inputs.flatMap((input) => (isFile(input) ? [{ kind: "document", path: input.file } as const] : []));
}

function isFile(input: unknown): input is { readonly file: string } {
  return typeof input === "object" && input !== null && !Array.isArray(input) && typeof (input as { file?: unknown }).file === "string";
}

/** The rows of a table, checked against what a row may be, wherever they were written. */
export function tableRows<Row>(view: ProjectView, input: TableInput<Row>, row: z.ZodType<Row>): TableRows<Row> | Failed {
  if (!isFile(input)) return { rows: input as readonly Row[], name: "the rows given", place: (index) => `row ${index + 1}` };
  const document = Object.hasOwn(view.documents, input.file) ? view.documents[input.file] : undefined;
  if (!document) return failed("table-missing", `There is no table ${input.file}.`);
  if (document.kind !== "table") return failed("table-missing", `${input.file} is no table but a document of kind ${document.kind}.`);
  const data = document.data as TableData;
  const matched = matchedColumns(input.file, data, columnsOf(row));
  if (matched.problem !== undefined) return failed("table-columns", matched.problem);
  const complaints: string[] = [];
  const rows = data.rows.map((cells, index) => {
    const given = Object.fromEntries(matched.columns.map(({ name, cell, kind }) => [name, inKind(cells[cell] ?? 0, data, cell, kind)]));
    const read = row.safeParse(given);
    if (read.success) return read.data;
    const { line, columns } = data.places[index] ?? { line: 1, columns: [] };
    for (const issue of read.error.issues) {
      const { cell, kind } = matched.columns.find(({ name }) => name === issue.path[0]) ?? {};
      complaints.push(`${input.file}:${line}:${cell === undefined ? 1 : (columns[cell] ?? 1)}: ${issueInWords(issue, given, kind)}`);
    }
    return undefined;
  });
  if (complaints.length > 0) return failed("table-values", firstOf(complaints));
  return {
    rows: rows.filter((one) => one !== undefined),
    name: input.file,
    place: (index) => `${input.file}:${data.places[index]?.line ?? 1}`,
  };
}

/** A column in degrees Celsius is read as an absolute temperature; where a difference is meant the offset goes again. */
function inKind(value: number, data: TableData, cell: number, kind: QuantityKind | undefined): number {
  return kind === "temperatureDifference" ? value - (data.columns[cell]?.offset ?? 0) : value;
}

/** "angle: 200 deg is out of range; at most 180 deg is allowed". */
function issueInWords(issue: z.core.$ZodIssue, given: Readonly<Record<string, number>>, kind: QuantityKind = "dimensionless"): string {
  const name = issue.path.join(".");
  const prefix = name === "" ? "" : `${name}: `;
  const value = given[name];
  if (value === undefined || (issue.code !== "too_small" && issue.code !== "too_big")) return prefix + issue.message;
  const bound = Number(issue.code === "too_small" ? issue.minimum : issue.maximum);
  const side = issue.code === "too_small" ? (issue.inclusive ? "at least" : "more than") : issue.inclusive ? "at most" : "less than";
  return `${prefix}${inUnit(value, kind)} is out of range; ${side} ${inUnit(bound, kind)} is allowed`;
}

function inUnit(value: number, kind: QuantityKind): string {
  const unit = quantityKinds[kind];
  const shown = unit === "rad" ? (value * 180) / Math.PI : value;
  return `${Number(shown.toPrecision(6))}${unit === "1" ? "" : ` ${unit === "rad" ? "deg" : unit}`}`;
}

const mostComplaints = 20;

function firstOf(complaints: readonly string[]): string {
  const more = complaints.length - mostComplaints;
  return [...complaints.slice(0, mostComplaints), ...(more > 0 ? [`and ${more} more`] : [])].join("\n");
}

function failed(kind: string, message: string): Failed {
  return { problem: { kind, message } };
}
