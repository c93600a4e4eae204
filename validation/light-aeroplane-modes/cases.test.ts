import { test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { modesOfAnalysis, type StabilityOutputs } from "../mode-rows.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

const derivatives = {
  kind: "dimensional",
  airspeed: 50,
  longitudinal: { xu: -0.06728, xw: 0.02323, zu: -0.396, zw: -1.729, mu: 0, mw: -0.2772, mq: -2.207, mwDot: -0.0197 },
  lateral: { yv: -0.1444, lv: -0.1166, lp: -2.283, lr: 1.053, nv: 0.174, np: -1.732, nr: -1.029 },
};
const [root, derived] = [0.002, 0.005];

test("a light aeroplane has the modes of the notes", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url));
  const modeOf = modesOfAnalysis(outputsOf<StabilityOutputs>("stability", { derivatives }));
  const oscillations = cases.filter((row) => column(row, "imaginary") > 0);
  const comparison = (
    quantity: string,
    name: string,
    rows: readonly CaseRow[],
    computed: (row: CaseRow) => number | null,
    bound: number,
    quantityKind: "growthRate" | "anglePerTime" | "time" | "dimensionless",
  ) => ({
    quantity,
    error: "relative" as const,
    rows: rows.map((row) => ({ expected: column(row, name), computed: computed(row) ?? Number.NaN, bounds: [-bound, bound] as const })),
    tolerance: `±${(bound * 100).toFixed(1)} %`,
    quantityKind,
  });
  checkAndRecord(new URL("./", import.meta.url), "aircraft-flight-mechanics-notes", [
    comparison("growth rate of the modes", "real", cases, (row) => modeOf(row).real, root, "growthRate"),
    comparison("frequency of the oscillations", "imaginary", oscillations, (row) => modeOf(row).imaginary, root, "anglePerTime"),
    comparison("period of the oscillations", "period", oscillations, (row) => modeOf(row).period, derived, "time"),
    comparison("damping of the oscillations", "damping", oscillations, (row) => modeOf(row).damping, derived, "dimensionless"),
    comparison("natural frequency", "natural_frequency", cases, (row) => modeOf(row).naturalFrequency, root, "anglePerTime"),
    comparison(
      "time to half or double",
      "half_or_double",
      cases,
      (row) => modeOf(row).timeToHalf ?? modeOf(row).timeToDouble,
      derived,
      "time",
    ),
  ]);
});
