import type { NonlinearProgram } from "../../numerics/index.ts";

/**
 * The same program without some of its inequalities, which are broken as little as can be instead: its solution says how far the limits
 * would have to be moved, or that they need not be.
 *
 *     f = ½ Σ min(0, g)²   over the limits left out
 *
 * @param rows numbers among the inequalities
 * @derivation least violation of some constraints subject to all others
 */
export function withoutLimits(program: NonlinearProgram, rows: readonly number[]): NonlinearProgram {
  const { size, equalities } = program;
  const places = rows.map((row) => 1 + equalities + row);
  const own = new Float64Array(1 + equalities + program.inequalities);
  return {
    ...program,
    evaluate(x, values) {
      program.evaluate(x, values);
      values[0] = 0;
      for (const at of places) {
        values[0] += 0.5 * Math.min(0, values[at] as number) ** 2;
        values[at] = 1;
      }
    },
    differentiate(x, _, jacobian) {
      program.evaluate(x, own);
      program.differentiate(x, own, jacobian);
      jacobian.fill(0, 0, size);
      for (const at of places) {
        const broken = Math.min(0, own[at] as number);
        for (let i = 0; i < size; i++) {
          jacobian[i] = (jacobian[i] as number) + broken * (jacobian[at * size + i] as number);
          jacobian[at * size + i] = 0;
        }
      }
    },
  };
}

/** How much further an unknown may go beyond its bound when the bound is moved, in ranges. */
const furtherRanges = 3;

/**
 * The same program with one bound moved out, and the unknown that it held brought back to it as far as can be.
 *
 * @derivation least excess of one unknown subject to all constraints
 */
export function withoutBound(program: NonlinearProgram, index: number, side: "lower" | "upper"): NonlinearProgram {
  const { size } = program;
  const lower = Float64Array.from(program.lower);
  const upper = Float64Array.from(program.upper);
  const range = (upper[index] as number) - (lower[index] as number);
  if (side === "upper") {
    lower[index] = upper[index] as number;
    upper[index] = (upper[index] as number) + furtherRanges * range;
  } else {
    upper[index] = lower[index] as number;
    lower[index] = (lower[index] as number) - furtherRanges * range;
  }
  const sign = side === "upper" ? 1 : -1;
  const held = (side === "upper" ? lower : upper)[index] as number;
  const own = new Float64Array(1 + program.equalities + program.inequalities);
  return {
    ...program,
    lower,
    upper,
    evaluate(x, values) {
      program.evaluate(x, values);
      values[0] = sign * ((x[index] as number) - held);
    },
    differentiate(x, _, jacobian) {
      program.evaluate(x, own);
      program.differentiate(x, own, jacobian);
      jacobian.fill(0, 0, size);
      jacobian[index] = sign;
    },
  };
}
