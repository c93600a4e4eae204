import { CST, Lexer } from "yaml";

/** Deepest nesting of a document that is read. */
export const deepest = 64;
const widestIndent = 512;

/**
 * Where a text nests too deep to be read, told from its tokens alone: the reader behind it would recurse once for each level.
 * Returns the offset of the token that goes too far.
 */
export function tooDeepAt(text: string): number | undefined {
  let offset = 0;
  let flow = 0;
  let inLine = 0;
  let atLineStart = true;
  for (const token of new Lexer().lex(text)) {
    const type = CST.tokenType(token);
    const indent = atLineStart && type === "space" ? token.length : 0;
    atLineStart = type === "newline";
    if (atLineStart) inLine = 0;
    else if (type === "flow-map-start" || type === "flow-seq-start") flow += 1;
    else if (type === "flow-map-end" || type === "flow-seq-end") flow = Math.max(0, flow - 1);
    else if (flow === 0 && (type === "seq-item-ind" || type === "explicit-key-ind" || type === "map-value-ind")) inLine += 1;
    if (flow > deepest || inLine > deepest || indent > widestIndent) return offset;
    // The lexer marks the document and each plain scalar with a character that the text does not have.
    if (type !== "doc-mode" && type !== "scalar" && type !== "flow-error-end") offset += token.length;
  }
  return undefined;
}
