import { test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface State {
  readonly current: number;
  readonly rotationRate: number;
  readonly torque: number;
  readonly shaftPower: number;
  readonly efficiency: number;
}

interface MotorOutputs {
  readonly rows: readonly State[];
  readonly bestEfficiency: State;
}

const perMinute = Math.PI / 30;
const bounds = [-0.005, 0.005] as const;
const motor = { speedConstant: 900 * perMinute, resistance: 0.05, noLoadCurrent: 1.2 };

const cases = readCases(new URL("cases.csv", import.meta.url));
const at = (place: string): readonly CaseRow[] => cases.filter((row) => row.place === place);

function stateAt(row: CaseRow): State {
  const { rows } = outputsOf<MotorOutputs>("motor", {
    motor,
    voltage: column(row, "voltage"),
    points: [{ current: column(row, "current") }],
  });
  const [state] = rows;
  if (!state) throw new Error("no row");
  return state;
}

const quantities = [
  ["rotation rate", "rpm", "rotationRate", perMinute],
  ["torque", "torque", "torque", 1],
  ["shaft power", "shaft_power", "shaftPower", 1],
  ["efficiency", "efficiency", "efficiency", 1],
] as const;

const kinds = {
  rotationRate: "rotationRate",
  torque: "torque",
  shaftPower: "power",
  efficiency: "dimensionless",
  current: "current",
} as const;

test("a motor by current is that of the worked example, and its best point that of the closed form", () => {
  const worked = at("worked example");
  const best = at("best efficiency").map((row) => ({
    row,
    state: outputsOf<MotorOutputs>("motor", { motor, voltage: column(row, "voltage") }).bestEfficiency,
  }));
  const byCurrent = { name: "current", quantity: "current" as const, values: worked.map((row) => column(row, "current")) };
  const byVoltage = { name: "voltage", quantity: "voltage" as const, values: best.map(({ row }) => column(row, "voltage")) };
  checkAndRecord(new URL("./", import.meta.url), "drela-2007", [
    ...quantities.map(([quantity, name, field, scale]) => ({
      quantity,
      error: "relative" as const,
      rows: worked.map((row) => ({ expected: column(row, name) * scale, computed: stateAt(row)[field], bounds })),
      tolerance: "±0.5 %",
      note: "worked example, from memory",
      field,
      quantityKind: kinds[field],
      along: byCurrent,
    })),
    ...(["current", "efficiency"] as const).map((field) => ({
      quantity: `${field} of best efficiency`,
      error: "relative" as const,
      rows: best.map(({ row, state }) => ({ expected: column(row, field), computed: state[field], bounds })),
      tolerance: "±0.5 %",
      note: "regression against the closed form",
      quantityKind: kinds[field],
      along: byVoltage,
    })),
  ]);
});
