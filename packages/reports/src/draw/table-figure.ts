import type { TableFigure } from "@wingseed/engine";
import { type ColumnText, formatColumn } from "../format/index.ts";
import type { DrawContext } from "./context.ts";
import { label, textBlock, textSize } from "./label.ts";
import { element, group, type SvgNode } from "./node.ts";
import { wordsUnder } from "./panel.ts";
import { picture } from "./picture.ts";
import { textWidth, wrapText } from "./text-width.ts";

const size = textSize.small;
const rowHeight = 24;
const columnGap = 18;
const widestHead = 120;

interface LaidColumn {
  readonly column: ColumnText;
  readonly head: readonly string[];
  readonly width: number;
}

/** A table as a picture: for files that must stand alone; pages print real tables. Columns that do not fit are named. */
export function drawTable(figure: TableFigure, context: DrawContext): SvgNode {
  const all = figure.columns.map((column, index) =>
    layColumn(
      formatColumn(
        column,
        figure.rows.map((row) => row[index] ?? null),
        context.system,
      ),
    ),
  );
  const { kept, left } = fitting(all, context.width);
  const headHeight = Math.max(...kept.map((each) => textBlock(each.head, size).height), rowHeight) + 4;
  let x = 0;
  const parts = kept.map((each) => {
    const node = drawColumn(each, x, headHeight, context);
    x += each.width + columnGap;
    return node;
  });
  const rule = element("line", {
    x1: 0,
    x2: Math.max(0, x - columnGap),
    y1: headHeight,
    y2: headHeight,
    stroke: context.paint("control-edge"),
  });
  const bottom = headHeight + figure.rows.length * rowHeight + 6;
  const dropped = left.length === 0 ? [] : [`Not shown for want of width: ${left.map((each) => each.column.head).join("; ")}.`];
  const words = wordsUnder(dropped, bottom + 4, context);
  return picture(figure, bottom + words.height + 4, [...parts, rule, words.node], context);
}

function layColumn(column: ColumnText): LaidColumn {
  const head = wrapText(column.head, size, widestHead);
  const width = Math.max(...[...head, ...column.cells].map((text) => textWidth(text, size)), 10);
  return { column, head, width };
}

function fitting(all: readonly LaidColumn[], room: number): { readonly kept: readonly LaidColumn[]; readonly left: readonly LaidColumn[] } {
  let used = 0;
  const count = all.findIndex((each) => {
    used += each.width + columnGap;
    return used - columnGap > room;
  });
  return count < 1
    ? { kept: count < 0 ? all : all.slice(0, 1), left: count < 0 ? [] : all.slice(1) }
    : { kept: all.slice(0, count), left: all.slice(count) };
}

function drawColumn(laid: LaidColumn, x: number, headHeight: number, context: DrawContext): SvgNode {
  const anchor = laid.column.numeric ? "end" : "start";
  const headBlock = textBlock(laid.head, size);
  const place = (width: number) => (laid.column.numeric ? x + laid.width - width : x);
  const head = label(laid.head, { x: place(headBlock.width), y: headHeight - 4 - headBlock.height, ...headBlock }, anchor, {
    size,
    fill: context.paint("ink-2"),
  });
  const cells = laid.column.cells.map((text, index) => {
    const block = textBlock([text], size);
    const y = headHeight + index * rowHeight + (rowHeight - block.height) / 2;
    return label([text], { x: place(block.width), y, ...block }, anchor, { size, fill: context.paint("ink") });
  });
  return group("column", [head, ...cells]);
}
