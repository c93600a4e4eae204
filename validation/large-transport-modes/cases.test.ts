import { test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { modesOfAnalysis, type StabilityOutputs } from "../mode-rows.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

const derivatives = {
  kind: "coefficients",
  airspeed: 235.9,
  gravity: 9.81,
  mass: 2.83176e6 / 9.81,
  density: 0.3045,
  area: 511,
  chord: 8.324,
  span: 59.64,
  ix: 0.247e8,
  iy: 0.449e8,
  iz: 0.673e8,
  ixz: -0.212e7,
  longitudinal: {
    cxU: -0.108,
    cxAlpha: 0.2193,
    czU: -0.106,
    czAlpha: -4.92,
    czQ: -5.921,
    czAlphaDot: 5.896,
    cmU: 0.1043,
    cmAlpha: -1.023,
    cmQ: -23.92,
    cmAlphaDot: -6.314,
  },
  lateral: {
    cyBeta: -0.8771,
    clBeta: -0.2797,
    clP: -0.3295,
    clR: 0.304,
    cnBeta: 0.1946,
    cnP: -0.04073,
    cnR: -0.2737,
  },
};
const bounds = [-0.005, 0.005] as const;

test("a large jet transport has the modes of the book, and not those of Lanchester's formula", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url));
  const outputs = outputsOf<StabilityOutputs>("stability", { derivatives });
  const modeOf = modesOfAnalysis(outputs);
  const comparison = (
    quantity: string,
    name: string,
    computed: (row: CaseRow) => number | null,
    quantityKind: "growthRate" | "anglePerTime" | "time",
    note: string,
  ) => ({
    quantity,
    error: "relative" as const,
    rows: cases
      .filter((row) => column(row, name) !== 0)
      .map((row) => ({ expected: column(row, name), computed: computed(row) ?? Number.NaN, bounds })),
    tolerance: "±0.5 %",
    quantityKind,
    note,
  });
  const ours = "recomputed from the coefficients";
  checkAndRecord(new URL("./", import.meta.url), "etkin-reid-1996", [
    comparison("growth rate of the modes", "real", (row) => modeOf(row).real, "growthRate", ours),
    comparison("frequency of the oscillations", "imaginary", (row) => modeOf(row).imaginary, "anglePerTime", ours),
    comparison("published period", "published_period", (row) => modeOf(row).period, "time", "as printed"),
    comparison("published time to half", "published_half", (row) => modeOf(row).timeToHalf, "time", "as printed"),
    comparison("published root of roll and spiral", "published_root", (row) => modeOf(row).real, "growthRate", "as printed"),
    {
      quantity: "period of the phugoid by Lanchester's formula",
      error: "relative",
      rows: [{ expected: 106.8, computed: outputs.lanchesterPeriod ?? Number.NaN, bounds }],
      tolerance: "±0.5 %",
      quantityKind: "time",
      note: "formula, by hand; 14 % above the published period",
    },
  ]);
});
