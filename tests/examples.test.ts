// Frozen questions with their answers, one pair a case, for analyses that need no project: an answer only changes on purpose.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { readInputs } from "@wingseed/documents";
import { analyses } from "@wingseed/engine";
import { expect, test } from "vitest";

const folder = new URL("../examples/", import.meta.url);
const ending = ".inputs.json";
const context = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (name: string): never => {
    throw new Error(`no other analysis is at hand: ${name}`);
  },
};

const questions = readdirSync(folder)
  .filter((file) => file.endsWith(ending))
  .map((file) => file.slice(0, -ending.length))
  .flatMap((name) => {
    const analysis = analyses.find((candidate) => candidate.name === name.split(".")[0] && candidate.needs === undefined);
    return analysis ? [{ name, analysis }] : [];
  });

test.each(questions)("the example $name is answered as on record", ({ name, analysis }) => {
  const raw: unknown = JSON.parse(readFileSync(new URL(`${name}${ending}`, folder), "utf8"));
  const read = readInputs(analysis.inputs, raw);
  expect(read.problems).toEqual([]);
  const outcome = analysis.run({ documents: {}, rasters: {} }, analysis.inputs.parse(read.inputs), context);
  if (outcome.problem) throw new Error(outcome.problem.message);
  const file = new URL(`${name}.outputs.json`, folder);
  if (process.env.WINGSEED_RECORD === "1") writeFileSync(file, `${JSON.stringify(outcome.outputs, null, 2)}\n`);
  expect(existsSync(file), `${file.pathname} is missing: run this test once with WINGSEED_RECORD=1`).toBe(true);
  expectSame(outcome.outputs, JSON.parse(readFileSync(file, "utf8")), "outputs");
});

test("every analysis without a project has an example", () => {
  const shown = new Set(questions.map(({ analysis }) => analysis.name));
  expect(analyses.filter((analysis) => analysis.needs === undefined && !shown.has(analysis.name)).map(({ name }) => name)).toEqual([]);
});

/** Equal but for the last digits, which differ between processors; numbers near zero are compared with the size of their neighbours. */
function expectSame(computed: unknown, recorded: unknown, path: string): void {
  if (typeof computed === "number" && typeof recorded === "number") {
    expect(Math.abs(computed - recorded) <= 1e-7 * Math.max(1e-3, Math.abs(recorded)), `${path}: ${computed}, on record ${recorded}`).toBe(
      true,
    );
    return;
  }
  if (typeof computed !== "object" || computed === null || typeof recorded !== "object" || recorded === null) {
    expect(computed, path).toEqual(recorded);
    return;
  }
  expect(Object.keys(computed), `${path}: fields`).toEqual(Object.keys(recorded));
  for (const [key, value] of Object.entries(computed)) expectSame(value, (recorded as Record<string, unknown>)[key], `${path}.${key}`);
}
