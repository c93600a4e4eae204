import { describe, expect, it } from "vitest";
import type { AnalysisEntry, Catalogue } from "./catalogue.ts";
import { conditionsOf, conditionText, steppedField } from "./conditions.ts";
import type { Drafts } from "./inputs.ts";
import { addressFrom, type Question, questionOf } from "./question.ts";
import type { JsonSchema } from "./schema.ts";
import { carried } from "./shared-inputs.ts";
import { stepOf, stepped } from "./steps.ts";

const entry = (name: string, properties: Record<string, JsonSchema>): AnalysisEntry => ({
  name,
  question: `${name}?`,
  inputs: { type: "object", properties },
  outputs: {},
  method: { summary: "", sources: [], checks: [] },
  example: {},
});
const altitude = { type: "number", quantity: "length", role: "condition.altitude", label: "Altitude" } as const;
const wind = { type: "number", quantity: "speed", role: "condition.wind", label: "Wind" } as const;
const one = entry("one", { wind, altitude, note: { type: "string" } });
const two = entry("two", { height: altitude, wind: { type: "string", role: "condition.wind" } });
const three = entry("three", { aircraft: { type: "string", role: "aircraft" } });

const asked = (here: AnalysisEntry, drafts: Drafts = {}) => {
  const catalogue = { analyses: [here], pages: [], project: {} } as unknown as Catalogue;
  return questionOf(catalogue, { place: "bench", analysis: here.name, drafts }) as Question;
};

describe("conditions", () => {
  it("stand in the usual order whatever the schema's, and say which the page does not use", () => {
    const told = (here: AnalysisEntry) => conditionsOf([one, two, three], asked(here)).map(({ label, fields }) => [label, fields.length]);
    expect(told(one)).toEqual([
      ["Altitude", 1],
      ["Wind", 1],
    ]);
    expect(told(three)).toEqual([
      ["Altitude", 0],
      ["Wind", 0],
    ]);
  });

  it("are told by what was given, else by the standard, else as left open; a step changes what is told", () => {
    const air = entry("air", {
      wind,
      from: { type: "number", quantity: "angle", role: "condition.wind" },
      altitude: { ...altitude, default: 300 },
    });
    const catalogue = { analyses: [air], pages: [], project: {} } as unknown as Catalogue;
    const ask = (drafts: Drafts) => questionOf(catalogue, { place: "bench", analysis: "air", drafts }) as Question;
    const [height, blow] = conditionsOf([air], ask({}));
    if (!height || !blow) throw new Error("two conditions expected");
    expect(conditionText(height, ask({}), undefined, "si")).toBe("300\u00a0m");
    expect(steppedField(height, ask({}), undefined)?.path).toBe("altitude");
    expect(conditionText(blow, ask({}), undefined, "si")).toBe("standard");
    expect(steppedField(blow, ask({}), undefined)).toBeUndefined();
    expect(conditionText(blow, ask({ wind: "8 m/s", from: "240 deg" }), undefined, "si")).toBe("8\u00a0m/s · 240°");
    expect(steppedField(blow, ask({ from: "240 deg" }), undefined)?.path).toBe("from");
  });

  it("go along to another question by what they stand for, where they are of one kind", () => {
    expect(carried({ altitude: "300 m", wind: "8 m/s", note: "x" }, one, two)).toEqual({ height: "300 m" });
  });
});

describe("conditions inside a part of the inputs that is not in use", () => {
  const battery: AnalysisEntry = {
    ...entry("battery", {
      altitude,
      load: {
        type: "object",
        properties: {
          power: { type: "number", quantity: "power" },
          mission: { type: "object", properties: { wind, file: { type: "string", reference: "mission" } } },
        },
      },
    }),
    example: { load: { power: "1 kW" } },
  };
  it("are not offered, and nothing is carried into them", () => {
    const used = (drafts: Drafts) =>
      conditionsOf([battery, one], asked(battery, drafts)).flatMap(({ role, fields }) => (fields.length > 0 ? [role] : []));
    expect(used({})).toEqual(["condition.altitude"]);
    expect(used({ "load.mission.file": "missions/a.yaml" })).toEqual(["condition.altitude", "condition.wind"]);
    const catalogue = { analyses: [one, battery], pages: [], project: {} } as unknown as Catalogue;
    const here = { place: "bench", analysis: "one", drafts: { wind: "8 m/s", altitude: "300 m" } } as const;
    const there = addressFrom(catalogue, here, { place: "bench", analysis: "battery", drafts: {} }, {});
    expect(there.drafts).toEqual({ altitude: "300 m" });
  });
});

describe("a step of a handle", () => {
  it("is a round number near a twentieth of the value", () => {
    expect([0, 1.13, 12, 300, -40].map(stepOf)).toEqual([1, 0.05, 0.5, 20, 2]);
  });

  it("keeps the typed unit and lands on round numbers", () => {
    expect(stepped("43 kt", 1, "usual", { quantity: "speed" })).toBe("44 kt");
    expect(stepped("300", -1, "usual", { quantity: "length" })).toBe("280 m");
    expect(stepped("0 m", 1, "coarse", { quantity: "length" })).toBe("10 m");
    expect(stepped("calm", 1, "usual", { quantity: "speed" })).toBeUndefined();
  });

  it("counts in whole numbers and stops at the bounds", () => {
    const blocks = { quantity: "dimensionless", whole: true, minimum: 1, maximum: 14 } as const;
    expect(stepped("13", 1, "usual", blocks)).toBe("14");
    expect(stepped("14", 1, "usual", blocks)).toBeUndefined();
    expect(stepped("0 kg", -1, "usual", { quantity: "mass", minimum: 0 })).toBeUndefined();
  });
});
