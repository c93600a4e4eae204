import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
// @ts-expect-error the tools are plain modules without declarations
import { references } from "./references.mjs";

it("an entry becomes one line, without its braces", () => {
  const text =
    "@techreport{a-1935,\n  author = {Able, Ann and Baker, Bo},\n  title = {Tests of a {PCA-2} Rotor},\n  institution = {Bureau},\n  number = {TR 1},\n  pages = {3--9},\n  year = {1935}\n}\n";
  expect(references(text)).toEqual({ "a-1935": "Able, Ann; Baker, Bo, Tests of a PCA-2 Rotor, TR 1, Bureau, pages 3–9, 1935." });
});

it("every source of the project can be printed", () => {
  const text = readFileSync("docs/sources.bib", "utf8");
  const made = references(text) as Record<string, string>;
  expect(Object.keys(made)).toHaveLength(text.match(/^@/gm)?.length ?? 0);
  for (const [key, reference] of Object.entries(made)) expect(reference, key).toMatch(/^\S.{20,}\.$/);
});
