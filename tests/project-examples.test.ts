// Frozen questions about the demo project with their answers. Trims end within the solver's tolerance, so numbers are compared to
// a ten-thousandth; words, rows and fields exactly. Recorded anew by WINGSEED_RECORD=1.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { openProject, readInputs } from "@wingseed/documents";
import { analyses, type ProjectView, type Raster, type ReadDocument } from "@wingseed/engine";
import { expect, test } from "vitest";

const folder = new URL("../examples/", import.meta.url);
const ending = ".inputs.json";
const tolerance = 1e-4;

const questions = readdirSync(folder)
  .filter((file) => file.endsWith(ending))
  .map((file) => file.slice(0, -ending.length))
  .flatMap((name) => {
    const analysis = analyses.find((candidate) => candidate.name === name.split(".")[0] && candidate.needs !== undefined);
    return analysis ? [{ name, analysis }] : [];
  });

async function demo(): Promise<ProjectView> {
  const project = openProject("demo");
  const documents: Record<string, ReadDocument> = {};
  const rasters: Record<string, Raster> = {};
  for (const { path, kind } of await project.list()) {
    const reading = kind === "raster" ? await project.readRaster(path) : await project.readDocument(path);
    if (reading.problems) throw new Error(reading.problems.map((problem) => problem.message).join("; "));
    if (kind === "raster") rasters[path] = reading.value as Raster;
    else documents[path] = reading.value as ReadDocument;
  }
  return { documents, rasters };
}

test.each(questions)("the example $name is answered as on record", async ({ name, analysis }) => {
  const read = readInputs(analysis.inputs, JSON.parse(readFileSync(new URL(`${name}${ending}`, folder), "utf8")));
  expect(read.problems).toEqual([]);
  const outcome = analysis.run(await demo(), analysis.inputs.parse(read.inputs), {
    progress: () => {},
    cancelled: () => false,
    partial: () => {},
    analysis: (asked) => {
      throw new Error(`asked for ${asked} without having said so`);
    },
  });
  if (outcome.problem) throw new Error(outcome.problem.message);
  const file = new URL(`${name}.outputs.json`, folder);
  if (process.env.WINGSEED_RECORD === "1") writeFileSync(file, `${JSON.stringify(outcome.outputs, null, 1)}\n`);
  expect(existsSync(file), `${file.pathname} is missing: run this test once with WINGSEED_RECORD=1`).toBe(true);
  expect(difference(JSON.parse(JSON.stringify(outcome.outputs)), JSON.parse(readFileSync(file, "utf8")), "outputs")).toBeUndefined();
});

test("the mission has an example", () => {
  expect(questions.map(({ analysis }) => analysis.name)).toContain("mission");
});

/** Where two values differ, in words; undefined when they agree. */
function difference(computed: unknown, recorded: unknown, path: string): string | undefined {
  if (typeof computed === "number" && typeof recorded === "number") {
    const near = Math.abs(computed - recorded) <= tolerance * Math.max(0.01, Math.abs(recorded));
    return near ? undefined : `${path}: ${computed}, on record ${recorded}`;
  }
  if (typeof computed !== "object" || computed === null || typeof recorded !== "object" || recorded === null) {
    return Object.is(computed, recorded) ? undefined : `${path}: ${JSON.stringify(computed)}, on record ${JSON.stringify(recorded)}`;
  }
  for (const key of new Set([...Object.keys(computed), ...Object.keys(recorded)])) {
    const found = difference((computed as Record<string, unknown>)[key], (recorded as Record<string, unknown>)[key], `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
