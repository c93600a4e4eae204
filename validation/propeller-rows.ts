import { type CaseRow, column, readCases } from "./cases.ts";
import type { ComparedRow, Comparison } from "./comparison.ts";
import { outputsOf } from "./run-analysis.ts";

/** What the checks of propellers read from the answer. */
export interface PropellerAnswer {
  readonly rows: readonly {
    readonly ct: number;
    readonly cp: number;
    readonly efficiency: number | null;
    readonly figureOfMerit: number | null;
    readonly reynoldsNumber: number | null;
  }[];
  readonly peakEfficiency: number | null;
}

const degree = Math.PI / 180;
const perMinute = Math.PI / 30;

/** A propeller by the stations of its blade.csv. */
export function bladeOf(folder: URL, more: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const stations = readCases(new URL("blade.csv", folder)).map((row) => ({
    radiusFraction: column(row, "radius_fraction"),
    chordFraction: column(row, "chord_fraction"),
    pitchAngle: column(row, "pitch_deg") * degree,
  }));
  return { stations, blades: 2, ...more };
}

/** The operating points of rows. */
export function pointsOf(rows: readonly CaseRow[]) {
  return rows.map((row) => ({ rotationRate: column(row, "rpm") * perMinute, advanceRatio: column(row, "advance_ratio") }));
}

/** Asks the analysis for these points of a propeller. */
export function answerOf(propeller: Readonly<Record<string, unknown>>, rows: readonly CaseRow[]): PropellerAnswer {
  return outputsOf<PropellerAnswer>("propeller", { propeller, altitude: 0, points: pointsOf(rows), radialElements: 24 });
}

/** Rows of a measured table. */
export function tableOf(rows: readonly CaseRow[]) {
  return rows.map((row) => ({
    advanceRatio: column(row, "advance_ratio"),
    rotationRate: column(row, "rpm") * perMinute,
    ct: column(row, "ct"),
    cp: column(row, "cp"),
  }));
}

export interface Compared {
  readonly row: CaseRow;
  readonly computed: PropellerAnswer["rows"][number];
}

const gates = {
  ct: { share: 0.15, least: 0.006, words: "±15 %, or 0.006 where that is more" },
  cp: { share: 0.2, least: 0.005, words: "±20 %, or 0.005 where that is more" },
};
const names = { ct: "thrust coefficient", cp: "power coefficient" };

/** Errors of a coefficient at rest, along the shaft, and relative where it is not small. */
export function coefficientComparisons(field: "ct" | "cp", all: readonly Compared[], small: number): readonly Comparison[] {
  const { share, least, words } = gates[field];
  const pair = ({ row, computed }: Compared) => ({ expected: column(row, field), computed: computed[field] });
  const rest = all.filter(({ row }) => column(row, "advance_ratio") === 0);
  const moving = all.filter(({ row }) => column(row, "advance_ratio") > 0);
  const large = all.filter(({ row }) => column(row, field) >= small);
  const advance = (some: readonly Compared[]) => ({
    name: "advance ratio",
    quantity: "dimensionless" as const,
    values: some.map(({ row }) => column(row, "advance_ratio")),
  });
  return [
    {
      quantity: `${names[field]} at rest`,
      error: "relative",
      rows: rest.map((one): ComparedRow => {
        const bound = Math.max(share, least / column(one.row, field));
        return { ...pair(one), bounds: [-bound, bound] };
      }),
      tolerance: words,
      field,
      along: { name: "rotation rate", quantity: "rotationRate", values: rest.map(({ row }) => column(row, "rpm") * perMinute) },
    },
    {
      quantity: `${names[field]} in flow along the shaft`,
      error: "1",
      rows: moving.map((one): ComparedRow => {
        const bound = Math.max(share * column(one.row, field), least);
        return { ...pair(one), bounds: [-bound, bound] };
      }),
      tolerance: words,
      field,
      along: advance(moving),
    },
    {
      quantity: `${names[field]}, rows above ${small}`,
      error: "relative",
      rows: large.map(pair),
      tolerance: "reported",
      field,
      along: advance(large),
    },
  ];
}

/** The largest efficiency of measured rows against that of the computed curve at their rate. */
export function peakComparison(all: readonly Compared[], computed: number | null, words: string): Comparison {
  const expected = Math.max(...all.map(({ row }) => column(row, "efficiency")));
  return {
    quantity: `best efficiency, ${words}`,
    error: "1",
    rows: [{ expected, computed: computed ?? Number.NaN, bounds: [-0.06, 0.06] }],
    tolerance: "±0.06",
    field: "peakEfficiency",
  };
}

/** A table that is given every row, asked for them. */
export function givenComparisons(diameter: number, rows: readonly CaseRow[]): readonly Comparison[] {
  const answer = answerOf({ diameter, table: tableOf(rows) }, rows);
  return (["ct", "cp"] as const).map((field) => ({
    quantity: `${names[field]} from a table that has the row`,
    error: "relative",
    rows: rows.map(
      (row, i): ComparedRow => ({ expected: column(row, field), computed: answer.rows[i]?.[field] ?? Number.NaN, bounds: [-0.01, 0.01] }),
    ),
    tolerance: "±1 %",
  }));
}

/**
 * Every second inner row is left out of a table, and asked of it.
 *
 * @param scatter why the rows themselves do not lie on one smooth curve within a per cent: then reported only
 */
export function leftOutComparisons(diameter: number, rows: readonly CaseRow[], words: string, scatter?: string): readonly Comparison[] {
  const asked = rows.filter((_, i) => i % 2 === 1 && i < rows.length - 1);
  const kept = rows.filter((row) => !asked.includes(row));
  const answer = answerOf({ diameter, table: tableOf(kept) }, asked);
  return (["ct", "cp"] as const).map((field) => {
    const scale = Math.max(...rows.map((row) => column(row, field)));
    return {
      quantity: `${names[field]} from a table that lacks the row, ${words}`,
      error: "relative",
      rows: asked.map((row, i): ComparedRow => {
        const bound = (0.01 * scale) / column(row, field);
        const pair = { expected: column(row, field), computed: answer.rows[i]?.[field] ?? Number.NaN };
        return scatter === undefined ? { ...pair, bounds: [-bound, bound] } : pair;
      }),
      tolerance: scatter === undefined ? "±1 % of the largest of these rows" : "reported",
      ...(scatter === undefined ? {} : { note: scatter }),
      along: { name: "advance ratio", quantity: "dimensionless" as const, values: asked.map((row) => column(row, "advance_ratio")) },
    };
  });
}
