import { expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import type { ComparedRow } from "../comparison.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface RotorOutputs {
  readonly ct: number;
  readonly ch: number;
  readonly liftToDrag: number;
  readonly shaftAngle: number;
}

const degree = Math.PI / 180;
const perMinute = Math.PI / 30;
const solidity = 0.0976;

function autorotating(mu: number, rpm: number): RotorOutputs {
  return outputsOf<RotorOutputs>("rotor", {
    rotor: {
      radius: 6.858,
      blades: 4,
      chord: 0.526,
      rootCutout: 0.15,
      articulation: "hinged",
      lockNumber: 15,
      section: "naca-0015",
      sectionDragIncrement: 0.004,
    },
    altitude: 0,
    advanceRatio: mu,
    rotationRate: rpm * perMinute,
    collective: 1.9 * degree,
    shaftTorque: 0,
  });
}

const cases = readCases(new URL("cases.csv", import.meta.url));
const rows = cases.map((row) => ({
  row,
  mu: column(row, "mu"),
  rpm: column(row, "rpm"),
  computed: autorotating(column(row, "mu"), column(row, "rpm")),
}));
const slow = (one: (typeof rows)[number]): boolean => one.rpm < 105 && one.mu <= 0.44;
const curve = Array.from({ length: 21 }, (_, i) => 0.3 + i * 0.01).map((mu) => ({ mu, liftToDrag: autorotating(mu, 99).liftToDrag }));
const peak = curve.reduce((best, point) => (point.liftToDrag > best.liftToDrag ? point : best));

test("the autorotating rotor of NACA TR 515 is met within the settled tolerances", () => {
  const thrust = rows.map((one): ComparedRow => {
    const pair = { expected: column(one.row, "derived_ct"), computed: one.computed.ct };
    if (slow(one)) return { ...pair, bounds: [-0.12, 0.12] };
    return one.rpm >= 105 ? { ...pair, bounds: [-0.16, 0.16] } : pair;
  });
  const angle = rows.map((one): ComparedRow => {
    const pair = { expected: column(one.row, "alpha_deg") * degree, computed: one.computed.shaftAngle };
    return slow(one) ? { ...pair, bounds: [-1.5 * degree, 1.5 * degree] } : pair;
  });
  const glide = rows.map((one): ComparedRow => {
    const pair = { expected: column(one.row, "lift_to_drag"), computed: one.computed.liftToDrag };
    if (!slow(one)) return { ...pair, bounds: [-0.3, 0.3] };
    return { ...pair, bounds: one.mu <= 0.3 ? [-0.12, 0.12] : [-0.12, 0.25] };
  });
  const along = { name: "advance ratio", quantity: "dimensionless" as const, values: rows.map((one) => one.mu) };
  checkAndRecord(new URL("./", import.meta.url), "wheatley-hood-1935", [
    {
      quantity: "thrust coefficient",
      error: "relative",
      rows: thrust,
      tolerance: "±12 % below 105 rpm to μ 0.44, ±16 % faster",
      note: "hinged rotor, autorotating",
      field: "ct",
      along,
    },
    {
      quantity: "shaft angle",
      error: "rad",
      rows: angle,
      tolerance: "±1.5° below 105 rpm to μ 0.44",
      field: "shaftAngle",
      quantityKind: "angle",
      along,
    },
    {
      quantity: "lift over drag",
      error: "relative",
      rows: glide,
      tolerance: "±12 % to μ 0.30, −12 to +25 % to μ 0.44 below 105 rpm, ±30 % elsewhere",
      note: "high at high advance ratio: no shank or hub drag",
      field: "liftToDrag",
      along,
    },
    {
      quantity: "H-force coefficient",
      error: "relative",
      rows: rows.map((one) => ({ expected: column(one.row, "derived_ch"), computed: one.computed.ch })),
      tolerance: "reported",
      note: "small difference of large forces",
      field: "ch",
      along,
    },
    {
      quantity: "largest lift over drag",
      error: "relative",
      rows: [{ expected: 7.2, computed: peak.liftToDrag, bounds: [-0.12, 0.25] }],
      tolerance: "at most 25 % above",
    },
    {
      quantity: "advance ratio of the largest lift over drag",
      error: "1",
      rows: [{ expected: 0.369, computed: peak.mu, bounds: [-0.0395, 0.0515] }],
      tolerance: "0.33 to 0.42",
      note: "flat: within 0.5 % from 0.39 to 0.46",
    },
  ]);
});

test("its trends are the measured ones", () => {
  for (const [index, one] of rows.entries()) {
    const before = rows[index - 1];
    if (before) expect(one.computed.shaftAngle).toBeLessThan(before.computed.shaftAngle + 0.1 * degree);
    if (one.mu > 0.44) continue;
    expect(one.computed.ct / solidity).toBeGreaterThan(0.05);
    expect(one.computed.ct / solidity).toBeLessThan(0.075);
  }
  const ends = [rows[1], rows[rows.length - 1]].map((one) => one?.computed.ch ?? 0);
  expect(ends[1]).toBeGreaterThan(3 * (ends[0] ?? 0));
});
