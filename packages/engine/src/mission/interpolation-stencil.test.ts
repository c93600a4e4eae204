import { describe, expect, it } from "vitest";
import { stencilAt } from "./interpolation-stencil.ts";

const value = (nodes: readonly number[], curve: (x: number) => number, at: number) => {
  const stencil = stencilAt(nodes, at);
  return stencil.weights.reduce((sum, weight, index) => sum + weight * curve(nodes[stencil.first + index] as number), 0);
};

describe("interpolation stencil", () => {
  const nodes = [-2, -1, 0, 1.5, 3];

  it("gives the node's own value on a node, nothing else", () => {
    expect(stencilAt(nodes, 1.5)).toMatchObject({ first: 3, weights: [1] });
    expect(stencilAt(nodes, -2)).toMatchObject({ first: 0, weights: [1] });
    expect(stencilAt(nodes, 3)).toMatchObject({ first: 4, weights: [1] });
  });

  it("is exact for parabolas, also on uneven nodes and slightly beyond the ends", () => {
    const parabola = (x: number) => 3 - 2 * x + 0.7 * x * x;
    for (const at of [-2.05, -1.7, -0.3, 0.2, 1.49, 2.2, 3.1]) expect(value(nodes, parabola, at)).toBeCloseTo(parabola(at), 12);
  });

  it("has no corner at a node", () => {
    const curve = (x: number) => Math.exp(0.4 * x);
    const h = 1e-6;
    const before = (value(nodes, curve, 0 - 1e-7) - value(nodes, curve, 0 - 1e-7 - h)) / h;
    const after = (value(nodes, curve, 0 + 1e-7 + h) - value(nodes, curve, 0 + 1e-7)) / h;
    expect(after).toBeCloseTo(before, 4);
  });

  it("is of third order: halving the spacing divides the error by about eight", () => {
    const curve = (x: number) => Math.sin(x);
    const worst = (count: number) => {
      const even = Array.from({ length: count + 1 }, (_, index) => (3 * index) / count);
      return Math.max(...Array.from({ length: 100 }, (_, k) => Math.abs(value(even, curve, 0.03 * k) - curve(0.03 * k))));
    };
    const ratio = worst(12) / worst(24);
    expect(ratio).toBeGreaterThan(7);
    expect(ratio).toBeLessThan(9.5);
  });

  it("works with two nodes and with one", () => {
    expect(value([0, 10], (x) => 2 * x, 4)).toBeCloseTo(8, 12);
    expect(value([5], (x) => x, 99)).toBe(5);
  });

  it("refuses to extrapolate", () => {
    expect(() => stencilAt(nodes, 3.5)).toThrow(RangeError);
    expect(() => stencilAt(nodes, Number.NaN)).toThrow(RangeError);
  });
});
