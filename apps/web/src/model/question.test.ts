import { describe, expect, it } from "vitest";
import type { AnalysisEntry, Catalogue } from "./catalogue.ts";
import { addressFrom, benchOf, questionOf, questionsOf } from "./question.ts";

const entry = (name: string): AnalysisEntry => ({
  name,
  question: `${name}?`,
  inputs: {
    type: "object",
    properties: { altitude: { type: "number", quantity: "length", role: "condition.altitude" }, own: { type: "string" } },
  },
  outputs: {},
  method: { summary: "", sources: [], checks: [] },
  example: { own: "from the example" },
});
const catalogue: Catalogue = {
  analyses: [entry("one"), entry("two"), entry("loose")],
  pages: [
    {
      status: "answered",
      id: "first",
      name: "First",
      heading: "The aircraft",
      question: "First?",
      needs: "a file",
      slots: [{ analysis: "one" }],
      next: "second",
    },
    {
      status: "answered",
      id: "second",
      name: "Second",
      heading: "The flight",
      question: "Second?",
      needs: "a file",
      slots: [{ analysis: "two", figures: ["b"] }, { analysis: "one" }],
    },
    {
      status: "answered",
      id: "poor",
      name: "Poor",
      heading: "The flight",
      question: "Poor?",
      needs: "a raster",
      slots: [{ analysis: "absent" }],
    },
    { status: "not yet", id: "later", name: "Later", heading: "The proof", question: "Later?" },
  ],
  project: { title: "", demo: false, aircraft: [], missions: [], problems: [], cautions: [] },
  validation: [],
};
const page = (id: string, drafts = {}) => ({ place: "page", page: id, drafts }) as const;

describe("a question", () => {
  it("is asked with what was typed and nothing else", () => {
    const question = questionOf(catalogue, page("first", { altitude: "300 m" }));
    expect(question).toMatchObject({ title: "First?", slots: [{ inputs: { altitude: "300 m" } }], next: { title: "Second?" } });
  });

  it("may stand on several analyses, each with its own run and figures", () => {
    const question = questionOf(catalogue, page("second"));
    expect("slots" in question && question.slots.map((slot) => [slot.key, slot.figures])).toEqual([
      ["page:second", ["b"]],
      ["page:second#1", undefined],
    ]);
  });

  it("starts from the example on the bench", () => {
    expect(questionOf(catalogue, { place: "bench", analysis: "loose", drafts: {} })).toMatchObject({
      slots: [{ inputs: { own: "from the example" } }],
    });
    expect(benchOf(catalogue).map(({ name }) => name)).toEqual(["loose?"]);
  });

  it("says why there is none", () => {
    const reason = (address: Parameters<typeof questionOf>[1]) => (questionOf(catalogue, address) as { reason?: string }).reason;
    expect(reason(page("later"))).toContain("not in this version");
    expect(reason(page("poor"))).toContain("a raster");
    expect(reason(page("nowhere"))).toContain("no page");
    expect(reason({ place: "bench", analysis: "nothing", drafts: {} })).toContain("registry");
  });

  it("takes conditions along to the next and finds there what was typed before", () => {
    const target = addressFrom(catalogue, page("first", { altitude: "500 m", own: "x" }), page("second"), {
      "page:second": { altitude: "1 m", own: "y" },
    });
    expect(target.drafts).toEqual({ altitude: "500 m", own: "y" });
  });

  it("drops a condition at the next that was taken back here", () => {
    expect(addressFrom(catalogue, page("first"), page("second"), { "page:second": { altitude: "1 m", own: "y" } }).drafts).toEqual({
      own: "y",
    });
  });

  it("comes in the order of the column", () => {
    expect(questionsOf(catalogue).map((address) => (address.place === "page" ? address.page : address.analysis))).toEqual([
      "first",
      "second",
      "poor",
      "loose",
    ]);
  });
});
