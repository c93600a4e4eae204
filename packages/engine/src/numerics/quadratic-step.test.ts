import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { QuadraticProgram } from "./quadratic-program.ts";
import { quadraticStep } from "./quadratic-step.ts";

const size = 6;
const equalities = 3;
const inequalities = 7;
const number = fc.double({ min: -1, max: 1, noNaN: true });
const vector = (length: number) => fc.array(number, { minLength: length, maxLength: length }).map((values) => Float64Array.from(values));

/** A program with a known feasible point well inside its bounds. */
const feasible = fc
  .tuple(vector(size * size), vector(size), vector((equalities + inequalities) * size), vector(size), vector(inequalities))
  .map(([root, gradient, jacobian, point, slack]): QuadraticProgram => {
    const hessian = new Float64Array(size * size);
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j++) {
        let sum = i === j ? 0.1 : 0;
        for (let k = 0; k < size; k++) sum += (root[k * size + i] as number) * (root[k * size + j] as number);
        hessian[i * size + j] = sum;
      }
    const constraint = new Float64Array(equalities + inequalities);
    for (let r = 0; r < constraint.length; r++) {
      let sum = 0;
      for (let k = 0; k < size; k++) sum += (jacobian[r * size + k] as number) * (point[k] as number);
      constraint[r] = -sum + (r < equalities ? 0 : Math.max(0, slack[r - equalities] as number));
    }
    return {
      size,
      equalities,
      inequalities,
      hessian,
      gradient,
      jacobian,
      constraint,
      low: new Float64Array(size).fill(-3),
      high: new Float64Array(size).fill(3),
    };
  });

function row(program: QuadraticProgram, r: number, step: Float64Array): number {
  let sum = program.constraint[r] as number;
  for (let k = 0; k < program.size; k++) sum += (program.jacobian[r * program.size + k] as number) * (step[k] as number);
  return sum;
}

describe("elastic quadratic program", () => {
  it("meets constraints that agree, with complementary multipliers", () => {
    fc.assert(
      fc.property(feasible, (program) => {
        const found = quadraticStep(program);
        if (found === undefined) throw new Error("no step");
        // A multiplier at the price of breaking means the constraints only nearly agree: nothing to hold there.
        fc.pre(Math.max(...found.multipliers.map(Math.abs)) < 900);
        for (let r = 0; r < equalities; r++) expect(Math.abs(row(program, r, found.step))).toBeLessThan(1e-6);
        for (let r = equalities; r < equalities + inequalities; r++) {
          const value = row(program, r, found.step);
          expect(value).toBeGreaterThan(-1e-6);
          expect(Math.abs(value * (found.multipliers[r] as number))).toBeLessThan(1e-5);
        }
      }),
      { numRuns: 300, seed: 11 },
    );
  });

  it("shares out what two contradicting constraints ask for", () => {
    const found = quadraticStep({
      size: 1,
      equalities: 0,
      inequalities: 2,
      hessian: Float64Array.of(1),
      gradient: Float64Array.of(0),
      jacobian: Float64Array.of(1, -1),
      constraint: Float64Array.of(-2, 1),
      low: Float64Array.of(-10),
      high: Float64Array.of(10),
    });
    expect(found?.step[0]).toBeGreaterThan(1 - 1e-6);
    expect(found?.step[0]).toBeLessThan(2 + 1e-6);
  });

  it("leaves a variable alone whose bounds coincide", () => {
    const found = quadraticStep({
      size: 2,
      equalities: 0,
      inequalities: 0,
      hessian: Float64Array.of(1, 0, 0, 1),
      gradient: Float64Array.of(-1, -1),
      jacobian: new Float64Array(0),
      constraint: new Float64Array(0),
      low: Float64Array.of(0, -5),
      high: Float64Array.of(0, 5),
    });
    expect(found?.step[0]).toBe(0);
    expect(found?.step[1]).toBeCloseTo(1, 8);
  });
});
