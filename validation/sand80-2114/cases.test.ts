import { expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import type { ComparedRow, Comparison } from "../comparison.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface SectionOutputs {
  readonly rows: readonly { readonly liftCoefficient: number; readonly dragCoefficient: number }[];
  readonly largestLift: number;
}

interface Point {
  readonly reynolds: number;
  readonly angle: number;
  readonly lift: number;
  readonly drag: number;
}

const degree = Math.PI / 180;
const law = { kind: "cambered", thickness: 0.15, camber: 0 };

const points = readCases(new URL("cases.csv", import.meta.url)).map(
  (row): Point => ({
    reynolds: column(row, "reynolds"),
    angle: column(row, "angle_deg") * degree,
    lift: column(row, "lift"),
    drag: column(row, "drag"),
  }),
);
const afterStall = points.filter((point) => point.reynolds === 0);
const zeroLift = points.filter((point) => point.reynolds > 0 && point.angle === 0);
const polarNumbers = [160_000, 360_000, 1_000_000];
const polar = (reynolds: number) => points.filter((point) => point.reynolds === reynolds);
const polars = polarNumbers.flatMap(polar);
const largest = (reynolds: number) => Math.max(...polar(reynolds).map((point) => point.lift));

const ask = (section: unknown, reynoldsNumber: number, angles: readonly number[]) =>
  outputsOf<SectionOutputs>("section", { section, reynoldsNumber, machNumber: 0, angles });
const at = (section: unknown, { reynolds, angle }: Point) =>
  ask(section, reynolds || 500_000, [angle]).rows[0] as SectionOutputs["rows"][number];

/** The source as a user's table, without one Reynolds number. The first half of the circle is enough: the section is symmetric. */
const without = (left: number) =>
  polarNumbers
    .filter((reynolds) => reynolds !== left)
    .flatMap(polar)
    .map((point) => ({ angle: point.angle, reynoldsNumber: point.reynolds, liftCoefficient: point.lift, dragCoefficient: point.drag }));

/** Drag at zero lift as a table of its own, without one Reynolds number. */
const dragWithout = (left: number) =>
  zeroLift
    .filter(({ reynolds }) => reynolds !== left)
    .flatMap(({ reynolds, drag }) =>
      [0, 1, 2].map((angle) => ({ angle: angle * degree, reynoldsNumber: reynolds, liftCoefficient: 0.11 * angle, dragCoefficient: drag })),
    );

const settled = { drag: [-0.2, 0.2], lift: [-0.15, 0.15] } as const;
const over = (values: readonly number[]): NonNullable<Comparison["along"]> => ({
  name: "Reynolds number",
  quantity: "dimensionless",
  values,
});
const overAngle = (compared: readonly Point[]): NonNullable<Comparison["along"]> => ({
  name: "angle of attack",
  quantity: "angle",
  values: compared.map(({ angle }) => angle),
});

test("the tables of SAND80-2114 are met within the settled tolerances", () => {
  const inner = zeroLift.slice(1, -1);
  const exponents = (drag: (point: Point) => number) =>
    zeroLift.slice(1).map((point, i) => {
      const before = zeroLift[i] as Point;
      return -Math.log(drag(point) / drag(before)) / Math.log(point.reynolds / before.reynolds);
    });
  const lawDrag = zeroLift.map(
    (point): ComparedRow => ({ expected: point.drag, computed: at(law, point).dragCoefficient, bounds: settled.drag }),
  );
  const own = (name: "lift" | "drag"): ComparedRow[] =>
    [...polars, ...afterStall].map((point) => ({
      expected: point[name],
      computed: at("naca-0015", point)[`${name}Coefficient`],
      bounds: [-0.005, 0.005],
    }));
  const lawExponents = exponents((point) => at(law, point).dragCoefficient);
  const gap = polar(360_000);
  const attached = polars.filter((point) => point.lift >= 0 && point.angle <= 8 * degree && point.lift < 0.95 * largest(point.reynolds));
  checkAndRecord(new URL("./", import.meta.url), "sheldahl-klimas-1981", [
    {
      quantity: "drag at zero lift, Reynolds number left out",
      error: "relative",
      rows: inner.map((point) => ({
        expected: point.drag,
        computed: at(dragWithout(point.reynolds), point).dragCoefficient,
        bounds: settled.drag,
      })),
      tolerance: "±20 %",
      reason: "roughness and bubbles move the drag of real sections as much",
      note: "a user's table with wide steps",
      field: "dragCoefficient",
      along: over(inner.map(({ reynolds }) => reynolds)),
    },
    {
      quantity: "largest lift, Reynolds number left out",
      error: "relative",
      rows: [{ expected: largest(360_000), computed: ask(without(360_000), 360_000, [0]).largestLift, bounds: settled.lift }],
      tolerance: "±15 %",
      reason: "tunnels differ by as much near stall",
      note: "360 000 between 160 000 and 1 000 000",
      field: "largestLift",
    },
    {
      quantity: "lift, Reynolds number left out",
      error: "1",
      rows: gap.map((point) => ({ expected: point.lift, computed: at(without(360_000), point).liftCoefficient })),
      tolerance: "reported",
      note: "largest beyond stall",
      field: "liftCoefficient",
      along: overAngle(gap),
    },
    {
      quantity: "drag at zero lift, law by thickness and camber",
      error: "relative",
      rows: lawDrag,
      tolerance: "±20 %",
      reason: "roughness and bubbles move the drag of real sections as much",
      note: "the law stands on these numbers: holds the fit",
      field: "dragCoefficient",
      along: over(zeroLift.map(({ reynolds }) => reynolds)),
    },
    {
      quantity: "largest lift, law by thickness and camber",
      error: "relative",
      rows: polarNumbers.map((reynolds) => ({
        expected: largest(reynolds),
        computed: ask(law, reynolds, [0]).largestLift,
        bounds: settled.lift,
      })),
      tolerance: "±15 %",
      reason: "tunnels differ by as much near stall",
      note: "the law stands on these numbers: holds the fit",
      field: "largestLift",
      along: over(polarNumbers),
    },
    {
      quantity: "lift up to 95 % of the largest, law by thickness and camber",
      error: "1",
      rows: attached.map((point) => ({ expected: point.lift, computed: at(law, point).liftCoefficient })),
      tolerance: "reported",
      field: "liftCoefficient",
      along: overAngle(attached),
    },
    {
      quantity: "drag up to 95 % of the largest lift, law by thickness and camber",
      error: "relative",
      rows: attached.map((point) => ({ expected: point.drag, computed: at(law, point).dragCoefficient })),
      tolerance: "reported",
      field: "dragCoefficient",
      along: overAngle(attached),
    },
    {
      quantity: "exponent of drag over Reynolds number, law by thickness and camber",
      error: "1",
      rows: exponents(({ drag }) => drag).map((expected, i) => ({
        expected,
        computed: lawExponents[i] ?? Number.NaN,
        bounds: [-0.03, 0.03],
      })),
      tolerance: "±0.03",
      reason: "printed to two digits",
      note: "0.44 at the lowest Reynolds numbers, 0.1 at the highest",
      along: over(zeroLift.slice(1).map(({ reynolds }) => reynolds)),
    },
    {
      quantity: "lift of the built-in section",
      error: "1",
      rows: own("lift"),
      tolerance: "±0.005",
      reason: "steps of the circle and nothing else",
      note: "the table against itself",
      field: "liftCoefficient",
      along: overAngle([...polars, ...afterStall]),
    },
    {
      quantity: "drag of the built-in section",
      error: "1",
      rows: own("drag"),
      tolerance: "±0.005",
      reason: "steps of the circle and nothing else",
      note: "the table against itself",
      field: "dragCoefficient",
      along: overAngle([...polars, ...afterStall]),
    },
  ]);
});

test("drag across the stream is 1.8, and backwards the section lifts as it was measured", () => {
  const [across, backwards] = ask("naca-0012", 500_000, [90 * degree, 170 * degree]).rows;
  expect(across?.dragCoefficient).toBeCloseTo(1.8, 2);
  expect(backwards?.liftCoefficient).toBeCloseTo(-0.85, 2);
});
