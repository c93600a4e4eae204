import { textWidth, wrapText } from "../draw/index.ts";
import type { TableBlock } from "./blocks.ts";

/** Type of tables and room at both sides of a cell [pt]; the page layout uses the same. */
export const tableType = { size: 8.3, inset: 3 } as const;
/** Width of the text on the page [pt]: A4 less two margins of 18 mm. */
const pageWidth = ((210 - 36) / 25.4) * 72;

/**
 * Widths of a table's columns [pt]: what they need in one line where the page has room; else heads of figures break in
 * two, and long words share what is left and wrap.
 */
export function columnWidths(block: TableBlock): readonly number[] {
  const oneLine = wantedWidths(block, (head) => textWidth(head, tableType.size));
  if (sum(oneLine) <= pageWidth) return oneLine;
  const compact = wantedWidths(block, headWidth);
  if (sum(compact) <= pageWidth) return compact;
  const figures = sum(compact.filter((_, index) => block.numeric[index]));
  const words = compact.flatMap((width, index) => (block.numeric[index] ? [] : [width]));
  const cap = fairShare(words, Math.max(0, pageWidth - figures));
  return compact.map((width, index) => (block.numeric[index] ? width : Math.min(width, cap)));
}

function wantedWidths(block: TableBlock, headNeeds: (head: string) => number): readonly number[] {
  return block.head.map((head, index) => {
    const cells = block.rows.map((row) => textWidth(row[index] ?? "", tableType.size));
    return Math.max(headNeeds(head), ...cells) + 2 * tableType.inset + 1;
  });
}

/** The width at which columns that want more are cut so that all fit into the room. */
function fairShare(wanted: readonly number[], room: number): number {
  const sorted = wanted.toSorted((a, b) => a - b);
  let left = room;
  for (const [index, width] of sorted.entries()) {
    const share = left / (sorted.length - index);
    if (width > share) return share;
    left -= width;
  }
  return room;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** The narrowest width at which a head takes no more than two lines. */
function headWidth(head: string): number {
  const widths = head.split(" ").map((word) => textWidth(word, tableType.size));
  let width = Math.max(...widths);
  while (wrapText(head, tableType.size, width).length > 2) width += 2;
  return width;
}
