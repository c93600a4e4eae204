import { inflateSync } from "node:zlib";

/**
 * The words of a PDF in the order in which they are drawn, enough for the files of our own typesetter: fonts with two-byte codes
 * and a map to Unicode, content in deflated streams, no object streams.
 */
export function pdfText(bytes: Uint8Array): string {
  const file = Buffer.from(bytes).toString("latin1");
  const objects = new Map(
    [...file.matchAll(/(?:^|\n)(\d+) 0 obj\s([\s\S]*?)\nendobj/g)].map(([, number = "", body = ""]) => [number, body]),
  );
  const fonts = new Map<string, ReadonlyMap<string, string>>();
  for (const body of objects.values()) {
    for (const [, names = ""] of body.matchAll(/\/Font <<([\s\S]*?)>>/g)) {
      for (const [, name = "", font = ""] of names.matchAll(/\/(\w+) (\d+) 0 R/g)) fonts.set(name, unicodeMap(objects, font));
    }
  }
  const contents = [...objects.values()].map(streamText).filter((text) => /\bT[jJ]\b/.test(text));
  return contents.map((content) => drawnText(content, fonts)).join("\n");
}

function streamText(body: string): string {
  const [, head = "", data = ""] = /^([\s\S]*?)\nstream\r?\n([\s\S]*?)\r?\nendstream/.exec(body) ?? [];
  if (!head.includes("/FlateDecode")) return data;
  try {
    return inflateSync(Buffer.from(data, "latin1")).toString("latin1");
  } catch {
    return "";
  }
}

function unicodeMap(objects: ReadonlyMap<string, string>, font: string): ReadonlyMap<string, string> {
  const [, map = ""] = /\/ToUnicode (\d+) 0 R/.exec(objects.get(font) ?? "") ?? [];
  const text = streamText(objects.get(map) ?? "");
  const letters = (hex: string) => Buffer.from(hex, "hex").swap16().toString("utf16le");
  const pairs = [...text.matchAll(/^<([0-9A-F]{4})> <([0-9A-F]+)>$/gm)].map(([, code = "", hex = ""]) => [code, letters(hex)] as const);
  return new Map(pairs);
}

/** One line for each piece of text that is set in one go. */
function drawnText(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): string {
  let font: ReadonlyMap<string, string> = new Map();
  let text = "";
  for (const [token, name, literal] of content.matchAll(/\/(\w+) [\d.]+ Tf|\(((?:\\[\s\S]|[^\\()])*)\)|\bET\b/g)) {
    if (name !== undefined) font = fonts.get(name) ?? font;
    else if (literal === undefined) text += token === "ET" ? "\n" : "";
    else
      text += codes(literal)
        .map((code) => font.get(code) ?? "")
        .join("");
  }
  return text;
}

const escapes: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" };

/** The two-byte codes of a literal string. */
function codes(literal: string): readonly string[] {
  const raw = literal.replace(/\\(?:([0-7]{1,3})|\r?\n|([\s\S]))/g, (_all, octal?: string, letter?: string) =>
    octal !== undefined ? String.fromCharCode(Number.parseInt(octal, 8)) : letter === undefined ? "" : (escapes[letter] ?? letter),
  );
  return Buffer.from(raw, "latin1").toString("hex").toUpperCase().match(/.{4}/g) ?? [];
}
