import { describe, expect, it } from "vitest";
import { type NonlinearProgram, solveNonlinearProgram } from "../../numerics/index.ts";
import { withoutBound, withoutLimits } from "./relaxed-program.ts";

/** Least x + y with x² + y² ≤ 1, x ≥ 0.9, y ≥ `floor` in a box of 2: beyond y = √0.19 there is no such place. */
const quarter = (floor: number): NonlinearProgram => ({
  size: 2,
  equalities: 0,
  inequalities: 3,
  lower: Float64Array.of(0, 0),
  upper: Float64Array.of(2, 2),
  evaluate([x, y], values) {
    const [a, b] = [x as number, y as number];
    values.set([a + b, 1 - a * a - b * b, a - 0.9, b - floor]);
  },
  differentiate([x, y], _, jacobian) {
    jacobian.set([1, 1, -2 * (x as number), -2 * (y as number), 1, 0, 0, 1]);
  },
});

const start = Float64Array.of(1, 0.5);

describe("a program without one of its limits", () => {
  it("says how far the limit would have to be moved where the others leave no place", () => {
    const program = quarter(0.6);
    expect(solveNonlinearProgram(program, start).kind).not.toBe("converged");
    const result = solveNonlinearProgram(withoutLimits(program, [2]), start);
    expect(result.kind).toBe("converged");
    // The highest place of the disc right of 0.9.
    expect(result.x[1]).toBeCloseTo(Math.sqrt(0.19), 4);
  });

  it("ends within the limit where there is a place", () => {
    const result = solveNonlinearProgram(withoutLimits(quarter(0.3), [2]), start);
    expect(result.kind).toBe("converged");
    expect(result.values[0]).toBeLessThan(1e-12);
    expect(result.x[1]).toBeGreaterThan(0.3 - 1e-5);
  });

  it("moves a bound no further than it must", () => {
    const bounded: NonlinearProgram = { ...quarter(0.1), upper: Float64Array.of(0.5, 2) };
    const result = solveNonlinearProgram(withoutBound(bounded, 0, "upper"), Float64Array.of(0.5, 0.1));
    expect(result.kind).toBe("converged");
    expect(result.x[0]).toBeCloseTo(0.9, 6);
  });
});
