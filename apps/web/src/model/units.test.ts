import { describe, expect, it } from "vitest";
import { readableText, textOf } from "./field-text.ts";
import type { QuantityField } from "./schema.ts";
import { fieldUnit, numberIn, siValue, splitText } from "./units.ts";

const field = (quantity: QuantityField["quantity"]): QuantityField => ({
  kind: "quantity",
  path: "x",
  label: "X",
  required: false,
  quantity,
});

describe("units in fields", () => {
  it("are taken from the size of the value and the chosen system", () => {
    expect(fieldUnit("length", 0.05).name).toBe("mm");
    expect(fieldUnit("speed", 20, "aviation").name).toBe("kt");
    expect(textOf(field("temperature"), 288.15)).toBe("15 degC");
    expect(textOf(field("speed"), 20, "aviation")).toBe("38.8769 kt");
    expect(textOf(field("dimensionless"), 0.2)).toBe("0.2");
  });

  it("are parted from the number whatever their spelling, and left together when unknown", () => {
    expect(splitText("43kt", "speed")).toMatchObject({ number: "43", unit: { name: "kt" } });
    expect(splitText("−5 °C", "temperature")).toMatchObject({ number: "-5", unit: { name: "degC" } });
    expect(splitText("12", "angle")).toMatchObject({ number: "12", unit: { name: "deg" } });
    expect(splitText("12 furlongs", "speed")).toBeUndefined();
    expect(splitText("1, 2 m/s", "speed")).toBeUndefined();
  });

  it("bring back the SI value", () => {
    expect(siValue("43 kt", "speed")).toBeCloseTo(22.121, 3);
    expect(siValue("15 degC", "temperature")).toBeCloseTo(288.15, 9);
    expect(siValue("fast", "speed")).toBeUndefined();
  });

  it("are shown with their signs", () => {
    expect(readableText("-5 degC", "temperature")).toBe("−5\u00a0°C");
    expect(readableText("90 deg", "angle")).toBe("90°");
    expect(readableText("as the file says", "angle")).toBe("as the file says");
  });

  it("give back a thousandth and a large number without noise", () => {
    expect(numberIn(0.1 + 0.2, fieldUnit("dimensionless", 1))).toBe("0.3");
    expect(numberIn(4_830_000, fieldUnit("energy", 4_830_000))).toBe("1341.67");
  });
});
