import { test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface WingOutputs {
  readonly rows: readonly { readonly liftCoefficient: number; readonly spanEfficiency: number }[];
  readonly liftSlope: number;
}

const sectionSlope = 2 * Math.PI;

/** Stations that make the same equations as the four coefficients of the table, and enough that more change nothing. */
const [ofTable, converged] = [7, 41];

/** τ and δ of a wing that the analysis solved. */
function corrections(row: CaseRow, stations: number): { readonly tau: number; readonly delta: number } {
  const aspect = column(row, "aspect_over_slope") * sectionSlope;
  const { rows, liftSlope } = outputsOf<WingOutputs>("wing", {
    wing: {
      area: 1,
      span: Math.sqrt(aspect),
      planform: row.place === "elliptic" ? "elliptic" : "trapezoidal",
      section: { kind: "generic", liftSlope: sectionSlope, cd0: 0.01, stallAngle: 0.6 },
    },
    method: { kind: "lifting-line", stations, shortWing: false },
    reynoldsNumber: 1e6,
    angles: [0.1],
  });
  const [found] = rows;
  if (!found) throw new Error("no row");
  return {
    tau: ((sectionSlope / liftSlope - 1) * Math.PI * aspect) / sectionSlope - 1,
    delta: 1 / found.spanEfficiency - 1,
  };
}

test("the lifting line gives the corrections of rectangular wings, and none for elliptic ones", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url));
  const comparison = (place: string, name: "tau" | "delta", stations: number, bound?: number) => {
    const there = cases.filter((row) => row.place === place);
    const quantity = name === "tau" ? "correction of the slope of lift" : "correction of induced drag";
    return {
      quantity: `${quantity}, ${place}, ${stations} stations`,
      error: "1" as const,
      rows: there.map((row) => ({
        expected: column(row, name),
        computed: corrections(row, stations)[name],
        ...(bound === undefined ? {} : { bounds: [-bound, bound] as const }),
      })),
      tolerance: bound === undefined ? "reported" : `±${bound}`,
      note:
        place === "elliptic" ? "exact by theory" : stations === ofTable ? "as many unknowns as the table" : "the table is not converged",
      along: {
        name: "aspect ratio over slope of lift",
        quantity: "dimensionless" as const,
        values: there.map((row) => column(row, "aspect_over_slope")),
      },
    };
  };
  checkAndRecord(new URL("./", import.meta.url), "glauert-1926-elements", [
    comparison("rectangular", "tau", ofTable, 0.01),
    comparison("rectangular", "delta", ofTable, 0.003),
    comparison("rectangular", "tau", converged),
    comparison("rectangular", "delta", converged),
    comparison("elliptic", "tau", converged, 1e-4),
    comparison("elliptic", "delta", converged, 1e-4),
  ]);
});
