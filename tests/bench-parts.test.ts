// Every part of the bench page as its example answers it: figures that the page names, words that fit, rows as text.

import { readFileSync } from "node:fs";
import { readInputs } from "@wingseed/documents";
import { type Analysis, type AnalysisResult, analyses, type Figure } from "@wingseed/engine";
import { benchParts, resultCsv, standingOf, terminalReport, type ValidationRow } from "@wingseed/reports";
import { describe, expect, it } from "vitest";

const validation = JSON.parse(readFileSync("validation/summary.json", "utf8")) as readonly ValidationRow[];
const parts = benchParts(analyses);

const nobody = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (name: string): never => {
    throw new Error(`no other analysis is at hand here: ${name}`);
  },
};

function answered(name: string) {
  const analysis = analyses.find((one) => one.name === name) as Analysis;
  const read = readInputs(analysis.inputs, analysis.example);
  expect(read.problems).toEqual([]);
  const inputs = analysis.inputs.parse(read.inputs);
  const { outputs, problem } = analysis.run({ documents: {}, rasters: {} }, inputs, nobody);
  expect(problem).toBeUndefined();
  const view = {
    cases: [
      {
        answer: analysis.answer(outputs, inputs),
        figures: analysis.figures(outputs, inputs),
        limits: analysis.limits(outputs, inputs),
      },
    ],
  };
  const result = { analysis: name, cases: [{ inputs, outputs }], warnings: [], provenance: {} } as unknown as AnalysisResult;
  return { analysis, outputs, view, result, figures: view.cases[0]?.figures ?? ([] as readonly Figure[]) };
}

it("there are parts on the bench", () => {
  expect(parts.length).toBeGreaterThan(1);
});

describe.each(parts)("$name", (part) => {
  it("draws the figures that its place on the page names, no more measured points than are on record", () => {
    const { figures } = answered(part.analysis);
    const ids = figures.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of [...(part.figures ?? []), ...(part.small ?? [])]) expect(ids).toContain(id);
  });

  it("says how it stands to published data", () => {
    const { outputs } = answered(part.analysis);
    const standing = standingOf(outputs, validation);
    expect(standing, "outputs carry no domain").toBeDefined();
    if (standing?.title !== undefined) expect(standing.comparisons.length).toBeGreaterThan(0);
  });

  it("prints within 60 columns and gives its rows as lines of CSV", () => {
    const { analysis, view, result } = answered(part.analysis);
    const { stdout } = terminalReport(analysis, result, view, { width: 60, validation });
    for (const line of stdout.split("\n")) expect(line.length, line).toBeLessThanOrEqual(60);
    const [head = "", ...lines] = resultCsv(result).trimEnd().split("\r\n");
    expect(head.startsWith("case,")).toBe(true);
    expect(lines.length).toBeGreaterThan(0);
  });
});
