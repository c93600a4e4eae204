/** Where a text stops being JSON, and what could stand there. */
export interface JsonSlip {
  readonly offset: number;
  readonly read: string;
  readonly expected: string;
}

type Awaited = "value" | "value or ]" | "name or }" | "name" | ":" | ", or ]" | ", or }" | "end";

const literal =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: JSON refuses exactly these inside strings
  /(?:"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/uy;
const blanks = /[ \t\n\r]*/uy;

/** Finds the first place at which a text breaks the grammar of JSON; undefined when it does not. @source rfc-8259, sections 2 to 7, from memory */
export function jsonSlip(text: string): JsonSlip | undefined {
  const open: ("{" | "[")[] = [];
  let awaited: Awaited = "value";
  let offset = 0;
  const afterValue = (): Awaited => (open.length === 0 ? "end" : open.at(-1) === "{" ? ", or }" : ", or ]");
  for (;;) {
    blanks.lastIndex = offset;
    blanks.exec(text);
    offset = blanks.lastIndex;
    const character = text[offset];
    if (character === undefined) return awaited === "end" ? undefined : { offset, read: "the end of the text", expected: inWords(awaited) };
    const next = punctuation(awaited, character, open, afterValue);
    if (next !== undefined) {
      awaited = next;
      offset += 1;
      continue;
    }
    literal.lastIndex = offset;
    const token = literal.exec(text)?.[0];
    const fits = token !== undefined && (awaited.startsWith("value") || (awaited.startsWith("name") && token.startsWith('"')));
    if (!fits) return { offset, read: `"${text.slice(offset, offset + 12).split("\n")[0]}"`, expected: inWords(awaited) };
    awaited = awaited.startsWith("name") ? ":" : afterValue();
    offset += token.length;
  }
}

function punctuation(awaited: Awaited, character: string, open: ("{" | "[")[], afterValue: () => Awaited): Awaited | undefined {
  if (awaited.startsWith("value") && (character === "{" || character === "[")) {
    open.push(character);
    return character === "{" ? "name or }" : "value or ]";
  }
  if (awaited === ":" && character === ":") return "value";
  if (awaited === ", or ]" && character === ",") return "value";
  if (awaited === ", or }" && character === ",") return "name";
  const closes = (character === "]" && awaited.endsWith("]")) || (character === "}" && awaited.endsWith("}"));
  if (!closes) return undefined;
  open.pop();
  return afterValue();
}

function inWords(awaited: Awaited): string {
  const words: Readonly<Record<Awaited, string>> = {
    value: "a value",
    "value or ]": 'a value or "]"',
    "name or }": 'a name in double quotes or "}"',
    name: "a name in double quotes",
    ":": '":"',
    ", or ]": '"," or "]"',
    ", or }": '"," or "}"',
    end: "nothing more",
  };
  return words[awaited];
}
