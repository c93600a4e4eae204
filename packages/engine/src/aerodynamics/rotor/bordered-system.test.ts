import { describe, expect, it } from "vitest";
import { type BorderedSystem, measuredSlopes, solveBorderedSystem } from "./bordered-system.ts";

/** Three members, each y² + s y = member + s t and loads y and y³, in the sums Σ y = 2.94 + s/5 and Σ y³ = 4.4 − t. */
function curved(largestEvaluationCount: number): BorderedSystem & { readonly evaluations: () => number } {
  let evaluations = 0;
  return {
    sharedCount: 2,
    memberCount: 3,
    ownCount: 1,
    loadCount: 2,
    evaluate([s = 0, t = 0], own, answers, balances) {
      evaluations += 1;
      balances[0] = -2.94 - s / 5;
      balances[1] = t - 4.4;
      for (const [member, y] of own.entries()) {
        answers.set([y * y + s * y - (member + 1) - s * t, y, y ** 3], member * 3);
        balances[0] += y;
        balances[1] += y ** 3;
      }
    },
    sharedSlopes: Float64Array.of(-0.2, 0, 0, 1),
    loadSlopes: Float64Array.of(1, 0, 0, 1, 1, 0, 0, 1, 1, 0, 0, 1),
    largestSteps: [0.5, 0.5],
    tolerance: 1e-11,
    largestEvaluationCount,
    evaluations: () => evaluations,
  };
}

const near = { shared: Float64Array.of(1.2, 0.2), own: Float64Array.of(0.7, 1, 1.4) };

describe("members that share a few unknowns", () => {
  it("end where every balance is met, with one evaluation a step", () => {
    const system = curved(40);
    const slopes = measuredSlopes(system, near.shared, near.own);
    const before = system.evaluations();
    const ended = solveBorderedSystem(system, { ...near, slopes });
    if (!ended) throw new Error("not solved");
    expect(system.evaluations() - before).toBeLessThanOrEqual(15);
    const [s = 0, t = 0] = ended.shared;
    for (const [member, y] of ended.own.entries()) expect(y * y + s * y).toBeCloseTo(member + 1 + s * t, 9);
    const sum = (power: number): number => ended.own.reduce((total, y) => total + y ** power, 0);
    expect(sum(1)).toBeCloseTo(2.94 + s / 5, 9);
    expect(sum(3)).toBeCloseTo(4.4 - t, 9);
  });

  it("have slopes like those of the formulas", () => {
    const slopes = measuredSlopes(curved(40), near.shared, near.own);
    // The second member, y = 1 at s = 1.2, t = 0.2: its balance over s, t and y, then its loads.
    const expected = [1 - 0.2, -1.2, 2 + 1.2, 0, 0, 1, 0, 0, 3];
    for (const [i, slope] of expected.entries()) expect(slopes[9 + i]).toBeCloseTo(slope, 4);
  });

  it("have no answer where evaluations end before the balances do, or slopes are singular, or an answer is not a number", () => {
    const slopes = measuredSlopes(curved(40), near.shared, near.own);
    expect(solveBorderedSystem(curved(3), { ...near, slopes })).toBeUndefined();
    expect(solveBorderedSystem(curved(40), { ...near, slopes: new Float64Array(slopes.length) })).toBeUndefined();
    expect(solveBorderedSystem(curved(40), { ...near, own: Float64Array.of(0.7, Number.NaN, 1.4), slopes })).toBeUndefined();
  });

  it("leave the place they start from as it was", () => {
    const start = { ...near, slopes: measuredSlopes(curved(40), near.shared, near.own) };
    const copy = { shared: start.shared.slice(), own: start.own.slice(), slopes: start.slopes.slice() };
    solveBorderedSystem(curved(40), start);
    expect(start).toEqual(copy);
  });
});
