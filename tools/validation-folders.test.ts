import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, expect, it } from "vitest";
// @ts-expect-error the tools are plain modules without declarations
import { validationFolders } from "./validation-folders.mjs";
// @ts-expect-error the tools are plain modules without declarations
import { reasonIn } from "./validation-table.mjs";

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "wingseed-validation-"));
  cpSync("validation/naca-tr-515", join(root, "whole"), { recursive: true });
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const faults = (): readonly string[] => validationFolders(pathToFileURL(`${root}/`)).faults;

it("finds nothing wrong with a whole folder", () => {
  expect(faults()).toEqual([]);
});

it.each(["source.md", "tolerance.md", "domain.json", "cases.csv", "result.json"])("names a folder without %s", (name) => {
  rmSync(join(root, "whole", name));
  expect(faults()).toEqual([
    expect.stringContaining(`validation/whole: ${name} is missing`),
    "validation: no published check has a record",
  ]);
});

it("names a folder without a row, in the cases or in the record", () => {
  writeFileSync(join(root, "whole/cases.csv"), "mu,rpm,derived_ct,lift_to_drag,alpha_deg\n");
  expect(faults()).toContain("validation/whole: cases.csv has no row");
  cpSync("validation/naca-tr-515", join(root, "other"), { recursive: true });
  const record = JSON.parse(readFileSync(join(root, "other/result.json"), "utf8"));
  writeFileSync(join(root, "other/result.json"), JSON.stringify({ ...record, comparisons: [{ ...record.comparisons[0], rows: [] }] }));
  expect(faults().join("\n")).toContain('validation/other: result.json keeps no row of "thrust coefficient"');
  writeFileSync(join(root, "other/result.json"), JSON.stringify({ ...record, comparisons: [] }));
  expect(faults()).toContain("validation/other: result.json has no comparison");
});

it("names what is wrong in a domain", () => {
  const domain = JSON.parse(readFileSync(join(root, "whole/domain.json"), "utf8"));
  const series = [{ label: "all", x: { field: "advanceRatio", column: "mue" }, y: { field: "ct", column: "derived_ct" } }];
  writeFileSync(join(root, "whole/domain.json"), JSON.stringify({ ...domain, reference: "guessed", domain: { a: [2, 1] }, series }));
  const said = faults().join("\n");
  expect(said).toContain("reference must be one of measured, computed, formula");
  expect(said).toContain("domain.a must be [low, high]");
  expect(said).toContain("series[0].x needs a field and a column of cases.csv");
  writeFileSync(join(root, "whole/domain.json"), "{");
  expect(faults()[0]).toContain("validation/whole: ");
});

it("makes the table check fail for a folder that is not whole", () => {
  mkdirSync(join(root, "tree/validation"), { recursive: true });
  for (const part of ["tools", "docs/sources.bib"]) cpSync(part, join(root, "tree", part), { recursive: true });
  cpSync("validation/naca-tr-515", join(root, "tree/validation/whole"), { recursive: true });
  mkdirSync(join(root, "tree/packages/engine/src/published"), { recursive: true });
  const tool = resolve(root, "tree/tools/validation-table.mjs");
  execFileSync(process.execPath, [tool], { stdio: "pipe" });
  execFileSync(process.execPath, [tool, "--check"], { stdio: "pipe" });
  mkdirSync(join(root, "tree/validation/empty"));
  const { status, stderr } = spawnSync(process.execPath, [tool, "--check"], { encoding: "utf8" });
  expect(status).toBe(1);
  expect(stderr).toContain("validation/empty: cases.csv is missing");
});

it("takes the reason of a tolerance from the table or from the first paragraph", () => {
  const table =
    "# T\n\n| quantity | rows | bound | reason |\n| --- | --- | --- | --- |\n| thrust | all | 5 % | scatter |\n| thrust | fast | 9 % | twist |\n";
  expect(reasonIn(table, "thrust")).toBe("scatter; twist");
  expect(reasonIn(table, "power")).toBe("");
  expect(reasonIn("# T\n\nOne per cent,\nthe scatter.\n\nMore.", "thrust")).toBe("One per cent, the scatter.");
});
