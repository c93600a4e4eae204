import { describe, expect, it } from "vitest";
import type { AnalysisEntry } from "./catalogue.ts";
import { inputsOf } from "./inputs.ts";
import { loadedFile, longestText } from "./loaded-file.ts";
import { fromProject, leftToStandard, partSource, projectChoice } from "./part-source.ts";
import { pastedRows } from "./pasted-rows.ts";
import { type Question, questionOf } from "./question.ts";
import { cellText, isGrid, rowValues } from "./rows.ts";
import { fieldsOf, type JsonSchema, type RowsField, type VariantsField } from "./schema.ts";
import { readTableText } from "./table-text.ts";
import { loadedCases, writtenBase } from "./written-base.ts";

const angle = { type: "number", quantity: "angle", label: "Angle" } as const;
const schema: JsonSchema = {
  type: "object",
  required: ["section"],
  properties: {
    section: {
      anyOf: [
        { type: "string", enum: ["thin", "thick"], label: "Built in" },
        {
          anyOf: [
            {
              type: "array",
              label: "Rows",
              items: {
                type: "object",
                required: ["angle", "lift"],
                properties: {
                  angle: { ...angle, columnNames: ["alpha"] },
                  lift: { type: "number", label: "Lift" },
                  kind: { type: "string", enum: ["a", "b"] },
                },
              },
            },
            { type: "object", label: "A file", required: ["file"], properties: { file: { type: "string", reference: "table" } } },
          ],
        },
        {
          type: "object",
          label: "From this project",
          required: ["aircraft"],
          properties: { aircraft: { type: "string", reference: "aircraft" } },
        },
      ],
    },
    speed: { type: "number", quantity: "speed" },
  },
};
const analysis: AnalysisEntry = {
  name: "foil",
  question: "What does it do?",
  inputs: schema,
  outputs: {},
  method: { summary: "", sources: [], checks: [] },
  example: { section: "thin", speed: "9 m/s" },
};
const fields = fieldsOf(schema);
const variants = fields[0] as VariantsField;
const rows = variants.variants.find(({ name }) => name === "Rows")?.field as RowsField;
const ask = (drafts: Readonly<Record<string, string>>) =>
  questionOf(
    {
      analyses: [analysis],
      pages: [],
      project: { title: "", demo: false, aircraft: [], missions: [], problems: [], cautions: [] },
      validation: [],
    },
    { place: "bench", analysis: "foil", drafts },
  ) as Question;
const sent = (drafts: Readonly<Record<string, string>>) => ask(drafts).slots[0].inputs;

describe("a choice of ways that holds a choice of ways", () => {
  it("opens into all of them", () => {
    expect(variants.variants.map(({ name }) => name)).toEqual(["Built in", "Rows", "A file", "From this project"]);
  });
});

describe("inputs from a file", () => {
  it("stand in the form instead of the example, whatever shape the file has", () => {
    const inputs = { section: "thick" };
    for (const written of [inputs, [inputs], { inputs }, { analysis: "foil", cases: [{ inputs, outputs: {} }] }]) {
      const { drafts } = loadedFile("one.json", JSON.stringify(written), analysis, { speed: "1 m/s" });
      expect(drafts && sent(drafts)).toEqual(inputs);
    }
  });
  it("keep all cases and show the chosen one; single fields are typed over it", () => {
    const { drafts = {} } = loadedFile("two.json", JSON.stringify([{ section: "thin" }, { section: "thick", speed: 3 }]), analysis, {});
    expect(loadedCases(drafts)).toMatchObject({ name: "two.json", index: 0 });
    expect(sent({ ...drafts, "=case": "2", speed: "4 m/s" })).toEqual({ section: "thick", speed: "4 m/s" });
    expect(sent({ ...drafts, "=case": "9" })).toEqual({ section: "thin" });
  });
  it("keep names that no field has, so that they are refused and not lost", () => {
    const { drafts = {} } = loadedFile("odd.json", '{"section": "thin", "windage": 3}', analysis, {});
    expect(sent(drafts)).toEqual({ section: "thin", windage: 3 });
  });
  it("are refused with a reason when they are none", () => {
    const refused = (text: string) => loadedFile("x", text, analysis, {}).refused;
    expect(refused('{"a": ')).toContain("x is no JSON");
    expect(refused("[1, 2]")).toContain("list of objects");
    expect(refused("[]")).toContain("list of objects");
    expect(refused(" ".repeat(longestText + 1))).toContain("too long");
  });
});

describe("a table from a file", () => {
  it("takes the place of the list that has its columns, with the units of its head", () => {
    const { drafts } = loadedFile("polar.csv", "# measured\nalpha [deg]; lift\n-2; 0.1\n4; 0.5\n", analysis, { speed: "3 m/s" });
    expect(drafts && sent(drafts)).toEqual({
      section: [
        { angle: "-2 deg", lift: 0.1 },
        { angle: "4 deg", lift: 0.5 },
      ],
      speed: "3 m/s",
    });
  });
  it("is refused by the name of what is wrong", () => {
    const refused = (text: string) => loadedFile("t.csv", text, analysis, {}).refused ?? "";
    expect(refused("day,rain\n1,2\n")).toMatch(/day, rain.*angle, lift, kind/);
    expect(refused("1,2\n3,4\n")).toContain("first line must name the columns");
    expect(refused("angle [deg],lift\n1\n")).toContain("row 2 has 1 cells");
    expect(refused("#\n")).toContain("no row");
    expect(refused("angle,lift\n1,2\n")).not.toBe("");
  });
});

describe("rows as a table", () => {
  const values = [
    { angle: "1 deg", lift: 0.1 },
    { angle: "2 deg", lift: 0.2 },
  ];
  const paste = (text: string, at = { row: 0, column: 0 }) =>
    pastedRows({ field: rows, columns: rows.columns, values, table: readTableText(text), at });
  it("take cells from where the paste began, in the units of their columns", () => {
    expect(paste("5\t0.5\n6\t0.6\n7\t0.7").rows).toEqual([
      { angle: "5 deg", lift: 0.5 },
      { angle: "6 deg", lift: 0.6 },
      { angle: "7 deg", lift: 0.7 },
    ]);
    expect(paste("0.9\tb", { row: 1, column: 1 }).rows?.[1]).toEqual({ angle: "2 deg", lift: 0.9, kind: "b" });
    expect(paste("1\t2\t3\t4").slip).toContain("4 columns were pasted");
  });
  it("are replaced by a table with names", () => {
    expect(paste("lift\talpha [rad]\n0.3\t0.1").rows).toEqual([{ angle: "0.1 rad", lift: 0.3 }]);
    expect(paste("lift\talpha\n0.3\t0.1").slip).toContain("unit in square brackets");
    expect(paste("alpha [deg]\n1").slip).toContain("lift");
  });
  it("stand in the form as written, with what was typed over them", () => {
    const drafts = { "section~": "Rows", "section=": JSON.stringify(values), "section.1.lift": "0.25" };
    expect(isGrid(rows)).toBe(true);
    expect(rowValues(rows, ask(drafts).base, drafts)).toEqual([values[0], { angle: "2 deg", lift: 0.25 }]);
    expect(sent(drafts).section).toEqual([values[0], { angle: "2 deg", lift: 0.25 }]);
  });
  it("show values in the unit of their column, and others as written", () => {
    const column = rows.columns[0];
    if (!column) throw new Error("no column");
    expect(cellText(column, "0.1 rad", "si").text).toBe("5.72958");
    expect(cellText(column, "3 deg", "si").text).toBe("3");
    expect(cellText(column, "3 parsec", "si").text).toBe("3 parsec");
  });
});

describe("a part", () => {
  it("comes from the example, from the project or from a file", () => {
    const choice = projectChoice(fields);
    if (!choice) throw new Error("no way to take it from the project");
    expect(partSource(ask({}))).toBe("example");
    const drafts = fromProject(choice, "aircraft/a.yaml", { "section~": "Rows", "section=": "[]", "section.0.lift": "1", speed: "2 m/s" });
    expect(drafts).toEqual({ speed: "2 m/s", "section~": "From this project", "section.aircraft": "aircraft/a.yaml" });
    expect(partSource(ask(drafts))).toBe("project");
    expect(sent(drafts)).toEqual({ section: { aircraft: "aircraft/a.yaml" }, speed: "2 m/s" });
    expect(partSource(ask({ "=": '{"section":"thick"}' }))).toBe("file");
  });
});

it("a part from the project takes nothing along that fits the part of the example only, but what was typed", () => {
  const part = fieldsOf({
    type: "object",
    required: ["motor"],
    properties: {
      motor: {
        anyOf: [
          { type: "object", label: "Written", properties: { size: { type: "number" } }, required: ["size"] },
          { type: "object", label: "Project", properties: { aircraft: { type: "string", reference: "aircraft" } }, required: ["aircraft"] },
        ],
      },
      load: {
        anyOf: [
          { type: "object", label: "Curve", properties: { torque: { type: "number" } } },
          { type: "string", enum: ["none"] },
        ],
      },
      points: { type: "array", items: { type: "object", properties: { throttle: { type: "number" } } } },
      voltage: { type: "number" },
    },
  });
  const base = { motor: { size: 1 }, load: { torque: 2 }, points: [{ throttle: 1 }], voltage: 50 };
  const choice = projectChoice(part);
  if (!choice) throw new Error("no way to take it from the project");
  expect(leftToStandard(part, choice, { base, drafts: {} })).toEqual({ "load~": "", "points#": "0" });
  expect(leftToStandard(part, choice, { base, drafts: { "load.torque": "3", "points#": "2" } })).toEqual({});
  expect(leftToStandard(part, choice, { base, drafts: { "=": "{}" } })).toEqual({});
  const drafts = { ...leftToStandard(part, choice, { base, drafts: {} }), ...fromProject(choice, "a.yaml", {}) };
  expect(inputsOf(part, base, drafts)).toEqual({ motor: { aircraft: "a.yaml" }, points: [], voltage: 50 });
});

it("whole values that cannot be read leave the form as it was", () => {
  expect(writtenBase({ a: 1 }, { "=": "{", "b=": "[" })).toEqual({ a: 1 });
  expect(writtenBase({ a: [{ c: 1 }] }, { "a.0.c=": "[2]" })).toEqual({ a: [{ c: [2] }] });
  expect(inputsOf([], undefined, {})).toEqual({});
});
