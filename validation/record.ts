import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { expect } from "vitest";
import { type Comparison, type ComparisonResult, compared } from "./comparison.ts";

/** What stands in result.json of a folder. */
export interface CheckResult {
  /** Name of the folder. */
  readonly check: string;
  /** Key of docs/sources.bib. */
  readonly source: string;
  readonly comparisons: readonly ComparisonResult[];
}

/**
 * Compares, then holds the figures against those on record; with WINGSEED_RECORD=1 it writes them instead. So the table made
 * from the records shows what the program computes now, or a test fails.
 */
export function checkAndRecord(folder: URL, source: string, comparisons: readonly Comparison[]): CheckResult {
  const result: CheckResult = {
    check: folder.pathname.replace(/\/$/u, "").split("/").pop() ?? "",
    source,
    comparisons: comparisons.map(compared),
  };
  const file = new URL("result.json", folder);
  if (process.env.WINGSEED_RECORD === "1") writeFileSync(file, recordText(result));
  expect(existsSync(file), `${file.pathname} is missing: run the validation once with WINGSEED_RECORD=1`).toBe(true);
  expectClose(result, JSON.parse(readFileSync(file, "utf8")), "result");
  for (const [index, { quantity, passed, tolerance }] of result.comparisons.entries()) {
    if (passed === null) continue;
    if (comparisons[index]?.missed === undefined) expect(passed, `${quantity} outside its tolerance (${tolerance})`).toBe(true);
    else expect(passed, `${quantity} is met (${tolerance}): take away the word that it is missed`).toBe(false);
  }
  return result;
}

/** The record as text: indented, but each compared row in one line, so that a change of one row is a change of one line. */
function recordText(result: CheckResult): string {
  const rows: string[] = [];
  const kept = (_key: string, value: unknown): unknown => {
    if (typeof value !== "object" || value === null || !("expected" in value)) return value;
    return `row ${rows.push(JSON.stringify(value)) - 1}`;
  };
  const text = JSON.stringify(result, kept, 2);
  return `${text.replace(/"row (\d+)"/gu, (_, index: string) => rows[Number(index)] ?? "")}\n`;
}

/** Equal in everything but the last digits of numbers, which differ between processors. */
function expectClose(computed: unknown, recorded: unknown, path: string): void {
  if (typeof computed === "number" && typeof recorded === "number") {
    const difference = Math.abs(computed - recorded);
    expect(difference <= 1e-9 * Math.max(1, Math.abs(recorded)), `${path}: computed ${computed}, on record ${recorded}`).toBe(true);
    return;
  }
  if (typeof computed !== "object" || computed === null || typeof recorded !== "object" || recorded === null) {
    expect(computed, path).toEqual(recorded);
    return;
  }
  expect(Object.keys(computed), `${path}: fields`).toEqual(Object.keys(recorded));
  for (const [key, value] of Object.entries(computed)) expectClose(value, (recorded as Record<string, unknown>)[key], `${path}.${key}`);
}
