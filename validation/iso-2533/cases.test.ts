import { test } from "vitest";
import { column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

type Air = Readonly<Record<"temperature" | "pressure" | "density" | "speedOfSound" | "dynamicViscosity", number>>;

const quantities = [
  ["temperature", "temperature_k", "temperature", "temperature", 2e-4],
  ["pressure", "pressure_pa", "pressure", "pressure", 2e-4],
  ["density", "density", "density", "density", 2e-4],
  ["speed of sound", "speed_of_sound", "speedOfSound", "speed", 2e-4],
  ["dynamic viscosity", "dynamic_viscosity", "dynamicViscosity", "dynamicViscosity", 4e-4],
] as const;

test("the atmosphere is the standard one", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url));
  const air = cases.map((row) => outputsOf<Air>("atmosphere", { altitude: column(row, "altitude_m") }));
  checkAndRecord(
    new URL("./", import.meta.url),
    "iso-2533-1975",
    quantities.map(([quantity, name, output, quantityKind, bound]) => ({
      quantity,
      error: "relative" as const,
      rows: cases.map((row, i) => ({
        expected: column(row, name),
        computed: air[i]?.[output] ?? Number.NaN,
        bounds: [-bound, bound] as const,
      })),
      tolerance: `±${bound * 100} %`,
      field: output,
      quantityKind,
      along: { name: "altitude", quantity: "length" as const, values: cases.map((row) => column(row, "altitude_m")) },
    })),
  );
});
