import { describe, expect, it } from "vitest";
import { factorNearGround, groundEffect } from "./ground-effect.ts";
import { inducedInflow } from "./induced-inflow.ts";

const inRange = (height: number, forward: number) => {
  const found = groundEffect(height, forward);
  if (found.kind !== "in-range") throw new Error("too low");
  return found;
};

describe("ground effect", () => {
  it("gives 1/15 more thrust at equal power one radius up in hover, and fades with height and speed", () => {
    expect(inRange(1, 0).thrustRatio).toBeCloseTo(16 / 15, 12);
    expect(inRange(3, 0).thrustRatio).toBeLessThan(1.01);
    expect(inRange(1, 2).thrustRatio - 1).toBeCloseTo(1 / (1 - 1 / 80) - 1, 12);
    expect(inRange(1, 50).thrustRatio).toBeCloseTo(1, 4);
  });

  it("keeps induced power with the thrust that it adds", () => {
    const { thrustRatio, inducedRatio } = inRange(0.7, 0);
    // Thrust k times as large with induced velocity that grows with its root and is reduced by the ground: power as before.
    expect(thrustRatio * Math.sqrt(thrustRatio) * inducedRatio).toBeCloseTo(1, 12);
  });

  it("says from where on it knows nothing", () => {
    expect(groundEffect(0.49, 0)).toEqual({ kind: "too-low", lowestHeight: 0.5 });
    expect(groundEffect(Number.NaN, 0).kind).toBe("too-low");
  });

  it("reaches momentum theory as a factor on its κ, in hover and in the stream", () => {
    for (const flow of [
      { mu: 0, lambdaC: 0 },
      { mu: 0.03, lambdaC: 0.01 },
      { mu: 0.2, lambdaC: -0.02 },
    ]) {
      const condition = { ct: 0.006, kappa: 1.1, ...flow };
      const lambdaI = inducedInflow(condition);
      const kappa = factorNearGround(condition, lambdaI, 0.85);
      expect(inducedInflow({ ...condition, kappa })).toBeCloseTo(0.85 * lambdaI, 9);
    }
  });
});
