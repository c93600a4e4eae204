import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { problemLine } from "../document-problem.ts";
import { readTable } from "./read-table.ts";

const read = (text: string) => readTable({ file: "tables/a.csv", text, hash: "h" });
const lines = (text: string) => read(text).problems.map(problemLine);
const sound = `# measured in spring
angle [deg],Reynolds number, lift coefficient ,temperature [degC]
-2, 1e5, -0.2, 15

# a second block
"0",100000,+.5,-5.5
,,,
4.,1E5,−0.44,20
`;

test("a table becomes numbers in SI, with its columns, their units and the place of every row", () => {
  const { document, problems } = read(sound);
  expect(problems).toEqual([]);
  expect(document).toMatchObject({ path: "tables/a.csv", kind: "table", hash: "h", written: {} });
  const data = document?.data as { columns: unknown; rows: number[][]; places: unknown };
  expect(data.columns).toMatchObject([
    { name: "angle", unit: "deg", kinds: ["angle", "latitude"], offset: 0, line: 2, column: 1 },
    { name: "Reynolds number", unit: null, kinds: ["dimensionless"] },
    { name: "lift coefficient", unit: null, column: 30 },
    { name: "temperature", unit: "degC", kinds: ["temperature", "temperatureDifference"], offset: 273.15 },
  ]);
  expect(data.rows.map((row) => row.map((value) => Number(value.toPrecision(12))))).toEqual([
    [-0.0349065850399, 1e5, -0.2, 288.15],
    [0, 1e5, 0.5, 267.65],
    [0.0698131700798, 1e5, -0.44, 293.15],
  ]);
  expect(data.places).toMatchObject([{ line: 3, columns: [1, 5, 10, 16] }, { line: 6 }, { line: 8 }]);
});

test("lines may end as on any system", () => {
  const data = (text: string) => (read(text).document?.data as { rows: unknown } | undefined)?.rows;
  expect(data(sound.replaceAll("\n", "\r\n"))).toEqual(data(sound));
  expect(data(sound.replaceAll("\n", "\r"))).toEqual(data(sound));
});

describe("every problem has its line and column", () => {
  test.each([
    ["nothing", "# only words\n", ["tables/a.csv:1:1: the table is empty; its first line names the columns"]],
    ["no row", "a,b\n", ["tables/a.csv:1:1: the table has names of columns but no row"]],
    [
      "semicolons",
      "angle [deg];lift\n",
      ["tables/a.csv:1:1: columns are separated by commas, and a decimal point stands in a number; this line is separated by semicolons"],
    ],
    [
      "tabs",
      "angle [deg]\tlift\n1\t2\n",
      ["tables/a.csv:1:1: columns are separated by commas, and a decimal point stands in a number; this line is separated by tabs"],
    ],
    [
      "no names",
      "1,2\n3,4\n",
      [
        'tables/a.csv:1:1: "1" is a number; the first line names the columns, as in "angle [deg]"',
        'tables/a.csv:1:3: "2" is a number; the first line names the columns, as in "angle [deg]"',
      ],
    ],
    ["unknown unit", "angle [degrees],b\n1,2\n", ['tables/a.csv:1:1: "degrees" is no unit known here; write "deg"']],
    [
      "open bracket",
      "angle [deg,b\n1,2\n",
      ['tables/a.csv:1:1: "angle [deg" is no name with a unit in square brackets, as in "angle [deg]"'],
    ],
    ["nameless", "a,,b\n1,2,3\n", ["tables/a.csv:1:3: a column has no name"]],
    ["name twice", "a,b,A\n1,2,3\n", ['tables/a.csv:1:5: the column "A" stands twice, first at column 1']],
    ["too few values", "a,b,c\n1,2\n", ["tables/a.csv:2:3: 2 values in this line, 3 columns are named above"]],
    ["decimal comma", "a,b\n1,5,2\n", ["tables/a.csv:2:5: 3 values in this line, 2 columns are named above"]],
    ["gap", "a,b\n1,\n", ["tables/a.csv:2:3: b: a value is missing here"]],
    ["words", "a,b\n1,two\n", ['tables/a.csv:2:3: b: "two" is no number']],
    [
      "unit in a cell",
      "a [deg],b\n8 deg,2\n",
      ['tables/a.csv:2:1: a: "8 deg" is no number; the unit stands in the first line, after the name of the column'],
    ],
    [
      "infinity",
      "a,b\n1e999,Infinity\n",
      ["tables/a.csv:2:1: a: 1e999 is too large for a number", 'tables/a.csv:2:7: b: "Infinity" is no number'],
    ],
    ["below zero", "t [degC],b\n-300,1\n", ["tables/a.csv:2:1: t: -300 is below absolute zero"]],
    ["open quote", 'a,b\n"1,2\n', ["tables/a.csv:2:1: a quotation mark opens here and nothing closes it"]],
  ])("%s", (_, text, expected) => {
    expect(lines(text)).toEqual(expected);
    expect(read(text).document).toBeUndefined();
  });
});

test("of very many problems the first are told, and how many follow", () => {
  const told = lines(`a,b\n${"x,y\n".repeat(1000)}`);
  expect(told).toHaveLength(51);
  expect(told[50]).toContain("and 1950 more problems from here on");
});

test("too many rows and too many columns are refused", () => {
  expect(lines(`a\n${"1\n".repeat(20_001)}`)).toEqual(["tables/a.csv:20002:1: the table has 20001 rows; at most 20000 are read"]);
  const names = Array.from({ length: 61 }, (_, i) => `c${i}`).join(",");
  expect(lines(`${names}\n1\n`)).toEqual(["tables/a.csv:1:1: the table has 61 columns; at most 60 are read"]);
});

test("whatever stands in a file, there is a table of finite numbers or a problem, never a fall", () => {
  const letters = fc.constantFrom(..."abc [deg]%,;\n\r\t\"#'0123456789.-+eE−°CKN m/()²", "\u0000", "é");
  const texts = fc.oneof(
    fc.array(letters, { maxLength: 60 }).map((parts) => parts.join("")),
    fc.array(letters, { maxLength: 12 }).map((parts) => sound.replace("1e5", parts.join(""))),
    fc.array(letters, { maxLength: 12 }).map((parts) => sound.replace("[deg]", `[${parts.join("")}]`)),
  );
  fc.assert(
    fc.property(texts, (text) => {
      const { document, problems } = read(text);
      if (document === undefined) expect(problems.length).toBeGreaterThan(0);
      else
        for (const row of (document.data as { rows: number[][] }).rows) for (const value of row) expect(Number.isFinite(value)).toBe(true);
    }),
    { seed: 20_240_117, numRuns: 3000 },
  );
});
