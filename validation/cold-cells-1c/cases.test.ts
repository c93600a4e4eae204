import { expect, test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import type { ComparedRow, Comparison } from "../comparison.ts";
import { checkAndRecord } from "../record.ts";
import {
  type BatteryOutputs,
  type CellSize,
  contactResistanceOf,
  discharge,
  sizes,
  tenSecondResistance,
  voltageAfter,
} from "./discharge.ts";

interface Discharged {
  readonly row: CaseRow;
  readonly size: CellSize;
  readonly computed: BatteryOutputs;
  readonly fromFull: BatteryOutputs;
  /** The row of the same cell at 25 °C. */
  readonly warm: CaseRow;
  readonly warmComputed: BatteryOutputs;
  readonly warmFromFull: BatteryOutputs;
}

const rows = readCases(new URL("cases.csv", import.meta.url));

const discharged: readonly Discharged[] = Object.entries(sizes).flatMap(([name, size]) => {
  const own = rows.filter((row) => column(row, "size") === Number(name));
  const warm = own.find((row) => column(row, "celsius") === 25);
  if (!warm) throw new Error(`no row at 25 °C for ${name}`);
  const contact = contactResistanceOf(warm, size);
  const full = { startStateOfCharge: 1 };
  const warmComputed = discharge(warm, size, contact);
  const warmFromFull = discharge(warm, size, contact, full);
  return own.map((row) => {
    const both = { computed: discharge(row, size, contact), fromFull: discharge(row, size, contact, full) };
    return { row, size, warm, warmComputed, warmFromFull, ...both };
  });
});

const cold = discharged.filter(({ row }) => column(row, "celsius") < 25);
const fitted = (one: Discharged) => one.size.name === "18650";
const sized = (name: string) => cold.filter(({ size }) => size.name === name);

function along(of: readonly Discharged[]): NonNullable<Comparison["along"]> {
  return { name: "temperature", quantity: "temperature", values: of.map(({ row }) => column(row, "celsius") + 273.15) };
}

function ratio(name: string, key: "ah" | "wh", bound: number): Comparison {
  const of = sized(name);
  const value = ({ capacityDelivered, energyOut }: BatteryOutputs) => (key === "ah" ? capacityDelivered : energyOut);
  return {
    quantity: `${key === "ah" ? "capacity" : "energy"} over that at 25 °C, ${name}`,
    error: "1",
    rows: of.map(
      ({ row, warm, computed, warmComputed }): ComparedRow => ({
        expected: column(row, key) / column(warm, key),
        computed: value(computed) / value(warmComputed),
        bounds: [-bound, bound],
      }),
    ),
    tolerance: `±${Math.round(100 * bound)} points`,
    note: name === "18650" ? "the cold laws are fitted to these rows" : "predicted",
    along: along(of),
  };
}

function resistance(name: string): Comparison {
  const of = sized(name);
  return {
    quantity: `ten-second resistance over that at 25 °C, ${name}`,
    error: "relative",
    rows: of.map(({ row, warm, size, computed, warmComputed }): ComparedRow => {
      const pair = {
        expected: column(row, "r10_mohm") / column(warm, "r10_mohm"),
        computed: tenSecondResistance(computed, size) / tenSecondResistance(warmComputed, size),
      };
      return column(row, "celsius") === -20 ? { ...pair, bounds: [-0.25, 0.25] } : pair;
    }),
    tolerance: "±25 % at −20 °C",
    note: name === "18650" ? "the cold laws are fitted to these rows" : "predicted",
    along: along(of),
  };
}

function meanVoltage(name: string): Comparison {
  const of = sized(name);
  return {
    quantity: `mean voltage, ${name}`,
    error: "V",
    rows: of.map(
      ({ row, computed }): ComparedRow => ({ expected: column(row, "mean_v"), computed: computed.meanVoltage, bounds: [-0.1, 0.1] }),
    ),
    tolerance: "±0.10 V",
    note: name === "18650" ? "the cold laws are fitted to these rows" : "predicted",
    field: "meanVoltage",
    quantityKind: "voltage",
    along: along(of),
  };
}

function reported(): readonly Comparison[] {
  const voltages = discharged.flatMap((one) =>
    one.size.charges.flatMap((charge, index) => {
      const expected = column(one.row, `v${index + 1}`);
      const computed = voltageAfter(one.computed, one.size, charge);
      return expected > 0 && computed !== undefined ? [{ one, expected, computed }] : [];
    }),
  );
  const tenth = ({ rows: samples }: BatteryOutputs) => samples.find(({ time }) => time === 10)?.voltage ?? 0;
  return [
    {
      quantity: "voltage along the discharge, both sizes",
      error: "V",
      rows: voltages.map(({ expected, computed }) => ({ expected, computed })),
      tolerance: "reported",
      field: "voltage",
      quantityKind: "voltage",
      along: along(voltages.map(({ one }) => one)),
    },
    {
      quantity: "voltage after ten seconds, both sizes",
      error: "V",
      rows: discharged.map(({ row, computed }) => ({ expected: column(row, "v10"), computed: tenth(computed) })),
      tolerance: "reported",
      note: "too high in deep cold: the first dip is deeper than the linear circuit shows",
      quantityKind: "voltage",
      along: along(discharged),
    },
    {
      quantity: "capacity over that at 25 °C if charged full, both sizes",
      error: "1",
      rows: cold.map(({ row, warm, fromFull, warmFromFull }) => ({
        expected: column(row, "ah") / column(warm, "ah"),
        computed: fromFull.capacityDelivered / warmFromFull.capacityDelivered,
      })),
      tolerance: "reported",
      note: "without the measured rest voltages: what the under-charge of the cold rows is worth",
      along: along(cold),
    },
  ];
}

test("two cell sizes in the cold are met within the settled tolerances", () => {
  const gated = ["18650", "21700"].flatMap((name) => [
    ratio(name, "ah", 0.06),
    ratio(name, "wh", 0.07),
    meanVoltage(name),
    resistance(name),
  ]);
  checkAndRecord(new URL("./", import.meta.url), "cold-cells-2024", [...gated, ...reported()]);
});

test("start charges of the table are the rest voltages on the built-in cell's curve", () => {
  for (const { row, size, computed } of discharged) {
    const rest = column(row, "v10") + (column(row, "r10_mohm") / 1000) * size.current;
    const own = computed.rows[0]?.openCircuitVoltage ?? 0;
    if (column(row, "start_soc") < 1) expect(Math.abs(own - rest)).toBeLessThan(1e-3);
    else expect(rest).toBeGreaterThanOrEqual(own);
  }
});

test("in the deepest cold the voltage dips and then rises as the cell warms itself, and not when it is warm", () => {
  for (const { row, size, computed } of discharged) {
    if (column(row, "celsius") === -30) expect(computed.dip?.recovery).toBeGreaterThan(0.005);
    if (column(row, "celsius") === -25 && size.name === "21700") expect(computed.dip?.recovery).toBeGreaterThan(0.005);
    if (column(row, "celsius") > -15) expect(computed.dip).toBeNull();
  }
});

test("what is delivered falls with temperature, and every discharge ends at the cut-off voltage", () => {
  for (const [index, one] of discharged.entries()) {
    expect(one.computed.endedBy).toBe("cut-off voltage");
    const before = discharged[index - 1];
    if (before?.size === one.size) expect(one.computed.energyOut).toBeLessThan(before.computed.energyOut);
  }
  expect(discharged.filter(fitted).length).toBe(6);
});
