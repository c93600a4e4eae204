import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import { chamberCooling, contactResistanceOf, discharge, sizes, tenSecondResistance } from "./discharge.ts";

interface StoredCell {
  readonly capacity: number;
  readonly openCircuitVoltage: { readonly stateOfCharge: readonly number[]; readonly value: readonly number[] };
  readonly resistances: Readonly<Record<"ohmic" | "fastPair" | "slowPair", readonly number[]>> & {
    readonly stateOfCharge: readonly number[];
  };
  readonly timeConstants: { readonly fastPair: number; readonly slowPair: number };
  readonly temperature: { readonly resistanceActivation: number; readonly diffusionTime: number; readonly diffusionActivation: number };
}

const stored = JSON.parse(
  readFileSync(new URL("../../packages/engine/src/drivetrain/battery/data/reference-nca.json", import.meta.url), "utf8"),
) as StoredCell;

function at(x: readonly number[], y: readonly number[], value: number): number {
  const after = x.findIndex((one) => one >= value);
  if (after < 0) return y[y.length - 1] ?? 0;
  if (after === 0) return y[0] ?? 0;
  const low = x[after - 1] ?? 0;
  return (y[after - 1] ?? 0) + (((y[after] ?? 0) - (y[after - 1] ?? 0)) * (value - low)) / ((x[after] ?? 0) - low);
}

interface Laws {
  readonly resistance: number;
  readonly diffusion: number;
  readonly cooling: number;
}

const size = sizes[18650];
const sizeCapacity = size?.capacity ?? 0;
if (!size) throw new Error("no such size");

/** The built-in cell as a table in the size of the 18650, with other laws over temperature. */
function cellWith(laws: Laws): unknown {
  const { stateOfCharge } = stored.openCircuitVoltage;
  const scale = stored.capacity / 3600 / sizeCapacity;
  const resistance = (which: "ohmic" | "fastPair" | "slowPair", charge: number) =>
    scale * at(stored.resistances.stateOfCharge, stored.resistances[which], charge);
  return {
    table: stateOfCharge.map((charge, i) => ({
      stateOfCharge: charge,
      openCircuitVoltage: stored.openCircuitVoltage.value[i],
      ohmicResistance: resistance("ohmic", charge),
      fastResistance: resistance("fastPair", charge),
      fastTimeConstant: stored.timeConstants.fastPair,
      slowResistance: resistance("slowPair", charge),
      slowTimeConstant: stored.timeConstants.slowPair,
    })),
    resistanceActivation: laws.resistance,
    slowActivation: laws.resistance,
    diffusionTime: stored.temperature.diffusionTime,
    diffusionActivation: laws.diffusion,
  };
}

const rows = readCases(new URL("cases.csv", import.meta.url)).filter((row) => column(row, "size") === 18650);
const warm = rows.find((row) => column(row, "celsius") === 25);

/** Sum of squares that the laws were fitted with: cold rows of the 18650, each error over its weight. */
function misfit(laws: Laws): number {
  if (!size || !warm) throw new Error("no row at 25 °C");
  const more = { cell: cellWith(laws), cooling: laws.cooling };
  const contact = contactResistanceOf(warm, size, more);
  const reference = discharge(warm, size, contact, more);
  let sum = 0;
  for (const row of rows) {
    if (row === warm) continue;
    const one = discharge(row, size, contact, more);
    const capacity = one.capacityDelivered / reference.capacityDelivered - column(row, "ah") / column(warm, "ah");
    const voltage = one.meanVoltage - column(row, "mean_v");
    const measured = column(row, "r10_mohm") / column(warm, "r10_mohm");
    const resistance = tenSecondResistance(one, size) / tenSecondResistance(reference, size) / measured - 1;
    sum += (capacity / 0.03) ** 2 + (voltage / 0.05) ** 2 + (resistance / 0.125) ** 2;
  }
  return sum;
}

const laws: Laws = {
  resistance: stored.temperature.resistanceActivation,
  diffusion: stored.temperature.diffusionActivation,
  cooling: chamberCooling,
};

test("the cold laws of the built-in cell lie at the least sum of squares of the 18650 rows: a twentieth away it is larger", () => {
  const least = misfit(laws);
  for (const law of ["resistance", "diffusion", "cooling"] as const) {
    for (const factor of [0.95, 1.05]) expect(misfit({ ...laws, [law]: factor * laws[law] }), `${law} × ${factor}`).toBeGreaterThan(least);
  }
});

test("the built-in cell and the same cell as a table discharge alike", () => {
  const row = rows[3];
  if (!size || !row) throw new Error("no such row");
  const named = discharge(row, size, 0.06);
  const tabled = discharge(row, size, 0.06, { cell: cellWith(laws) });
  expect(tabled.capacityDelivered / named.capacityDelivered).toBeCloseTo(1, 9);
  expect(tabled.meanVoltage).toBeCloseTo(named.meanVoltage, 9);
});
