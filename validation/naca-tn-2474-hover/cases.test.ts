import { expect, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface RotorOutputs {
  readonly ct: number;
  readonly cq: number;
}

const degree = Math.PI / 180;
const perMinute = Math.PI / 30;

function hovering(rpm: number, collective: number): RotorOutputs {
  return outputsOf<RotorOutputs>("rotor", {
    rotor: { radius: 0.9144, blades: 3, chord: 0.048, rootCutout: 0.169, articulation: "teetering", section: "naca-0015" },
    altitude: 0,
    airspeed: 0,
    shaftAngle: 0,
    rotationRate: rpm * perMinute,
    collective,
  });
}

const rows = readCases(new URL("cases.csv", import.meta.url)).map((row) => {
  const computed = hovering(column(row, "rpm"), column(row, "pitch_deg") * degree);
  return { row, computed, torqueAboveZero: computed.cq - hovering(column(row, "rpm"), 0).cq };
});
const bounds = (row: CaseRow, size: number): { readonly bounds?: readonly [number, number] } =>
  column(row, "gated") === 1 ? { bounds: [-size, size] } : {};
const pitch = (row: CaseRow): number => column(row, "pitch_deg") * degree;
const along = (of: readonly { readonly row: CaseRow }[]) => ({
  name: "pitch",
  quantity: "angle" as const,
  values: of.map((one) => pitch(one.row)),
});

test("the hovering rotor of NACA TN 2474 is met within the settled tolerances", () => {
  const withTorque = rows.filter((one) => column(one.row, "torque_read") === 1);
  const high = rows.filter((one) => column(one.row, "gated") === 1);
  checkAndRecord(new URL("./", import.meta.url), "castles-gray-1951", [
    {
      quantity: "thrust coefficient",
      error: "relative",
      rows: rows.map((one) => ({ expected: column(one.row, "ct"), computed: one.computed.ct, ...bounds(one.row, 0.12) })),
      tolerance: "±12 % from 6 to 10.5°",
      note: "uncertainty of zero pitch ±0.3°",
      field: "ct",
      along: along(rows),
    },
    {
      quantity: "thrust coefficient, 6 to 10.5°",
      error: "relative",
      rows: high.map((one) => ({ expected: column(one.row, "ct"), computed: one.computed.ct })),
      tolerance: "reported",
      note: "goal beyond the gate: 5 %",
      along: along(high),
    },
    {
      quantity: "torque coefficient above zero thrust",
      error: "relative",
      rows: withTorque.map((one) => ({
        expected: column(one.row, "torque_above_zero"),
        computed: one.torqueAboveZero,
        ...bounds(one.row, 0.2),
      })),
      tolerance: "±20 % from 6 to 10.5°",
      field: "cq",
      along: along(withTorque),
    },
  ]);
});

test("thrust rises less and torque more with every degree, as measured", () => {
  const curve = [4, 6, 8, 10].map((angle) => hovering(1200, angle * degree));
  const rises = (of: (one: RotorOutputs) => number): number[] => curve.slice(1).map((one, i) => of(one) - of(curve[i] as RotorOutputs));
  const torque = rises((one) => one.cq);
  expect(torque).toEqual([...torque].sort((a, b) => a - b));
  for (const rise of rises((one) => one.ct)) expect(rise).toBeGreaterThan(0);
});
