import { describe, expect, it } from "vitest";
import { windSpeedAt, windVelocityAt } from "./index.ts";

const from = (degrees: number) => (degrees * Math.PI) / 180;

describe("mean wind over height", () => {
  it("is uniform unless a profile is chosen", () => {
    const wind = { speed: 7, fromDirection: 0, profile: { kind: "uniform" } } as const;
    expect([1, 10, 300].map((height) => windSpeedAt(wind, height))).toEqual([7, 7, 7]);
  });

  it("follows the power law: 10 m to 100 m at exponent 1/7 is ten to the one seventh", () => {
    const wind = { speed: 5, fromDirection: 0, profile: { kind: "power-law", exponent: 1 / 7 } } as const;
    expect(windSpeedAt(wind, 100) / 5).toBeCloseTo(Math.exp(Math.LN10 / 7), 12);
    expect(windSpeedAt(wind, 0)).toBe(0);
  });

  it("follows the logarithmic law: 10 m to 100 m over roughness 0.1 m is three halves", () => {
    const wind = { speed: 5, fromDirection: 0, profile: { kind: "logarithmic", roughnessLength: 0.1 } } as const;
    expect(windSpeedAt(wind, 100)).toBeCloseTo(7.5, 12);
    expect(windSpeedAt(wind, 10)).toBeCloseTo(5, 12);
    expect(windSpeedAt(wind, 0.05)).toBe(0);
  });

  it("says from where it comes but points where it goes", () => {
    const west = windVelocityAt({ speed: 8, fromDirection: from(270), profile: { kind: "uniform" } }, 10);
    expect(west.east).toBeCloseTo(8, 12);
    expect(west.north).toBeCloseTo(0, 12);
  });
});
