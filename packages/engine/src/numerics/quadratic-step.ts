import { ElasticProgram } from "./elastic-program.kernel.ts";
import type { QuadraticProgram, QuadraticStep } from "./quadratic-program.ts";

/** A variable whose bounds are closer than this does not move. */
const immovable = 1e-12;

/**
 * Primal-dual interior point method with Mehrotra's corrector on the elastic program: it has a feasible point whatever the
 * constraints, so it cannot fail by contradiction. Undefined only when the linear algebra breaks down (not finite).
 *
 * @param leaveOutSlack inequalities that hold anywhere between the bounds are not looked at: the same answer for less
 * @source nocedal-wright-2006, ch. 16.6, interior point methods for convex quadratic programs, unchecked
 * @derivation elimination of slacks and elastic variables row by row
 */
export function quadraticStep(program: QuadraticProgram, leaveOutSlack = false): QuadraticStep | undefined {
  const free = Array.from({ length: program.size }, (_, i) => i).filter(
    (i) => (program.high[i] as number) - (program.low[i] as number) > immovable,
  );
  if (!leaveOutSlack) return new ElasticProgram(program, free).solve();
  const rows = rowsThatMayBind(program);
  const found = new ElasticProgram(withRows(program, rows), free).solve();
  if (found === undefined) return undefined;
  const multipliers = new Float64Array(program.equalities + program.inequalities);
  rows.forEach((row, k) => {
    multipliers[row] = found.multipliers[k] as number;
  });
  return { step: found.step, multipliers };
}

/** Every equality, and the inequalities that some step between the bounds could break. */
function rowsThatMayBind({ size, equalities, inequalities, jacobian, constraint, low, high }: QuadraticProgram): readonly number[] {
  const rows: number[] = [];
  for (let row = 0; row < equalities + inequalities; row++) {
    let least = constraint[row] as number;
    if (row >= equalities) {
      for (let i = 0, at = row * size; i < size; i++, at++) {
        const slope = jacobian[at] as number;
        if (slope !== 0) least += slope > 0 ? slope * (low[i] as number) : slope * (high[i] as number);
      }
    }
    if (row < equalities || !(least > 0)) rows.push(row);
  }
  return rows;
}

function withRows(program: QuadraticProgram, rows: readonly number[]): QuadraticProgram {
  const { size } = program;
  const jacobian = new Float64Array(rows.length * size);
  rows.forEach((row, k) => {
    jacobian.set(program.jacobian.subarray(row * size, (row + 1) * size), k * size);
  });
  return {
    ...program,
    inequalities: rows.length - program.equalities,
    jacobian,
    constraint: Float64Array.from(rows, (row) => program.constraint[row] as number),
  };
}
