import type { AnalysisResult } from "@wingseed/engine";
import { describe, expect, it } from "vitest";
import type { AnalysisEntry } from "./catalogue.ts";
import { fieldsOf } from "./schema.ts";
import { command, slipOf } from "./slip.ts";

const inputs = {
  type: "object",
  properties: { altitude: { type: "number", quantity: "length", label: "Altitude" }, humidity: { type: "number" } },
} as const;
const analysis: AnalysisEntry = {
  name: "toy",
  question: "?",
  inputs,
  outputs: {},
  method: { summary: "", sources: [], checks: [] },
  example: {},
};
const result: AnalysisResult = {
  analysis: "toy",
  cases: [],
  warnings: [],
  provenance: {
    program: { name: "wingseed", version: "9.9.9" },
    registryHash: "0123456789abcdef",
    runtime: { v8: "", architecture: "" },
    documents: [{ path: "aircraft/a.yaml", hash: "feedbeef00000000" }],
    defaults: [{ path: "inputs.humidity", value: 0.25, because: "standard" }],
    method: { summary: "By hand.", sources: ["someone-1999"], checks: ["v-00"] },
    seed: null,
  },
};
const slot = { key: "page:toy", analysis, first: [], small: [], fields: fieldsOf(inputs), inputs: {} };

describe("the slip of a number", () => {
  const slip = slipOf(
    { value: 1312, quantity: "power", name: "power", row: ["airspeed 17 m/s"] },
    { slot, inputs: { altitude: "300 m" }, result, system: "si" },
  );

  it("says it aloud with its conditions and gives the other units", () => {
    expect(slip.says).toBe("power 1.31\u00a0kW · airspeed 17 m/s");
    expect(slip.otherUnits).toEqual(["1\u202f310\u00a0W"]);
    expect(slip.at).toEqual([{ name: "Altitude", text: "300\u00a0m" }]);
    expect(slip.assumed).toEqual([{ name: "Humidity", text: "0.25", because: "standard" }]);
  });

  it("names method, checks, sources, documents and program", () => {
    expect(slip).toMatchObject({
      method: "By hand.",
      sources: ["someone-1999"],
      checks: ["v-00"],
      documents: [{ path: "aircraft/a.yaml" }],
    });
    expect(slip.program).toContain("wingseed 9.9.9");
  });

  it("marks a coarse number as such", () => {
    const coarse = slipOf({ value: 1, quantity: "mass", name: "mass" }, { slot, inputs: {}, result, system: "si", coarse: "within 5 %" });
    expect(coarse.says).toContain("≈");
    expect(coarse.coarse).toBe("within 5 %");
  });
});

describe("the command that computes it again", () => {
  it("sets every typed input by its path and quotes for the shell", () => {
    expect(command("toy", {})).toBe("wingseed run toy");
    expect(command("toy", { altitude: "300 m", wind: { from: "90deg" }, note: "it's" })).toBe(
      `wingseed run toy --set 'inputs.altitude=300 m' --set inputs.wind.from=90deg --set 'inputs.note=it'\\''s'`,
    );
  });

  it("hands over plain numbers as JSON, where they are SI", () => {
    expect(command("toy", { altitude: "300 m", list: [1, 2] })).toBe(`wingseed run toy --input '{"altitude":"300 m","list":[1,2]}'`);
  });
});
