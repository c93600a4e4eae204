import type { AnalysisResult, Figure, TableFigure } from "@wingseed/engine";
import { fixedText, limitWord, sentence, type UnitSystem } from "../format/index.ts";
import { figureTable } from "../tables/index.ts";
import type { ValidationRow } from "../validation/index.ts";
import type { AnalysisMeta, CaseView, ResultView } from "../view.ts";
import { type Ink, terminalInk, wrapCells } from "./ink.ts";
import { sceneText } from "./scene-text.ts";
import { standingLines } from "./standing-text.ts";
import { tableText } from "./table-text.ts";
import { isUpright } from "./upright-text.ts";

export interface TerminalOptions {
  /** Character cells; narrower than 60 is taken as 60. @defaultValue 80 */
  readonly width?: number;
  /** True on a terminal that wants colour (NO_COLOR not set). @defaultValue false */
  readonly color?: boolean;
  /** @defaultValue "si" */
  readonly system?: UnitSystem;
  /** @defaultValue 24 */
  readonly mostRows?: number;
  /** How the program compares with published data, for analyses that say where they stand. */
  readonly validation?: readonly ValidationRow[];
  /** The conditions in words, as the host knows them: "300 m above sea, 15 °C, calm". */
  readonly conditions?: string;
}

export interface TerminalReport {
  readonly stdout: string;
  readonly stderr: string;
}

const caution = "These are estimates; they do not clear anyone to fly.";

/**
 * A result in plain text: question, answer, table, limits and conditions for stdout; warnings, recalled values and the
 * standing caution for stderr.
 */
export function terminalReport(
  meta: AnalysisMeta,
  result: AnalysisResult,
  view: ResultView,
  options: TerminalOptions = {},
): TerminalReport {
  const width = Math.max(60, options.width ?? 80);
  const ink = terminalInk(options.color ?? false);
  const lines: string[] = wrapCells(meta.question, width).map(ink.strong);
  result.cases.forEach((each, index) => {
    if (result.cases.length > 1) lines.push("", ink.strong(`Case ${index + 1} of ${result.cases.length}`));
    const shown = view.cases[index];
    if (each.problem)
      lines.push(
        ...`No answer: ${each.problem.message}`.split("\n").flatMap((line, at) => wrapCells(at === 0 ? line : `  ${line}`, width, "  ")),
      );
    else if (shown) {
      lines.push(...caseLines(shown, { ...options, width }, ink));
      const standing = standingLines(each.outputs, options.validation ?? [], width, ink);
      if (standing.length > 0) lines.push("", ...standing);
    }
  });
  if (options.conditions) lines.push("", ...wrapCells(`  At: ${options.conditions}`, width, "  "));
  const remarks = warningLines(result, width, ink);
  return { stdout: `${lines.join("\n")}\n`, stderr: remarks.map((line) => `${line}\n`).join("") };
}

function caseLines(view: CaseView, options: TerminalOptions & { readonly width: number }, ink: Ink): readonly string[] {
  const system = options.system ?? "si";
  const lines = [...wrapCells(sentence(view.answer.sentence, { system }), options.width)];
  const tables = printedTables(view.figures);
  for (const table of tables) {
    lines.push("", ...captionLines(table, tables, options.width, ink));
    lines.push(...tableText(table, { width: options.width, system, ink, mostRows: options.mostRows ?? 24 }));
  }
  for (const figure of view.figures)
    if (figure.kind === "scene")
      lines.push("", ...sceneText(figure, { width: options.width, system, ink, mostRows: options.mostRows ?? 24 }));
  const words = view.figures.filter((figure) => figure.kind === "text");
  for (const figure of words)
    for (const tokens of figure.paragraphs) lines.push("", ...wrapCells(sentence(tokens, { system }), options.width));
  if (view.limits.length > 0) lines.push("", ...limitLines(view, options.width, ink));
  return lines;
}

/** Every table, or the numbers behind the first picture where there is none. */
function printedTables(figures: readonly Figure[]): readonly TableFigure[] {
  const tables = figures.filter((figure) => figure.kind === "table");
  const main = mainTable(figures);
  return tables.length > 0 ? tables : main ? [main] : [];
}

/** The caption of one of several tables; those that stand upright bring their own. */
function captionLines(table: TableFigure, tables: readonly TableFigure[], width: number, ink: Ink): readonly string[] {
  return tables.length < 2 || isUpright(table) ? [] : wrapCells(`  ${table.caption}`, width, "  ").map(ink.quiet);
}

/** The first table among the figures, or the numbers behind the first picture. */
export function mainTable(figures: readonly Figure[]): TableFigure | undefined {
  const table = figures.find((figure) => figure.kind === "table");
  // A drawing is told in words of its own.
  const picture = figures.find((figure) => figure.kind !== "text" && figure.kind !== "scene");
  return table ?? (picture ? figureTable(picture) : undefined);
}

/** Limits that are printed at most; the others are counted. */
const mostLimits = 8;

/** Limits, most used first, the binding one marked in words. */
function limitLines({ limits, answer }: CaseView, width: number, ink: Ink): readonly string[] {
  const sorted = limits.toSorted((a, b) => b.share - a.share);
  const shown = sorted.slice(0, mostLimits);
  const widest = Math.max(...shown.map((limit) => limit.name.length));
  const head = ink.quiet(`  ${"share of the limit used".padEnd(widest)}`);
  const lines = shown.flatMap((limit) => {
    const share = `${fixedText(limit.share * 100, 0)} %`.padStart(6);
    const word = limitWord(limit, answer);
    const text = `  ${limit.name.padEnd(widest)} ${share}  ${limit.where}${word === "" ? "" : ` (${word})`}`;
    const wrapped = wrapCells(text, width, " ".repeat(widest + 11));
    return limit.binding ? wrapped.map(ink.strong) : wrapped;
  });
  const rest = sorted[mostLimits];
  if (rest) lines.push(`  and ${sorted.length - mostLimits} more, ${fixedText(rest.share * 100, 0)} % or less`);
  return [head, ...lines];
}

function warningLines(result: AnalysisResult, width: number, ink: Ink): readonly string[] {
  const graded = result.warnings.map(({ grade, message }) => ({ word: grade === "care" ? "Care" : "Note", message }));
  const lines = graded.flatMap(({ word, message }) =>
    wrapCells(`${word}: ${message}`, width, "  ").map(word === "Care" ? ink.care : ink.quiet),
  );
  // Where nothing was answered, nothing is estimated.
  return result.cases.every((each) => each.problem) ? lines : [...lines, caution];
}
