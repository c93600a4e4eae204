import { test } from "vitest";
import { column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface Air {
  readonly density: number;
  readonly densityAltitude: number;
}

test("density altitude is that of equal density on a standard day", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url));
  const air = cases.map((row) =>
    outputsOf<Air>("atmosphere", {
      pressureAltitude: column(row, "pressure_altitude_m"),
      outsideAirTemperature: column(row, "temperature_k"),
    }),
  );
  const along = { name: "pressure altitude", quantity: "length" as const, values: cases.map((row) => column(row, "pressure_altitude_m")) };
  checkAndRecord(new URL("./", import.meta.url), "iso-2533-1975", [
    {
      quantity: "density altitude",
      error: "m",
      rows: cases.map((row, i) => ({
        expected: column(row, "density_altitude_m"),
        computed: air[i]?.densityAltitude ?? Number.NaN,
        bounds: [-10, 10] as const,
      })),
      tolerance: "±10 m",
      field: "densityAltitude",
      quantityKind: "length",
      along,
    },
    {
      quantity: "density off the standard day",
      error: "relative",
      rows: cases.map((row, i) => ({
        expected: column(row, "density"),
        computed: air[i]?.density ?? Number.NaN,
        bounds: [-2e-4, 2e-4] as const,
      })),
      tolerance: "±0.02 %",
      field: "density",
      quantityKind: "density",
      along,
    },
  ]);
});
