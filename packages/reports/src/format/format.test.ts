import { describe, expect, it } from "vitest";
import { fixedText, formatColumn, formatReading, sentence, significantText, spokenSentence } from "./index.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll("\u202f", "_");

describe("numbers", () => {
  it("keep three figures, a true minus and narrow spaces between thousands", () => {
    expect(significantText(21.4449, 3)).toBe("21.4");
    expect(plain(significantText(-12345, 3))).toBe("−12_300");
    expect(significantText(0.99951, 3)).toBe("1.00");
    expect(plain(significantText(2.13e-7, 2))).toBe("2.1 × 10⁻⁷");
    expect(significantText(0, 3)).toBe("0");
  });
  it("never show minus zero", () => {
    expect(fixedText(-0.0004, 2)).toBe("0.00");
  });
  it("refuse what is not a number", () => {
    expect(() => fixedText(Number.NaN, 2)).toThrow(RangeError);
  });
});

describe("readings", () => {
  const text = (...given: Parameters<typeof formatReading>) => plain(formatReading(...given).text);
  it("use the unit people read for the size", () => {
    expect(text(1284, "time")).toBe("21.4 min");
    expect(text(1340, "power")).toBe("1.34 kW");
    expect(text(980, "power")).toBe("980 W");
    expect(text(74_000, "length")).toBe("74.0 km");
    expect(text(0.2, "dimensionless", { unit: "%" })).toBe("20.0 %");
    expect(text(288.15, "temperature")).toBe("15.0 °C");
    expect(text(71.3, "energyPerDistance")).toBe("19.8 Wh/km");
    expect(text(Math.PI / 6, "angle")).toBe("30.0°");
    expect(text(13, "dimensionless")).toBe("13");
  });
  it("say what a height is measured from", () => {
    expect(text(300, "length", { datum: "above sea" })).toBe("300 m above sea");
    expect(text(304.8, "length", { datum: "above sea", system: "aviation" })).toBe("1_000 ft above sea");
  });
  it("cut the value where the half-width ends", () => {
    expect(text(1284, "time", { halfWidth: 66 })).toBe("21.4 ± 1.1 min");
    expect(text(1284, "time", { halfWidth: 240 })).toBe("21 ± 4 min");
    expect(text(1310, "power", { halfWidth: 80 })).toBe("1.31 ± 0.08 kW");
    expect(text(97_000, "length", { halfWidth: 19_600 })).toBe("97 ± 20 km");
  });
  it("give both bounds when the interval is lopsided", () => {
    expect(text(74_000, "length", { interval: { low: 69_000, high: 82_000 } })).toBe("74 km, 69 to 82");
    expect(text(74_000, "length", { interval: { low: 69_000, high: 79_000 } })).toBe("74 ± 5 km");
  });
  it("say when no interval is known", () => {
    expect(formatReading(1, "mass").tags).toEqual(["no interval"]);
    expect(formatReading(1, "mass", { halfWidth: 0.1 }).tags).toEqual([]);
  });
  it("have words for a voice", () => {
    expect(formatReading(-5 + 273.15, "temperature").spoken).toBe("minus 5.0 degrees Celsius");
    expect(formatReading(12_300, "power", { unit: "W" }).spoken).toBe("12300 watts");
  });
  it("refuse a unit of another kind, with the allowed ones", () => {
    expect(() => formatReading(1, "time", { unit: "km" })).toThrow(/time cannot be shown in "km"; allowed: s, min, h/);
  });
});

describe("columns", () => {
  it("put one unit in the head and align the figures", () => {
    const column = formatColumn({ label: "hover", quantity: "time", unit: "min" }, [912, 1284, null, 302]);
    expect(column.head).toBe("hover, min");
    expect(column.cells).toEqual(["15.2", "21.4", "–", "5.0"]);
  });
  it("keep whole numbers whole and small ones visible", () => {
    expect(formatColumn({ label: "speed", quantity: "speed" }, [0, 1, 45]).cells).toEqual(["0", "1", "45"]);
    expect(formatColumn({ label: "share", quantity: "dimensionless" }, [123, 0.0021]).cells).toEqual(["123", "0.00210"]);
  });
});

describe("sentences", () => {
  const tokens = [
    { kind: "words", text: "It hovers" },
    { kind: "reading", value: 1284, quantity: "time", path: "/a" },
    { kind: "words", text: ", cell" },
    { kind: "handle", text: "age", target: "/b" },
    { kind: "words", text: "." },
  ] as const;
  it("space words, readings and handles as one writes", () => {
    expect(plain(sentence(tokens))).toBe("It hovers 21.4 min, cell age.");
    expect(spokenSentence(tokens)).toBe("It hovers 21.4 minutes, cell age.");
  });
});
