// Frozen questions with their answers, asked through the built command line: an answer only changes on purpose, by
// `node tools/freeze-examples.mjs`.
import { analyses } from "@wingseed/engine";
import { expect, test } from "vitest";
// @ts-expect-error the tools are plain modules without declarations
import { exampleNames, freshAnswer, recordedAnswer } from "../tools/frozen-examples.mjs";

interface Answer {
  readonly cases: readonly unknown[];
  readonly provenance: { readonly runtime: { readonly v8: string; readonly architecture: string } };
}

const names = exampleNames() as readonly string[];
/** The same machine code gives the same numbers. */
const sameRuntime = 1e-9;
/** Another one rounds otherwise, and trims end anywhere within the solver's tolerance. */
const otherRuntime = 1e-4;

test.each(names)("the example %s is answered as on record", async (name) => {
  const recorded = recordedAnswer(name) as Answer | undefined;
  if (recorded === undefined) throw new Error(`examples/${name}.outputs.json is missing: run node tools/freeze-examples.mjs ${name}`);
  const fresh = (await freshAnswer(name)) as Answer;
  const same = JSON.stringify(fresh.provenance.runtime) === JSON.stringify(recorded.provenance.runtime);
  const known = { ...recorded, provenance: { ...recorded.provenance, runtime: fresh.provenance.runtime } };
  expect(difference(fresh, known, same ? sameRuntime : otherRuntime)).toBeUndefined();
});

test("every analysis has an example, and every example an analysis", () => {
  const shown = new Set(names.map((name) => name.split(".")[0]));
  expect([...shown].sort()).toEqual(analyses.map(({ name }) => name).sort());
});

test("a change in the ninth digit would be seen, and a lost field", () => {
  expect(difference({ power: 1 + 2e-9 }, { power: 1 }, sameRuntime)).toContain("/power");
  expect(difference({ power: 1 + 1e-10 }, { power: 1 }, sameRuntime)).toBeUndefined();
  expect(difference({ a: [1, 2] }, { a: [1, 2, 3] }, sameRuntime)).toContain("/a/2");
  expect(difference({ a: null }, { a: 0 }, otherRuntime)).toContain("/a");
});

/** Where two answers differ, in words; numbers near zero are compared at a thousandth. */
function difference(fresh: unknown, recorded: unknown, tolerance: number, path = ""): string | undefined {
  if (typeof fresh === "number" && typeof recorded === "number") {
    const near = Math.abs(fresh - recorded) <= tolerance * Math.max(1e-3, Math.abs(recorded));
    return near ? undefined : `${path}: ${fresh}, on record ${recorded}`;
  }
  if (typeof fresh !== "object" || fresh === null || typeof recorded !== "object" || recorded === null) {
    return Object.is(fresh, recorded) ? undefined : `${path}: ${JSON.stringify(fresh)}, on record ${JSON.stringify(recorded)}`;
  }
  for (const key of new Set([...Object.keys(fresh), ...Object.keys(recorded)])) {
    const values = [fresh, recorded].map((side) => (side as Record<string, unknown>)[key]);
    const found = difference(values[0], values[1], tolerance, `${path}/${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
