import { describe, expect, test } from "vitest";
import { largestSkew, wakeInfluence } from "./skewed-wake.ts";

const degree = Math.PI / 180;
const at = (place: Partial<Parameters<typeof wakeInfluence>[0]>, skew: number) =>
  wakeInfluence({ aft: 0, side: 0, above: 0, radius: 1, ...place }, skew * degree);

describe("the wake of a disc", () => {
  test("on its axis in hover grows below the disc as a cylinder of vortices has it: 1 + z/√(1 + z²)", () => {
    for (const z of [0.5, 1, 2, 4]) {
      const closed = 1 + z / Math.sqrt(1 + z * z);
      expect(Math.abs(at({ above: -z, radius: 0.01 }, 0) / closed - 1)).toBeLessThan(0.02);
      expect(Math.abs(at({ above: z, radius: 0.01 }, 0) - (2 - closed))).toBeLessThan(0.02);
    }
  });

  test("answers 1 in its own place at every skew, and next to nothing beside it in hover", () => {
    for (const skew of [0, 30, 60, 85]) expect(at({}, skew)).toBeCloseTo(1, 12);
    expect(Math.abs(at({ side: 2.5 }, 0))).toBeLessThan(0.01);
  });

  test("lies on what stands behind, the more the flatter it leaves, and lifts what stands beside or ahead", () => {
    const behind = [20, 40, 60, 75, 85].map((skew) => at({ aft: 2.5 }, skew));
    expect(behind).toEqual([...behind].sort((a, b) => a - b));
    expect(behind[4]).toBeGreaterThan(1);
    expect(behind[4]).toBeLessThan(2);
    expect(at({ side: 2.5 }, 70)).toBeLessThan(0);
    expect(at({ aft: -2.5 }, 70)).toBeLessThan(0);
  });

  test("is the same on both sides", () => {
    expect(at({ aft: 1.3, side: 1.1 }, 50)).toBeCloseTo(at({ aft: 1.3, side: -1.1 }, 50), 12);
  });

  test("is followed no farther than into its own plane", () => {
    expect(largestSkew).toBeLessThan(90 * degree);
  });
});
