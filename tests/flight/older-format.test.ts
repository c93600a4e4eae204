// A file of an older format answers as it did: the same numbers as the same aircraft written anew.
import { readFileSync } from "node:fs";
import { documentKinds } from "@wingseed/documents";
import { aircraftDefinition, analyses, type ProjectView } from "@wingseed/engine";
import { expect, test } from "vitest";
import { readYamlDocument } from "../../packages/documents/src/document/index.ts";
import { isNotReducible, reducedAircraft } from "../../packages/engine/src/aircraft/index.ts";
import { demoDefinition } from "./demo-flight.ts";

const kind = documentKinds.find((one) => one.kind === "aircraft");
if (kind === undefined) throw new Error("there is no aircraft document");
const text = readFileSync("packages/documents/fixtures/aircraft-format-1.yaml", "utf8");
const older = aircraftDefinition.parse(readYamlDocument(kind, { file: "a.yaml", text, hash: "a" }).document?.data);

const quiet = {
  progress: () => {},
  cancelled: () => false,
  partial: () => {},
  analysis: (): never => {
    throw new Error("no other analysis is at hand");
  },
};

function speeds(data: unknown): Record<string, unknown> {
  const speed = analyses.find(({ name }) => name === "speed");
  if (speed === undefined) throw new Error("no speed");
  const view: ProjectView = { documents: { "a.yaml": { path: "a.yaml", kind: "aircraft", data, written: {}, hash: "a" } }, rasters: {} };
  const inputs = speed.inputs.parse({ aircraft: "a.yaml", speeds: [0, 12, 20, 30] });
  const outcome = speed.run(view, inputs, quiet);
  if (outcome.problem) throw new Error(outcome.problem.message);
  return outcome.outputs as Record<string, unknown>;
}

test("format 1 is the same aircraft to the reduced trim", async () => {
  const reduced = [older, await demoDefinition("baseline")].map((one) => {
    const found = reducedAircraft(one);
    if (isNotReducible(found)) throw new Error(found.reason);
    const { electrical: _, battery, fin, tailplane, ...others } = found;
    return { ...others, battery: { ...battery, blockSize: undefined }, fin: fin.liftSlope, tailplane: tailplane.liftSlope };
  });
  expect(reduced[0]).toEqual(reduced[1]);
});

test("and what each speed costs is the same to the eighth digit", async () => {
  const [before, now] = [speeds(older), speeds(await demoDefinition("baseline"))];
  const numbers = (value: unknown): number[] =>
    typeof value === "number" ? [value] : typeof value === "object" && value !== null ? Object.values(value).flatMap(numbers) : [];
  const [was, is] = [numbers(before), numbers(now)];
  expect(was.length).toBeGreaterThan(50);
  expect(was).toHaveLength(is.length);
  was.forEach((value, index) => {
    expect(Math.abs((is[index] as number) - value)).toBeLessThan(1e-8 * Math.max(1e-3, Math.abs(value)));
  });
});
