import type { AnalysisResult, QuantityKind, TableFigure } from "@wingseed/engine";
import { figureTable } from "./figure-table.ts";
import { scenePoints } from "./scene-table.ts";
import { siUnit } from "./si-units.ts";

type Cell = number | string | boolean | null;

/** Lines of comma-separated values, numbers at full precision. @source rfc-4180, section 2, from memory */
export function csvText(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [head, ...rows].map((row) => `${row.map(csvCell).join(",")}\r\n`).join("");
}

/** The table behind a figure as CSV, in SI, units in the head. */
export function figureCsv(figure: Parameters<typeof figureTable>[0]): string {
  const table: Pick<TableFigure, "columns" | "rows"> =
    figure.kind === "scene" && !figure.arrows ? scenePoints(figure) : figureTable(figure);
  const head = table.columns.map((column) => withUnit(column.label, column.quantity));
  return csvText(head, table.rows);
}

/** The part of a JSON Schema that tells the quantity of a property. */
export interface OutputSchema {
  readonly quantity?: string;
  readonly properties?: Readonly<Record<string, OutputSchema>>;
  readonly items?: OutputSchema | unknown;
  /** A value that may be missing is one of several. */
  readonly anyOf?: readonly OutputSchema[];
}

/**
 * A result as CSV, in SI. One line per row of the outputs' list of rows, or one per case when there is none; a problem
 * is a line with its reason. The list of records called rows is the list of rows, or the longest where none is called so.
 * @param schema JSON Schema of the outputs; units stand in the head when it is given
 */
export function resultCsv(result: AnalysisResult, schema?: OutputSchema): string {
  const name = rowsName(result);
  const records = result.cases.flatMap((each, index): readonly Readonly<Record<string, Cell>>[] => {
    if (each.problem) return [{ case: index + 1, problem: `${each.problem.kind}: ${each.problem.message}` }];
    const outputs = each.outputs as Readonly<Record<string, unknown>>;
    const rows = name === undefined ? [outputs] : (outputs[name] as readonly unknown[]);
    return rows.map((row) => ({ case: index + 1, ...flatRecord(row, "") }));
  });
  const head = [...new Set(records.flatMap((record) => Object.keys(record)))];
  const rowSchema = name === undefined ? schema : (schema?.properties?.[name]?.items as OutputSchema | undefined);
  const labelled = head.map((path) => withUnit(path, quantityAt(rowSchema, path)));
  return csvText(
    labelled,
    records.map((record) => head.map((path) => record[path] ?? null)),
  );
}

function rowsName(result: AnalysisResult): string | undefined {
  let best: { readonly name: string; readonly length: number } | undefined;
  for (const each of result.cases) {
    for (const [name, value] of Object.entries((each.outputs ?? {}) as Record<string, unknown>)) {
      if (!isRecords(value)) continue;
      const length = name === "rows" ? Number.POSITIVE_INFINITY : value.length;
      if (!best || length > best.length) best = { name, length };
    }
  }
  if (!best) return undefined;
  const { name } = best;
  return result.cases.every((each) => each.problem || isRecords((each.outputs as Record<string, unknown>)[name])) ? name : undefined;
}

function isRecords(value: unknown): value is readonly Readonly<Record<string, unknown>>[] {
  return Array.isArray(value) && value.length > 0 && value.every((row) => typeof row === "object" && row !== null && !Array.isArray(row));
}

function flatRecord(value: unknown, path: string): Readonly<Record<string, Cell>> {
  if (value === null || typeof value !== "object") return { [path]: (value ?? null) as Cell };
  if (Array.isArray(value)) return { [path]: JSON.stringify(value) };
  const entries = Object.entries(value).map(([name, inner]) => flatRecord(inner, path === "" ? name : `${path}.${name}`));
  return Object.assign({}, ...entries) as Readonly<Record<string, Cell>>;
}

function quantityAt(schema: OutputSchema | undefined, path: string): QuantityKind | undefined {
  const branches = (node: OutputSchema | undefined): readonly OutputSchema[] =>
    node === undefined ? [] : [node, ...(node.anyOf ?? []).flatMap(branches)];
  const inner = (nodes: readonly OutputSchema[], name: string) => nodes.flatMap((node) => branches(node.properties?.[name]));
  const found = path.split(".").reduce<readonly OutputSchema[]>(inner, branches(schema));
  return found.find((node) => node.quantity)?.quantity as QuantityKind | undefined;
}

function withUnit(label: string, kind: QuantityKind | undefined): string {
  const unit = kind === undefined ? "" : siUnit(kind);
  return unit === "" ? label : `${label} [${unit}]`;
}

function csvCell(value: Cell): string {
  if (value === null) return "";
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
