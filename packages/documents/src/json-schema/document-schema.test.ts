import { readFileSync } from "node:fs";
import { z } from "@wingseed/engine";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { documentKinds } from "../document/index.ts";
import { documentSchema, schemaFiles } from "./document-schema.ts";
import { numberDefinitions } from "./written-number-schema.ts";

const root = new URL("../../../../", import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), "utf8");

test.each([...schemaFiles()])(
  "%s stands as generated; after a change of a definition run node tools/make-schemas.mjs",
  (name, generated) => {
    expect(text(`packages/documents/schemas/${name}`)).toBe(generated);
    expect(text(`demo/.schemas/${name}`)).toBe(generated);
  },
);

test("every kind of document has a schema that keeps its descriptions", () => {
  for (const { kind } of documentKinds) expect(documentSchema(kind)).toMatchObject({ type: "object", additionalProperties: false });
  expect(documentSchema("aircraft").properties?.emptyMass).toEqual({
    description: "Mass without batteries and payload. A mass in kg, g, t, lb; more than 0 kg.",
    $ref: "#/$defs/written-mass",
  });
  expect(() => documentSchema("boat")).toThrow('there is no document of kind "boat"; kinds are project, aircraft, mission');
});

describe("a validator that only knows the schema", () => {
  const validator = (kind: string) => z.fromJSONSchema(documentSchema(kind) as Parameters<typeof z.fromJSONSchema>[0]);

  test("accepts the documents of the demo", () => {
    for (const [kind, path] of [
      ["project", "demo/project.yaml"],
      ["aircraft", "demo/aircraft/baseline.yaml"],
      ["aircraft", "demo/aircraft/revised.yaml"],
      ["mission", "demo/missions/platform-service.yaml"],
      ["mission", "demo/missions/survey.yaml"],
    ] as const) {
      expect(validator(kind).safeParse(parse(text(path))).error?.issues ?? []).toEqual([]);
    }
  });

  test("refuses a number without its unit and a key that is not known", () => {
    const aircraft = parse(text("demo/aircraft/baseline.yaml")) as Record<string, unknown>;
    const check = validator("aircraft");
    expect(check.safeParse({ ...aircraft, emptyMass: 9.2 }).success).toBe(false);
    expect(check.safeParse({ ...aircraft, emptyMass: "9.2" }).success).toBe(false);
    expect(check.safeParse({ ...aircraft, emptyMass: "9,2 kg" }).success).toBe(false);
    expect(check.safeParse({ ...aircraft, emptyMas: "9.2 kg" }).success).toBe(false);
    expect(check.safeParse({ ...aircraft, emptyMass: { value: "9.2 kg", source: "scale" } }).success).toBe(true);
    expect(check.safeParse({ ...aircraft, emptyMass: { value: "9.2 kg", from: "scale" } }).success).toBe(false);
  });
});

test.each([
  [
    "mass",
    ["24 kg", "24 kg ± 1 %", "24 ± 0.2 kg", "(24 ± 0.2) kg", "uniform(1 kg, 2 kg)", "−3 kg", "1e3 g"],
    ["24", "", "kg", "0,4 kg", "24 ±"],
  ],
  ["angle", ["3°", "-3 deg"], ["3"]],
  ["dimensionless", ["0.84", "84 %", "0.84 ± 0.02", "triangular(0.1, 0.2, 0.3)"], ["0.84 kg", "0,84"]],
] as const)("the pattern of %s lets through what the reader reads", (kind, good, bad) => {
  const pattern = new RegExp(numberDefinitions([kind])[`written-${kind}`]?.anyOf?.find(({ type }) => type === "string")?.pattern ?? "$^");
  for (const sample of good) expect(pattern.test(sample), sample).toBe(true);
  for (const sample of bad) expect(pattern.test(sample), sample).toBe(false);
});
