import { describe, expect, it } from "vitest";
import { type PublishedCheck, type PublishedError, publishedBand } from "./index.ts";

const error = (field: string, lowest: number, highest: number, more: Partial<PublishedError> = {}): PublishedError => ({
  quantity: `${field} compared`,
  field,
  unit: "relative",
  rows: 2,
  gatedRows: 0,
  bias: 0,
  rms: 0,
  largest: Math.max(-lowest, highest),
  lowest,
  highest,
  passed: null,
  ...more,
});
const made = (check: string, [low, high]: readonly [number, number], errors: readonly PublishedError[]): PublishedCheck => ({
  check,
  component: "rotor",
  title: check,
  source: check,
  reference: "measured",
  domain: [{ name: "advanceRatio", low, high }],
  series: [],
  errors,
});
const speed = [{ field: "airspeed", exponent: 1 }];
const both = [...speed, { field: "ct", exponent: -0.5 }];

describe("the band of published errors", () => {
  const slow = made("slow", [0, 0.2], [error("airspeed", -0.1, 0.25), error("airspeed", 0, 0.05)]);
  const fast = made("fast", [0.3, 0.5], [error("ct", -0.19, 0.1)]);

  it("takes the largest error of the check whose range the state lies in, either way", () => {
    const band = publishedBand("rotor", { advanceRatio: 0.1 }, 10, both, [slow, fast]);
    expect(band?.low).toBeCloseTo(8, 12);
    expect(band?.high).toBeCloseTo(12.5, 12);
    expect(band?.errors).toEqual([{ check: "slow", title: "slow", quantity: "airspeed compared", factor: 1.25, distance: 0 }]);
  });

  it("counts an error that is too low as the larger factor that it is", () => {
    const low = made("low", [0, 1], [error("airspeed", -0.2, 0.2)]);
    expect(publishedBand("rotor", { advanceRatio: 0.5 }, 1, speed, [low])?.high).toBeCloseTo(1.25, 12);
  });

  it("carries an error of another field over by the power it goes with", () => {
    expect(publishedBand("rotor", { advanceRatio: 0.4 }, 1, both, [slow, fast])?.high).toBeCloseTo(1 / 0.9, 12);
    expect(publishedBand("rotor", { advanceRatio: 0.4 }, 1, speed, [fast])).toBeNull();
  });

  it("outside every range counts those that are nearly as near, each raised by its distance", () => {
    const band = publishedBand("rotor", { advanceRatio: 0.24 }, 1, both, [fast, slow]);
    expect(band?.errors.map(({ check }) => check)).toEqual(["slow", "fast"]);
    expect(band?.errors[0]?.distance).toBeCloseTo(0.2, 12);
    expect(band?.high).toBeCloseTo(1.25 ** 1.2, 12);
    expect(band?.low).toBeCloseTo(1.25 ** -1.2, 12);
  });

  it("never gets narrower on the way out of a range", () => {
    const highs = [0.2, 0.3, 0.35, 0.4].map((advanceRatio) => publishedBand("rotor", { advanceRatio }, 1, both, [slow])?.high ?? 0);
    expect(highs).toEqual([...highs].sort((a, b) => a - b));
    expect(highs[0]).toBeLessThan(highs[3] ?? 0);
  });

  it("is none where only other states were compared, or nothing about the value, or not in parts of it", () => {
    expect(publishedBand("rotor", { advanceRatio: 0.9 }, 1, speed, [slow])).toBeNull();
    expect(publishedBand("kite", { advanceRatio: 0.1 }, 1, speed, [slow])).toBeNull();
    const absolute = made("absolute", [0, 1], [error("airspeed", -0.1, 0.1, { unit: "1" })]);
    expect(publishedBand("rotor", { advanceRatio: 0.1 }, 1, speed, [absolute])).toBeNull();
  });

  it("is none where a computed value was nothing at all, or the value itself is", () => {
    const nothing = made("nothing", [0, 1], [error("airspeed", -1, 0)]);
    expect(publishedBand("rotor", { advanceRatio: 0.1 }, 1, speed, [nothing])).toBeNull();
    expect(publishedBand("rotor", { advanceRatio: 0.1 }, 0, speed, [slow])).toBeNull();
  });
});
