import { errorText, standingOf, standingSentence, type ValidationRow } from "../validation/index.ts";
import { cellWidth, type Ink, wrapCells } from "./ink.ts";

/** Comparisons that are printed at most; the others are counted. */
const mostComparisons = 6;
/** From this width on the largest error has room too. */
const roomyWidth = 76;

/** How an answer stands to published data, with the errors of the nearest check; nothing where the analysis is silent about it. */
export function standingLines(outputs: unknown, validation: readonly ValidationRow[], width: number, ink: Ink): readonly string[] {
  const standing = standingOf(outputs, validation);
  if (!standing) return [];
  const shown = standing.comparisons.slice(0, mostComparisons);
  const isOutside = standing.outside.length > 0 || standing.distance === null;
  const words = wrapCells(`  ${standingSentence(standing)}`, width, "  ").map(isOutside ? ink.care : (line) => line);
  if (shown.length === 0) return words;
  const isWide = width >= roomyWidth;
  const texts = shown.map((row) => [
    row.quantity,
    errorText(row.bias),
    errorText(row.rms),
    ...(isWide ? [errorText(row.largest)] : []),
    String(row.rows),
  ]);
  const heads = ["computed less published", "bias", "rms", ...(isWide ? ["largest"] : []), "rows"];
  const widths = heads.map((head, index) => Math.max(cellWidth(head), ...texts.map((row) => cellWidth(row[index] ?? ""))));
  const name = Math.min(widths[0] ?? 0, width - 4 - widths.slice(1).reduce((sum, each) => sum + each + 2, 0));
  const line = (cells: readonly string[]): readonly string[] => {
    const [first = "", ...more] = wrapCells(cells[0] ?? "", name);
    const numbers = cells.slice(1).map((cell, index) => cell.padStart((widths[index + 1] ?? 0) + cell.length - cellWidth(cell)));
    return [`  ${first.padEnd(name)}  ${numbers.join("  ")}`, ...more.map((rest) => `  ${rest}`)];
  };
  const rest = standing.comparisons.length - shown.length;
  return [
    ...words,
    ...line(heads).map(ink.quiet),
    ...texts.flatMap(line),
    ...(rest > 0 ? [ink.quiet(`  and ${rest} more comparisons`)] : []),
  ];
}
