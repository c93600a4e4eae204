import { expect, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import type { Comparison } from "../comparison.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface RotorOutputs {
  readonly ct: number;
  readonly cq: number;
}

const degree = Math.PI / 180;
const reportSection = { kind: "generic", liftSlope: 5.75, cd0: 0.0113, cd2: 1.25, stallAngle: 0.3 };

function hovering(blades: number, collective: number, section: unknown): RotorOutputs {
  return outputsOf<RotorOutputs>("rotor", {
    rotor: { radius: 0.762, blades, chord: 0.0508, rootCutout: 0.167, articulation: "teetering", section },
    altitude: 0,
    airspeed: 0,
    shaftAngle: 0,
    rotationRate: (960 * Math.PI) / 30,
    collective,
  });
}

const cases = readCases(new URL("cases.csv", import.meta.url));
const pitch = (row: CaseRow): number => column(row, "pitch_deg") * degree;
const solved = (section: unknown) => cases.map((row) => ({ row, computed: hovering(column(row, "blades"), pitch(row), section) }));
const byReport = solved(reportSection);
const byTable = solved("naca-0015");
type Row = (typeof byReport)[number];
const merit = (ct: number, cq: number): number => ct ** 1.5 / Math.SQRT2 / cq;

function coefficient(quantity: string, name: "ct" | "cq", rows: readonly Row[], size: number): Comparison {
  // At 0 and 1 degree the measured thrust is next to nothing: an error in parts of it says nothing.
  const shown = rows.filter((one) => column(one.row, "pitch_deg") >= 2);
  return {
    quantity,
    error: "relative",
    rows: shown.map((one) => ({
      expected: column(one.row, name),
      computed: one.computed[name],
      ...(column(one.row, "pitch_deg") >= 6 ? { bounds: [-size, size] as const } : {}),
    })),
    tolerance: `±${size * 100} % from 6°`,
    field: name,
    along: { name: "pitch", quantity: "angle", values: shown.map((one) => pitch(one.row)) },
  };
}

function thrustRatio(rows: readonly Row[]): { readonly expected: number; readonly computed: number } {
  const [two, four] = [2, 4].map((blades) =>
    rows.find((one) => column(one.row, "blades") === blades && column(one.row, "pitch_deg") === 8),
  ) as [Row, Row];
  return { expected: column(four.row, "ct") / column(two.row, "ct"), computed: four.computed.ct / two.computed.ct };
}

/** Largest figure of merit over the pitch angles of the table. */
const peakMerit = (rows: readonly Row[], blades: number): { readonly expected: number; readonly computed: number } => {
  const chosen = rows.filter((one) => column(one.row, "blades") === blades && column(one.row, "pitch_deg") >= 4);
  return {
    expected: Math.max(...chosen.map((one) => merit(column(one.row, "ct"), column(one.row, "cq")))),
    computed: Math.max(...chosen.map((one) => merit(one.computed.ct, one.computed.cq))),
  };
};

test("the hovering rotors of NACA TN 626 are met within the settled tolerances", () => {
  checkAndRecord(new URL("./", import.meta.url), "knight-hefner-1937", [
    coefficient("thrust coefficient, section law of the report", "ct", byReport, 0.08),
    {
      ...coefficient("torque coefficient, section law of the report", "cq", byReport, 0.08),
      missed: "one row, two blades at 12°, is 11 % high: the law knows no stall and its drag rises beyond what was measured",
    },
    coefficient("thrust coefficient, built-in section", "ct", byTable, 0.12),
    coefficient("torque coefficient, built-in section", "cq", byTable, 0.12),
    {
      quantity: "thrust of 4 over 2 blades at 8°",
      error: "1",
      rows: [{ ...thrustRatio(byReport), bounds: [-0.06, 0.06] }, thrustRatio(byTable)],
      tolerance: "±0.06",
      missed: "1.60 against 1.51: momentum theory with tip loss gives 1.6 whatever was tried; thrust of four blades is right within 3 %",
      note: "section law of the report, then built-in section",
    },
    {
      quantity: "largest figure of merit",
      error: "1",
      rows: [
        ...[2, 4].map((blades) => ({ ...peakMerit(byReport, blades), bounds: [-0.03, 0.03] as const })),
        ...[2, 4].map((blades) => peakMerit(byTable, blades)),
      ],
      tolerance: "±0.03",
      missed: "0.05 low with the report's law, which has much drag, and 0.05 high with the built-in section, which has little",
      note: "2 and 4 blades with the section law of the report, then with the built-in section",
    },
  ]);
});

test("without pitch there is no thrust, and the drag of four blades is twice that of two", () => {
  const [two, four] = [2, 4].map((blades) => hovering(blades, 0, "naca-0015")) as [RotorOutputs, RotorOutputs];
  expect(Math.abs(two.ct)).toBeLessThan(1e-8);
  expect(four.cq / two.cq).toBeCloseTo(2, 3);
});
