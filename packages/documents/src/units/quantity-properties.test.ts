import { quantityKinds } from "@wingseed/engine";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isQuantityKind, unitsOfKind } from "./kind-units.ts";
import { parseQuantity } from "./quantity-text.ts";

const kinds = Object.keys(quantityKinds).filter(isQuantityKind);
const relative = kinds.filter((kind) => kind !== "temperature");
const anyNumber = fc.double({ min: -1e9, max: 1e9, noNaN: true }).filter((value) => Math.abs(value) > 1e-9);

function siValue(text: string, kind: (typeof kinds)[number]): number {
  const reading = parseQuantity(text, kind);
  if (reading.kind === "problem") throw new Error(`${text} as ${kind}: ${reading.message}`);
  return reading.value;
}

describe("every kind of quantity", () => {
  test("reads its own example and each of its usual units", () => {
    for (const kind of kinds) {
      expect(parseQuantity(unitsOfKind(kind).example, kind).kind).toBe("quantity");
      for (const unit of unitsOfKind(kind).usual) expect(parseQuantity(`300 ${unit}`, kind).kind, `${kind} in ${unit}`).toBe("quantity");
    }
  });

  test("reads its SI unit back to the very same number", () => {
    fc.assert(
      fc.property(fc.constantFrom(...relative), anyNumber, (kind, number) => {
        const unit = kind === "dimensionless" ? "" : quantityKinds[kind];
        expect(siValue(`${number} ${unit}`, kind)).toBe(number);
      }),
    );
  });

  test("is proportional to its number in every usual unit but an absolute temperature", () => {
    fc.assert(
      fc.property(fc.constantFrom(...relative), anyNumber, (kind, number) => {
        for (const unit of unitsOfKind(kind).usual) {
          const ratio = siValue(`${number} ${unit}`, kind) / siValue(`1 ${unit}`, kind);
          expect(Math.abs(ratio / number - 1)).toBeLessThan(1e-12);
        }
      }),
    );
  });

  test("keeps a half-width that scales like its value", () => {
    fc.assert(
      fc.property(fc.constantFrom(...relative), anyNumber, fc.double({ min: 0.01, max: 90, noNaN: true }), (kind, number, percent) => {
        const unit = kind === "dimensionless" ? "" : unitsOfKind(kind).usual[0];
        const reading = parseQuantity(`${number} ${unit} ± ${percent} %`, kind);
        if (reading.kind === "problem" || reading.uncertainty?.kind !== "normal") throw new Error(JSON.stringify(reading));
        expect(Math.abs(reading.uncertainty.halfWidth / Math.abs(reading.value) / (percent / 100) - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  test("refuses the example of every kind of another dimension", () => {
    const si = (kind: (typeof kinds)[number]) => quantityKinds[kind];
    for (const asked of relative) {
      for (const other of relative) {
        const alike = si(asked) === si(other) || [asked, other].includes("dimensionless");
        if (!alike) expect(parseQuantity(unitsOfKind(other).example, asked).kind, `${other} as ${asked}`).toBe("problem");
      }
    }
  });
});

test("temperatures in three scales agree", () => {
  fc.assert(
    fc.property(fc.double({ min: -200, max: 500, noNaN: true }), (celsius) => {
      const kelvin = siValue(`${celsius} degC`, "temperature");
      expect(kelvin).toBe(celsius + 273.15);
      expect(siValue(`${celsius * 1.8 + 32} degF`, "temperature")).toBeCloseTo(kelvin, 9);
      expect(siValue(`${kelvin} K`, "temperature")).toBe(kelvin);
    }),
  );
});

test("any text is read or refused with a sentence, and never gives a number that is not finite", () => {
  const fragments = [
    "24",
    "kg",
    " ",
    "±",
    "%",
    "-",
    "−",
    ".",
    "e9",
    "/",
    "(",
    ")",
    ",",
    "m2",
    "K",
    "uniform",
    "°C",
    "*",
    "·",
    "^",
    "1e400",
    "\u0000",
    "N m",
  ];
  const garbage = fc.oneof(
    fc.string(),
    fc.string({ unit: "binary" }),
    fc.array(fc.constantFrom(...fragments), { maxLength: 12 }).map((parts) => parts.join("")),
  );
  fc.assert(
    fc.property(garbage, fc.constantFrom(...kinds), (text, kind) => {
      const reading = parseQuantity(text, kind);
      if (reading.kind === "problem") expect(reading.message.length).toBeGreaterThan(5);
      else expect(Number.isFinite(reading.value)).toBe(true);
    }),
    { numRuns: 5000 },
  );
});
