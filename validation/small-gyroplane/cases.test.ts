import { expect, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { runAnalysis } from "../run-analysis.ts";

interface RotorOutputs {
  readonly rotationRate: number;
}

const degree = Math.PI / 180;

/** Level flight: the rotor autorotates and carries the weight. Chord 45 mm and pitch 2° are ours, the maker gives none. */
function level(diameter: number, mass: number, airspeed: number) {
  return runAnalysis<RotorOutputs>("rotor", {
    rotor: { radius: diameter / 2, blades: 2, chord: 0.045, rootCutout: 0.15, articulation: "teetering", section: "naca-0012" },
    airspeed,
    collective: 2 * degree,
    thrust: mass * 9.80665,
    shaftTorque: 0,
  });
}

const rows = readCases(new URL("cases.csv", import.meta.url)).map((row) => ({
  row,
  answered: level(column(row, "diameter"), column(row, "mass"), column(row, "airspeed")),
}));

const along = { name: "airspeed", quantity: "speed" as const, values: rows.map(({ row }) => column(row, "airspeed")) };

/** Tip speed at which the weight makes a thrust coefficient of 0.006. */
function usualTipSpeed(row: CaseRow): number {
  const area = (Math.PI * column(row, "diameter") ** 2) / 4;
  return Math.sqrt((column(row, "mass") * 9.80665) / (1.225 * area * 0.006));
}

test("a small gyroplane flies level from 8 to 22 m/s on an autorotating rotor", () => {
  checkAndRecord(new URL("./", import.meta.url), "small-gyroplane-maker", [
    {
      quantity: "level flight at the airspeed (1: found)",
      error: "1",
      rows: rows.map(({ answered }) => ({ expected: 1, computed: answered.problem ? 0 : 1, bounds: [0, 0] })),
      tolerance: "found",
      note: "a band: usable airspeed 7 to 25 m/s; chord and pitch are ours",
      along,
    },
    {
      quantity: "tip speed",
      error: "relative",
      rows: rows.flatMap(({ row, answered }) =>
        answered.outputs ? [{ expected: usualTipSpeed(row), computed: (answered.outputs.rotationRate * column(row, "diameter")) / 2 }] : [],
      ),
      tolerance: "reported",
      note: "expected: thrust coefficient 0.006 as larger gyroplanes have it",
      quantityKind: "speed",
    },
  ]);
});

test("its rotor speed changes little over the airspeeds", () => {
  for (const diameter of [0.8, 1.05]) {
    const rates = rows.flatMap(({ row, answered }) =>
      column(row, "diameter") === diameter && answered.outputs ? [answered.outputs.rotationRate] : [],
    );
    expect(Math.max(...rates) / Math.min(...rates)).toBeLessThan(1.4);
  }
});
