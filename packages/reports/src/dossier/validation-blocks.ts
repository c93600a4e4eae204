import { noValue } from "../format/index.ts";
import { comparisonFigure, errorText, errorWords, type ValidationRow } from "../validation/index.ts";
import type { Block, PanelsBlock, TableBlock } from "./blocks.ts";

/** Pictures printed of one source, and of all regressions together. */
const mostPanels = { source: 3, regressions: 9 };

/** How the program compares with published data: one table, what fell outside, then every source with its pictures. */
export function validationBlocks(rows: readonly ValidationRow[], markOf: (source: string) => string): readonly Block[] {
  if (rows.length === 0) return [{ kind: "caution", grade: "care", text: "No comparison with published data was handed to this dossier." }];
  const failed = rows.filter((row) => row.gatedRows > 0 && !row.passed);
  const regressions = rows.filter(isRegression);
  const measured = byCheck(rows.filter((row) => !isRegression(row)));
  return [
    comparisonTable(rows, markOf),
    ...failed.map((row): Block => ({ kind: "caution", grade: "care", text: `${row.check}, ${row.quantity}: outside its tolerance.` })),
    ...measured.flatMap((group) => sourceBlocks(group, markOf)),
    ...regressionBlocks(regressions, markOf),
  ];
}

function byCheck(rows: readonly ValidationRow[]): readonly (readonly ValidationRow[])[] {
  return [...new Set(rows.map((row) => row.check))].map((check) => rows.filter((row) => row.check === check));
}

/** Numbers that somebody computed: they hold the arithmetic, not the model. */
function isRegression({ reference }: ValidationRow): boolean {
  return reference === "computed" || reference === "formula";
}

function comparisonTable(rows: readonly ValidationRow[], markOf: (source: string) => string): TableBlock {
  return {
    kind: "table",
    caption:
      "Computed minus published. The tolerance judges the rows under “judged”, the others are only reported. It was set before the comparison unless the page of its source says otherwise.",
    head: ["quantity", "rows", "judged", "bias", "root mean square", "largest", "tolerance", "within"],
    numeric: [false, true, true, true, true, true, false, false],
    rows: rows.flatMap((row, index) => [...checkHeading(row, rows[index - 1], markOf), comparedRow(row)]),
  };
}

/** The check with its source, over its rows. */
function checkHeading(row: ValidationRow, before: ValidationRow | undefined, markOf: (source: string) => string): readonly string[][] {
  if (before?.check === row.check && before.source === row.source) return [];
  return [[`${row.check} ${markOf(row.source)}${isRegression(row) ? `, ${row.reference}, not measured` : ""}`]];
}

function comparedRow(row: ValidationRow): readonly string[] {
  return [
    row.quantity,
    String(row.rows),
    String(row.gatedRows),
    errorText(row.bias),
    errorText(row.rms),
    errorText(row.largest),
    row.gatedRows > 0 ? errorText(row.tolerance) : "reported, not gated",
    verdict(row),
  ];
}

/** A row that decides nothing has not passed anything. */
function verdict(row: ValidationRow): string {
  if (row.gatedRows === 0) return noValue;
  return row.passed ? "yes" : "no";
}

/** One source: its pictures side by side, then why its tolerances are what they are and what else is to be said. */
function sourceBlocks(rows: readonly ValidationRow[], markOf: (source: string) => string): readonly Block[] {
  const [first] = rows;
  if (!first) return [];
  const name = `${first.title ?? first.check} ${markOf(first.source)}`;
  const lead = first.component === undefined ? name : `${name}, ${first.component}`;
  return [
    {
      kind: "paragraph",
      look: "text",
      withNext: true,
      lead,
      text: `Crosses: measured. Line or dots: computed. Made again by ${again(first.check)}.`,
    },
    ...panels(rows, mostPanels.source),
    ...wordsBlocks(rows),
  ];
}

/** The regressions in one group: one picture each tells that they are there. */
function regressionBlocks(rows: readonly ValidationRow[], markOf: (source: string) => string): readonly Block[] {
  if (rows.length === 0) return [];
  const firsts = byCheck(rows).flatMap(([first]) => (first ? [first] : []));
  return [
    {
      kind: "paragraph",
      look: "text",
      withNext: true,
      lead: "Held against formulas and tables",
      text: "These numbers were computed by others or by hand, not measured: they hold the arithmetic and say nothing about the model. Dashes: published. Line: computed.",
    },
    ...panels(firsts, mostPanels.regressions, (row) => `${row.title ?? row.check} ${markOf(row.source)}, ${row.quantity}`),
    ...wordsBlocks(rows),
  ];
}

/** Pictures of the comparisons with most to see: along a quantity before along mere rows, gated ones first, then those with most rows. */
function panels(
  rows: readonly ValidationRow[],
  most: number,
  nameOf = (row: ValidationRow) => capital(row.quantity),
): readonly PanelsBlock[] {
  const runsAlong = (row: ValidationRow): number => Number((row.picture?.along ?? null) !== null);
  const chosen = rows.toSorted(
    (a, b) => runsAlong(b) - runsAlong(a) || Number(b.gatedRows > 0) - Number(a.gatedRows > 0) || b.rows - a.rows,
  );
  const figures = chosen.flatMap((row) => {
    const figure = comparisonFigure(row);
    return figure ? [{ caption: `${nameOf(row)}: ${errorWords(row)}.`, figure: unnamed(figure) }] : [];
  });
  return figures.length === 0 ? [] : [{ kind: "panels", figures: figures.slice(0, most) }];
}

/** Without names at the lines' ends: there is no room, and the words above say which is which. */
function unnamed(figure: NonNullable<ReturnType<typeof comparisonFigure>>) {
  return { ...figure, series: figure.series.map((series) => ({ ...series, name: "" })) };
}

function wordsBlocks(rows: readonly ValidationRow[]): readonly Block[] {
  const reasons = itemsOf(rows, "reason");
  const notes = itemsOf(rows, "note");
  return [
    ...(reasons.length === 0
      ? []
      : [{ kind: "paragraph", look: "compact", lead: "Why these tolerances", text: sentences(reasons) } as const]),
    ...(notes.length === 0 ? [] : [{ kind: "paragraph", look: "compact", lead: "Remarks", text: sentences(notes) } as const]),
  ];
}

/** Words about comparisons, said once where all of a check bear the same. */
function itemsOf(rows: readonly ValidationRow[], field: "reason" | "note"): readonly string[] {
  const several = new Set(rows.map((row) => row.check)).size > 1;
  const items = rows.flatMap((row) => {
    const words = row[field];
    if (!words) return [];
    const sameCheck = rows.filter((other) => other.check === row.check);
    const shared = sameCheck.every((other) => other[field] === words);
    if (shared) return [several ? `${row.check}: ${words}` : words];
    return [`${several ? `${row.check}, ` : ""}${row.quantity}: ${words}`];
  });
  return [...new Set(items)];
}

function sentences(items: readonly string[]): string {
  const text = items.map((item) => item.replace(/[.;]$/, "")).join("; ");
  return `${capital(text)}.`;
}

function again(check: string): string {
  return `npx vitest run validation/${check}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
