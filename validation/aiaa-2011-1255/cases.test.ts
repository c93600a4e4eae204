import { expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import { answerOf, bladeOf, coefficientComparisons, givenComparisons, leftOutComparisons, peakComparison } from "../propeller-rows.ts";
import { checkAndRecord } from "../record.ts";

const folder = new URL("./", import.meta.url);
const diameter = 0.254;
const propeller = bladeOf(folder, { diameter, section: { kind: "cambered", thickness: 0.06, camber: 0.06 } });
const cases = readCases(new URL("cases.csv", folder));
const moving = cases.filter((row) => column(row, "advance_ratio") > 0);
const answer = answerOf(propeller, cases);
const all = cases.flatMap((row, i) => {
  const computed = answer.rows[i];
  return computed ? [{ row, computed }] : [];
});

test("the slow-flight propeller of the open data set is met within the settled tolerances", () => {
  checkAndRecord(folder, "brandt-selig-2011", [
    ...coefficientComparisons("ct", all, 0.03),
    ...coefficientComparisons("cp", all, 0.02),
    peakComparison(all, answerOf(propeller, moving).peakEfficiency, "6512 rpm"),
    ...leftOutComparisons(diameter, [...cases.filter((row) => column(row, "rpm") === 6528), ...moving], "6512 rpm"),
    ...givenComparisons(diameter, cases),
  ]);
});

test("thrust at rest grows with the Reynolds number as measured, by less", () => {
  const rest = all.filter(({ row }) => column(row, "advance_ratio") === 0).map(({ computed }) => computed.ct);
  expect((rest[rest.length - 1] ?? 0) / (rest[0] ?? 1)).toBeGreaterThan(1.04);
});
