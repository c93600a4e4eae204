import { describe, expect, it } from "vitest";
import { type NonlinearProgram, SequentialQuadratic, solveNonlinearProgram } from "./index.ts";

function program(
  size: number,
  equalities: number,
  inequalities: number,
  values: (x: Float64Array) => number[],
  lower = -1e3,
  upper = 1e3,
): NonlinearProgram {
  const evaluate = (x: Float64Array, out: Float64Array) => out.set(values(x));
  return {
    size,
    equalities,
    inequalities,
    lower: new Float64Array(size).fill(lower),
    upper: new Float64Array(size).fill(upper),
    evaluate,
    differentiate(x, base, jacobian) {
      const moved = new Float64Array(base.length);
      for (let i = 0; i < size; i++) {
        const at = Float64Array.from(x);
        at[i] = (at[i] as number) + 1e-6;
        evaluate(at, moved);
        for (let r = 0; r < base.length; r++) jacobian[r * size + i] = ((moved[r] as number) - (base[r] as number)) / 1e-6;
      }
    },
  };
}

describe("sequential quadratic programming", () => {
  it("finds the published optimum of Hock and Schittkowski problem 71", () => {
    const hs71 = program(
      4,
      1,
      1,
      (x) => {
        const [a, b, c, d] = x as unknown as [number, number, number, number];
        return [a * d * (a + b + c) + c, a * a + b * b + c * c + d * d - 40, a * b * c * d - 25];
      },
      1,
      5,
    );
    const found = solveNonlinearProgram(hs71, Float64Array.of(1, 5, 5, 1));
    expect(found.kind).toBe("converged");
    expect(found.values[0]).toBeCloseTo(17.0140173, 5);
  });

  it("reaches the bottom of Rosenbrock's valley inside a disc", () => {
    const found = solveNonlinearProgram(
      program(2, 0, 1, ([a = 0, b = 0]) => [100 * (b - a * a) ** 2 + (1 - a) ** 2, 2 - a * a - b * b]),
      Float64Array.of(-1.2, 1),
    );
    expect(found.x[0]).toBeCloseTo(1, 3);
    expect(found.x[1]).toBeCloseTo(1, 3);
  });

  it("says infeasible when constraints contradict each other", () => {
    const found = solveNonlinearProgram(
      program(1, 0, 2, ([a = 0]) => [a * a, a - 2, 1 - a]),
      Float64Array.of(0),
    );
    expect(found.kind).not.toBe("converged");
    expect(found.violation).toBeGreaterThan(0.4);
  });
});

describe("a search that is interrupted", () => {
  const wells: NonlinearProgram = {
    size: 3,
    equalities: 1,
    inequalities: 3,
    lower: Float64Array.of(-4, -4, -4),
    upper: Float64Array.of(4, 4, 4),
    evaluate([x, y, z], values) {
      const [a, b, c] = [x as number, y as number, z as number];
      values.set([(a - 1) ** 4 + (b * a - 2) ** 2 + Math.exp(c / 2), a + b + c - 2, 9 - a * a - b * b, 50 - c, a + 30]);
    },
    differentiate([x, y, z], _, jacobian) {
      const [a, b, c] = [x as number, y as number, z as number];
      jacobian.set([
        ...[4 * (a - 1) ** 3 + 2 * b * (b * a - 2), 2 * a * (b * a - 2), Math.exp(c / 2) / 2],
        ...[1, 1, 1, -2 * a, -2 * b, 0, 0, 0, -1, 1, 0, 0],
      ]);
    },
  };
  const start = Float64Array.of(-1, 3, 0.5);

  it("takes the same way as one that is not", () => {
    const straight = solveNonlinearProgram(wells, start);
    const search = new SequentialQuadratic(wells, start);
    let ended = search.advance(1);
    while (ended === undefined) ended = search.advance(1);
    expect(straight.kind).toBe("converged");
    expect(ended.iterations).toBe(straight.iterations);
    expect([...ended.x]).toEqual([...straight.x]);
  });

  it("finds the same place from small curvature, without its slack constraints, and with a price on every one", () => {
    const straight = solveNonlinearProgram(wells, start);
    const other = solveNonlinearProgram(wells, start, { firstCurvature: 0.01, leaveOutSlack: true, leastPrice: 0.1 });
    expect(other.kind).toBe("converged");
    other.x.forEach((value, i) => {
      expect(value).toBeCloseTo(straight.x[i] as number, 4);
    });
    expect(other.multipliers[2]).toBe(0);
  });
});
