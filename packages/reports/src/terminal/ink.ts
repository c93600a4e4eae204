/** Colours of a terminal that carry nothing alone: every word would do without them. */
export interface Ink {
  strong(text: string): string;
  /** What the reader may change. */
  handle(text: string): string;
  quiet(text: string): string;
  care(text: string): string;
}

const controlSequence = "\u001b[";

function wrapped(code: string): (text: string) => string {
  return (text) => `${controlSequence}${code}m${text}${controlSequence}0m`;
}

/** Bold and the handle colour on a terminal, plain words elsewhere. */
export function terminalInk(color: boolean): Ink {
  const plain = (text: string) => text;
  if (!color) return { strong: plain, handle: plain, quiet: plain, care: plain };
  return { strong: wrapped("1"), handle: wrapped("38;5;162"), quiet: wrapped("2"), care: wrapped("33") };
}

/** Width of text in character cells; control sequences count nothing. */
export function cellWidth(text: string): number {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what an escape sequence begins with
  return [...text.replace(/\u001b\[[0-9;]*m/g, "")].length;
}

/** Breaks plain text into lines no wider than `width` cells; later lines begin with `indent`. Leading spaces stay. */
export function wrapCells(text: string, width: number, indent = ""): readonly string[] {
  const [start = ""] = /^ */.exec(text) ?? [];
  const lines: string[] = [];
  let line = start;
  let empty = true;
  for (const word of text.slice(start.length).split(/[ \n]/)) {
    const longer = empty ? line + word : `${line} ${word}`;
    if (!empty && cellWidth(longer) > width) {
      lines.push(line);
      line = indent + word;
    } else line = longer;
    empty = false;
  }
  return [...lines, line];
}
