// Whatever is asked within the schema, an analysis without a project answers: numbers, a named problem or a refusal. Never NaN.
import { type Analysis, analyses, type Outcome } from "@wingseed/engine";
import fc from "fast-check";
import { expect, test } from "vitest";
import { schemaArbitrary } from "./schema-arbitrary.ts";

const context = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (name: string): never => {
    throw new Error(`asked for ${name} without having said so`);
  },
};

/** Path of the first number that is not finite, or undefined. */
function notFinite(value: unknown, path = ""): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : path;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, item] of Object.entries(value)) {
    const found = notFinite(item, `${path}/${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

function expectAnswer(analysis: Analysis, inputs: unknown): "refused" | "problem" | "outputs" {
  const read = analysis.inputs.safeParse(inputs);
  if (!read.success) {
    expect(read.error.issues.every((issue) => issue.message.length > 0)).toBe(true);
    return "refused";
  }
  const outcome: Outcome<unknown> = analysis.run({ documents: {}, rasters: {} }, read.data, context);
  if (outcome.problem) {
    expect(outcome.problem.kind).not.toBe("");
    expect(outcome.problem.message).not.toMatch(/NaN|Infinity|undefined/u);
    expect(notFinite(outcome.problem)).toBeUndefined();
    return "problem";
  }
  const checked = analysis.outputs.safeParse(outcome.outputs);
  expect(checked.error?.issues ?? []).toEqual([]);
  const told = [outcome, analysis.figures(outcome.outputs, read.data), analysis.limits(outcome.outputs, read.data)];
  expect(notFinite(told)).toBeUndefined();
  const { brief, sentence } = analysis.answer(outcome.outputs, read.data);
  expect(brief.length).toBeLessThanOrEqual(40);
  expect(`${brief} ${JSON.stringify(sentence)}`).not.toMatch(/NaN|Infinity|undefined|null/u);
  return "outputs";
}

const withoutProject = analyses.filter((analysis) => analysis.needs === undefined);
/** Small meshes where an analysis has one: the question is whether it answers, not how finely. */
const overrides = { azimuths: fc.constant(8), radialElements: fc.constant(4) };

const from = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** What a rotor may look like, so that more than a few questions get past the refusals. */
const preferred = {
  "rotor.hingeOffset": fc.constant(0),
  "rotor.radius": from(0.2, 4),
  "rotor.chord": from(0.02, 0.4),
  "rotor.stations": fc
    .uniqueArray(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 4 })
    .map((places) =>
      places.sort((a, b) => a - b).map((place) => ({ radiusFraction: place / 20, chord: 0.05 + place / 200, twist: (10 - place) / 100 })),
    ),
  "rotor.section.cd0": from(0.005, 0.05),
  "rotor.section.cd1": from(-0.01, 0.01),
  "rotor.section.cd2": from(0.1, 1),
  airspeed: from(0, 45),
  advanceRatio: from(0, 0.6),
  rotationRate: from(5, 120),
  collective: from(-0.1, 0.25),
  thrust: from(0, 500),
  shaftTorque: fc.constantFrom(0, 0, 0, 2, 10),
};

test.each(withoutProject.map((analysis) => ({ name: analysis.name, analysis })))(
  "$name answers 2 000 generated questions with numbers, a named problem or a refusal",
  ({ analysis }) => {
    const counts = { refused: 0, problem: 0, outputs: 0 };
    fc.assert(
      fc.property(schemaArbitrary(analysis.inputs, { overrides, preferred }), (inputs) => {
        counts[expectAnswer(analysis, inputs)] += 1;
      }),
      { numRuns: 2000, seed: 20_240_117 },
    );
    // A generator that is always refused would prove nothing.
    expect(counts.outputs).toBeGreaterThan(200);
  },
  180_000,
);
