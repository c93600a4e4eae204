import { quantity, z } from "@wingseed/engine";
import { describe, expect, test } from "vitest";
import { problemLine } from "../document-problem.ts";
import type { DocumentKind } from "./document-kinds.ts";
import { readYamlDocument } from "./read-document.ts";

const length = quantity("length", { description: "Length.", exclusiveMinimum: 0 });
const mast: DocumentKind = {
  kind: "mast",
  pathPattern: /^masts\/.*\.yaml$/u,
  place: "masts/*.yaml",
  migrations: [],
  schema: z.strictObject({
    format: z.literal(1),
    title: z.string().min(1),
    mast: z.strictObject({
      height: length,
      mass: quantity("mass", { description: "Mass." }),
      stays: z.array(z.strictObject({ length })).optional(),
    }),
    foundation: z
      .discriminatedUnion("kind", [z.strictObject({ kind: z.literal("rock") }), z.strictObject({ kind: z.literal("sand"), depth: length })])
      .optional(),
    picture: z.string().meta({ reference: "geojson" }).optional(),
  }),
};

const read = (text: string, kind = mast) => readYamlDocument(kind, { file: "masts/a.yaml", text, hash: "h" });
const lines = (text: string, kind = mast) => read(text, kind).problems.map(problemLine);

const sound = `format: 1
title: A mast
provenance: invented
mast:
  height: 12 m ± 1 %   # with the base
  mass: { value: 240 kg, source: "scale, 3 March" }
  stays: [{ length: 15 m }, { length: 1500 cm }]
picture: places/a.geojson
`;

test("a sound document keeps every number as written, with line, column, interval and source", () => {
  const { document, problems, references } = read(sound);
  expect(problems).toEqual([]);
  expect(document).toMatchObject({ path: "masts/a.yaml", kind: "mast", hash: "h" });
  expect(document?.data).toEqual({
    format: 1,
    title: "A mast",
    mast: { height: 12, mass: 240, stays: [{ length: 15 }, { length: 15 }] },
    picture: "places/a.geojson",
  });
  expect(document?.written).toEqual({
    "/mast/height": {
      text: "12 m ± 1 %",
      value: 12,
      uncertainty: { kind: "normal", halfWidth: 0.12 },
      source: "invented",
      line: 5,
      column: 11,
    },
    "/mast/mass": { text: "240 kg", value: 240, source: "scale, 3 March", line: 6, column: 9 },
    "/mast/stays/0/length": { text: "15 m", value: 15, source: "invented", line: 7, column: 21 },
    "/mast/stays/1/length": { text: "1500 cm", value: 15, source: "invented", line: 7, column: 39 },
  });
  expect(references).toEqual([{ path: ["picture"], kind: "geojson", target: "places/a.geojson", line: 8, column: 10 }]);
});

describe("every problem has its line and column", () => {
  test.each([
    [
      "unknown key",
      sound.replace("  height:", "  hieght:"),
      [
        'masts/a.yaml:4:1: mast: "height" is missing: Length',
        'masts/a.yaml:5:3: mast.hieght: this key is not known here; did you mean "height"?',
      ],
    ],
    ["missing key", "format: 1\nmast: { height: 1 m, mass: 1 kg }\n", ['masts/a.yaml:1:1: "title" is missing']],
    [
      "missing unit",
      sound.replace("12 m ± 1 %", "12"),
      ['masts/a.yaml:5:11: mast.height: 12 has no unit; a length is expected, for example "1.15 m"'],
    ],
    [
      "wrong dimension",
      sound.replace("12 m ± 1 %", "12 kg"),
      ['masts/a.yaml:5:11: mast.height: "12 kg" is a mass; a length is expected, for example "1.15 m"'],
    ],
    [
      "unknown unit",
      sound.replace("12 m ± 1 %", "12 meters"),
      ['masts/a.yaml:5:11: mast.height: "meters" is no unit known here; write "m"; a length is expected, for example "1.15 m"'],
    ],
    [
      "decimal comma",
      sound.replace("12 m ± 1 %", "12,5 m"),
      ['masts/a.yaml:5:11: mast.height: "12,5 m" has a comma in its number; write a decimal point, as in "12.5 m"'],
    ],
    ["wrong type", sound.replace("A mast", "[A, mast]"), ["masts/a.yaml:2:8: title: a text is expected; read a list of 2 entries"]],
    ["range", sound.replace("1500 cm", "0 m"), ["masts/a.yaml:7:39: mast.stays[1].length: 0 m is out of range; more than 0 m is allowed"]],
    [
      "wrong alternative",
      `${sound}foundation: { kind: mud }\n`,
      ['masts/a.yaml:9:21: foundation.kind: "rock" or "sand" is allowed; read "mud"'],
    ],
    [
      "key of another alternative",
      `${sound}foundation: { kind: rock, depth: 2 m }\n`,
      ["masts/a.yaml:9:27: foundation.depth: this key is not known here; the keys are kind"],
    ],
    ["duplicate key", `${sound}title: Again\n`, ["masts/a.yaml:9:1: this key stands twice in the same mapping"]],
    [
      "broken list",
      sound.replace("1500 cm }]", "1500 cm }"),
      ["masts/a.yaml:8:1: YAML: Flow sequence in block collection must be sufficiently indented and end with a ]"],
    ],
    ["open quotes", sound.replace("A mast", '"A mast'), [expect.stringMatching(/^masts\/a\.yaml:\d+:\d+: YAML: Missing closing "quote/)]],
    ["tab", "format: 1\nmast:\n\theight: 1 m\n", ["masts/a.yaml:3:1: YAML: Tabs are not allowed as indentation"]],
    ["unknown tag", sound.replace("A mast", "!secret A mast"), ["masts/a.yaml:2:8: YAML: Unresolved tag: !secret"]],
    [
      "missing anchor",
      sound.replace("A mast", "*mast"),
      ["masts/a.yaml:2:8: there is no anchor &mast above; put a text that begins with * in quotes"],
    ],
    ["two documents", `${sound}---\nformat: 1\n`, [expect.stringContaining("masts/a.yaml:9:1: YAML: Source contains multiple documents")]],
    ["key that is no word", `${sound}? [a, b]\n: 1\n`, ["masts/a.yaml:9:3: a key is a plain word"]],
    ["prototype key", `${sound}__proto__: { polluted: true }\n`, ["masts/a.yaml:9:1: a key is a plain word"]],
    ["empty document", "# nothing\n", ["masts/a.yaml:1:1: a mapping of keys is expected; the document is empty"]],
    ["a list", "- 1\n", ["masts/a.yaml:1:1: a mapping of keys is expected"]],
    ["no format", sound.replace("format: 1\n", ""), ['masts/a.yaml:1:1: "format: 1" is missing; it says how to read this document']],
    ["strange format", sound.replace("format: 1", "format: one"), ['masts/a.yaml:1:9: format: 1 is expected; read "one"']],
    [
      "later format",
      sound.replace("format: 1", "format: 2"),
      ["masts/a.yaml:1:9: format: this document is in format 2; this program reads formats up to 1, a newer one is needed"],
    ],
    [
      "provenance that is no text",
      sound.replace("invented", "[a]"),
      ["masts/a.yaml:3:13: provenance: a word or a sentence on where the values come from is expected"],
    ],
    ["source that is no text", sound.replace('"scale, 3 March"', "3"), ["masts/a.yaml:6:34: mast.mass.source: a source is a text; read 3"]],
    [
      "source with a bare comma",
      sound.replace('"scale, 3 March"', "scale, 3 March"),
      [
        "masts/a.yaml:6:41: mast.mass.3 March: a number written as a mapping has the keys value and source; put a text with a comma in quotes",
      ],
    ],
  ])("%s", (_, text, expected) => {
    expect(lines(text)).toEqual(expected);
    expect(read(text).document).toBeUndefined();
  });
});

test("one reading tells every problem of a document", () => {
  expect(lines("format: 1\ntitel: A\nmast:\n  height: 0 m\n  mass: 3 m\n  stays: [{ length: 2 }, {}]\n")).toEqual([
    'masts/a.yaml:1:1: "title" is missing',
    'masts/a.yaml:2:1: titel: this key is not known here; did you mean "title"?',
    "masts/a.yaml:4:11: mast.height: 0 m is out of range; more than 0 m is allowed",
    'masts/a.yaml:5:9: mast.mass: "3 m" is a length; a mass is expected, for example "24 kg"',
    'masts/a.yaml:6:21: mast.stays[0].length: 2 has no unit; a length is expected, for example "1.15 m"',
    'masts/a.yaml:6:26: mast.stays[1]: "length" is missing: Length',
  ]);
});

test("an older format is brought up step by step before it is read", () => {
  const renamed: DocumentKind = {
    ...mast,
    schema: z.strictObject({ format: z.literal(3), title: z.string(), height: length }),
    migrations: [({ name, ...others }) => ({ ...others, title: name }), ({ tall, ...others }) => ({ ...others, height: tall })],
  };
  expect(read("format: 1\nname: Old\ntall: 3 m\n", renamed).document?.data).toEqual({ format: 3, title: "Old", height: 3 });
  expect(read("format: 2\ntitle: Newer\ntall: 3 m\n", renamed).document?.data).toEqual({ format: 3, title: "Newer", height: 3 });
  expect(lines("format: 4\ntitle: Newest\n", renamed)).toEqual([
    "masts/a.yaml:1:9: format: this document is in format 4; this program reads formats up to 3, a newer one is needed",
  ]);
});

test("anchors may repeat a value, but not without end", () => {
  expect(read(sound.replace("[{ length: 15 m }, { length: 1500 cm }]", "[&stay { length: 15 m }, *stay]")).document?.data).toMatchObject({
    mast: { stays: [{ length: 15 }, { length: 15 }] },
  });
  expect(lines("format: 1\nmast: &m { mast: *m }\n")[0]).toContain("this document cannot be read: it is nested deeper than 64 levels");
  const bomb = Array.from(
    { length: 12 },
    (_, level) =>
      `a${level}: &a${level} [${Array(9)
        .fill(level === 0 ? "x" : `*a${level - 1}`)
        .join(", ")}]`,
  );
  expect(lines(bomb.join("\n"))[0]).toContain("this document cannot be read: it has more than 100000 values");
});
