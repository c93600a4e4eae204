import { textWidth, wrapText } from "../draw/index.ts";
import type { TableBlock } from "./blocks.ts";

/** Room at both sides of a cell [pt]; the page layout uses the same. */
export const cellInset = 3;
/** Sizes of a table's type [pt], the usual one first; smaller ones where they save lines or the columns do not fit otherwise. */
const typeSizes = [8.3, 7.7, 7.1, 6.5, 5.8] as const;
/** Width of the text on the page [pt]: A4 less two margins of 18 mm. */
const pageWidth = ((210 - 36) / 25.4) * 72;

export interface TableLayout {
  /** [pt] */
  readonly typeSize: number;
  /** [pt], the insets included. */
  readonly columns: readonly number[];
}

/**
 * How a table is set: every column as wide as it wants where the page has room; else heads break in two lines and words
 * wrap in a fair share. No column is narrower than its longest word, and figures never break.
 * @param scale of the type
 * @returns undefined when even the smallest type has no room for all columns.
 */
export function tableLayout(block: TableBlock, scale = 1): TableLayout | undefined {
  let chosen: { readonly layout: TableLayout; readonly height: number } | undefined;
  for (const usual of typeSizes) {
    const typeSize = usual * scale;
    const columns = fittedColumns(block, typeSize);
    if (!columns) continue;
    const layout = { typeSize, columns };
    const height = lineCount(block, layout) * typeSize;
    // A step down must save more than it would by being smaller alone; below the second step nothing is gained by it.
    if (!chosen || (usual >= smallestByChoice && height < worthwhile * chosen.height)) chosen = { layout, height };
  }
  return chosen?.layout;
}

const smallestByChoice = 7.5;
const worthwhile = 0.85;

/** Lines that the rows take together. */
function lineCount(block: TableBlock, { typeSize, columns }: TableLayout): number {
  const lines = (text: string, index: number) => wrapText(text, typeSize, (columns[index] ?? 0) - 2 * cellInset).length;
  return block.rows.reduce((sum, row) => sum + (isHeading(row, block) ? 1 : Math.max(1, ...row.map(lines))), 0);
}

/** A table in as few parts as the page has room for; each part repeats the first column. */
export function tableParts(block: TableBlock, scale = 1): readonly { readonly block: TableBlock; readonly layout: TableLayout }[] {
  const layout = tableLayout(block, scale);
  if (layout) return [{ block, layout }];
  const count = block.head.length;
  for (let kept = count - 1; kept >= 2; kept--) {
    const first = withColumns(block, range(0, kept));
    const firstLayout = tableLayout(first, scale);
    if (!firstLayout) continue;
    const rest = { ...withColumns(block, [0, ...range(kept, count)]), caption: `${block.caption}, continued` };
    return [{ block: first, layout: firstLayout }, ...tableParts(rest, scale)];
  }
  // One word wider than the page: it is printed, and runs into the margin.
  return [{ block, layout: { typeSize: typeSizes[4], columns: columnNeeds(block, typeSizes[4]).map((need) => need.least) } }];
}

/** True for a row that is a heading over the rows after it. */
function isHeading(row: readonly string[], block: TableBlock): boolean {
  return row.length === 1 && block.head.length > 1;
}

function range(from: number, to: number): readonly number[] {
  return Array.from({ length: to - from }, (_, index) => from + index);
}

function withColumns(block: TableBlock, kept: readonly number[]): TableBlock {
  return {
    ...block,
    head: kept.map((index) => block.head[index] ?? ""),
    numeric: kept.map((index) => block.numeric[index] ?? false),
    rows: block.rows.map((row) => (isHeading(row, block) ? row : kept.map((index) => row[index] ?? ""))),
  };
}

function fittedColumns(block: TableBlock, typeSize: number): readonly number[] | undefined {
  const needs = columnNeeds(block, typeSize);
  const oneLine = needs.map((need) => need.most);
  if (sum(oneLine) <= pageWidth) return oneLine;
  const compact = needs.map((need) => (need.numeric ? need.least : need.most));
  if (sum(compact) <= pageWidth) return compact;
  const least = needs.map((need) => need.least);
  if (sum(least) > pageWidth) return undefined;
  const cap = largestCap(least, compact);
  return compact.map((wanted, index) => Math.max(least[index] ?? 0, Math.min(wanted, cap)));
}

/** The width above which columns are cut so that all just fit. */
function largestCap(least: readonly number[], wanted: readonly number[]): number {
  let [low, high] = [0, pageWidth];
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    const total = sum(wanted.map((width, index) => Math.max(least[index] ?? 0, Math.min(width, middle))));
    if (total <= pageWidth) low = middle;
    else high = middle;
  }
  return low;
}

interface ColumnNeed {
  readonly numeric: boolean;
  /** Everything in one line [pt]. */
  readonly most: number;
  /** The longest word; for figures, the longest cell under a head in two lines [pt]. */
  readonly least: number;
}

function columnNeeds(block: TableBlock, typeSize: number): readonly ColumnNeed[] {
  const width = (text: string) => textWidth(text, typeSize);
  return block.head.map((head, index) => {
    const numeric = block.numeric[index] ?? false;
    const cells = block.rows.filter((row) => !isHeading(row, block)).map((row) => row[index] ?? "");
    const around = 2 * cellInset + 1;
    const cellLeast = numeric ? cells.map(width) : cells.flatMap(words).map(width);
    return {
      numeric,
      most: Math.max(width(head), ...cells.map(width)) + around,
      least: Math.max(headWidth(head, typeSize), ...cellLeast) + around,
    };
  });
}

/** Parts of a text that stay in one line. */
function words(text: string): readonly string[] {
  return text.split(" ");
}

/** The narrowest width at which a head takes no more than two lines. */
function headWidth(head: string, typeSize: number): number {
  let width = Math.max(...words(head).map((word) => textWidth(word, typeSize)));
  while (wrapText(head, typeSize, width).length > 2) width += 2;
  return width;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
