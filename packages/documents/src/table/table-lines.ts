/** One cell as written, without the blanks and quotes around it. */
export interface Cell {
  readonly text: string;
  /** Column at which it begins, counted from 1. */
  readonly column: number;
}

export interface TableLine {
  /** Counted from 1. */
  readonly line: number;
  readonly cells: readonly Cell[];
}

/** Where a quotation mark opens and nothing closes it. */
export interface OpenQuote {
  readonly line: number;
  readonly column: number;
}

/** The lines of a text that hold something: no blank lines, no lines of commas alone, no comments (`#`). */
export function tableLines(text: string): { readonly lines: readonly TableLine[]; readonly openQuotes: readonly OpenQuote[] } {
  const lines: TableLine[] = [];
  const openQuotes: OpenQuote[] = [];
  for (const [index, content] of text.split(/\r\n|\n|\r/u).entries()) {
    if (/^[\s,]*$/u.test(content) || /^\s*"?\s*#/u.test(content)) continue;
    const { cells, open } = cellsOf(content);
    if (open !== undefined) openQuotes.push({ line: index + 1, column: open });
    else lines.push({ line: index + 1, cells });
  }
  return { lines, openQuotes };
}

/** Cuts a line at its commas, except inside quotation marks; a doubled mark inside stands for itself (RFC 4180). */
function cellsOf(content: string): { readonly cells: readonly Cell[]; readonly open?: number } {
  const cells: Cell[] = [];
  let start = 0;
  let quote: number | undefined;
  for (let i = 0; i <= content.length; i++) {
    const letter = content[i];
    if (letter === '"') quote = quote === undefined ? i : undefined;
    if (letter !== undefined && (letter !== "," || quote !== undefined)) continue;
    cells.push(cellOf(content.slice(start, i), start));
    start = i + 1;
  }
  return quote === undefined ? { cells } : { cells, open: quote + 1 };
}

function cellOf(written: string, start: number): Cell {
  const text = written.trim();
  const column = start + 1 + (text === "" ? 0 : written.length - written.trimStart().length);
  const quoted = /^"(?<inside>.*)"$/su.exec(text)?.groups?.inside;
  return { text: quoted === undefined ? text : quoted.replaceAll('""', '"').trim(), column };
}
