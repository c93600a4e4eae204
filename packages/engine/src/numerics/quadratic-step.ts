/// <reference path="./quadprog.d.ts" />
import { solveQP } from "quadprog";
import { solveLinearInPlace } from "./dense-linear.ts";

/** Minimise ½ dᵀB d + gᵀd subject to J d + c = 0 (first `equalities` rows), J d + c ≥ 0 (the rest), low ≤ d ≤ high. */
export interface QuadraticProgram {
  readonly size: number;
  readonly equalities: number;
  readonly inequalities: number;
  /** Row-major size×size, positive definite. */
  readonly hessian: Float64Array;
  readonly gradient: Float64Array;
  /** Row-major (equalities+inequalities)×size. */
  readonly jacobian: Float64Array;
  readonly constraint: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export interface QuadraticStep {
  readonly step: Float64Array;
  /** One per constraint row; of either sign for equalities, ≥ 0 for inequalities. */
  readonly multipliers: Float64Array;
  /** Share of the linearised violation left standing, 0 when the constraints agree [1]. */
  readonly relaxation: number;
}

const relaxationCost = 1e4;

/** Solves the program; when its linear constraints contradict each other, violations are shrunk as far as they can be (Powell's relaxation). */
export function quadraticStep(program: QuadraticProgram): QuadraticStep | undefined {
  return attempt(program, false) ?? attempt(program, true);
}

function attempt(program: QuadraticProgram, relaxed: boolean): QuadraticStep | undefined {
  const { equalities, inequalities, gradient, jacobian, constraint, low, high } = program;
  // A variable that cannot move is left out: its two bounds would be one constraint written twice.
  const free = Array.from({ length: program.size }, (_, i) => i).filter((i) => (high[i] as number) - (low[i] as number) > 1e-12);
  const size = free.length;
  const variables = size + (relaxed ? 1 : 0);
  const rows = equalities + inequalities;
  const { hessian } = program;
  const scale = diagonalScale(hessian, program.size);
  const D: number[][] = [[]];
  const d: number[] = [0];
  for (let i = 0; i < size; i++) {
    const row = [0];
    const at = free[i] as number;
    for (const other of free) row.push((hessian[at * program.size + other] as number) / scale);
    if (relaxed) row.push(0);
    D.push(row);
    d.push(-(gradient[at] as number) / scale);
  }
  if (relaxed) {
    D.push([...new Array(size + 1).fill(0), relaxationCost]);
    d.push(0);
  }
  const A: number[][] = [[]];
  for (let i = 0; i < variables; i++) A.push([0]);
  const b: number[] = [0];
  const push = (column: (i: number) => number, bound: number) => {
    for (let i = 0; i < variables; i++) (A[i + 1] as number[]).push(column(i));
    b.push(bound);
  };
  for (let r = 0; r < rows; r++) {
    const c = constraint[r] as number;
    const shrinks = relaxed && (r < equalities || c < 0);
    push((i) => (i < size ? (jacobian[r * program.size + (free[i] as number)] as number) : shrinks ? -c : 0), -c);
  }
  for (let i = 0; i < size; i++) {
    push((k) => (k === i ? 1 : 0), low[free[i] as number] as number);
    push((k) => (k === i ? -1 : 0), -(high[free[i] as number] as number));
  }
  if (relaxed) {
    push((k) => (k === size ? 1 : 0), 0);
    push((k) => (k === size ? -1 : 0), -1);
  }
  const result = solveQP(D, d, A, b, equalities);
  if (result.message !== "") return undefined;
  const step = new Float64Array(program.size);
  free.forEach((at, i) => {
    step[at] = result.solution[i + 1] as number;
  });
  if (!step.every(Number.isFinite)) return undefined;
  const multipliers = new Float64Array(rows);
  for (let r = equalities; r < rows; r++) multipliers[r] = (result.Lagrangian[r + 1] ?? 0) * scale;
  const bounds = new Float64Array(program.size);
  free.forEach((at, i) => {
    const lower = result.Lagrangian[rows + 2 * i + 1] ?? 0;
    const upper = result.Lagrangian[rows + 2 * i + 2] ?? 0;
    bounds[at] = (lower - upper) * scale;
  });
  equalityMultipliers(program, free, step, multipliers, bounds);
  return { step, multipliers, relaxation: relaxed ? Math.min(1, Math.max(0, result.solution[size + 1] as number)) : 0 };
}

function diagonalScale(hessian: Float64Array, size: number): number {
  let largest = 1e-12;
  for (let i = 0; i < size; i++) largest = Math.max(largest, hessian[i * size + i] as number);
  return largest;
}

/** Least squares of B d + g = Jᵀ λ over the equality rows, the others being known: the library drops the sign of these. */
function equalityMultipliers(program: QuadraticProgram, free: readonly number[], step: Float64Array, multipliers: Float64Array, bounds: Float64Array): void {
  const { size, equalities, inequalities, hessian, gradient, jacobian } = program;
  if (equalities === 0) return;
  const residual = new Float64Array(size);
  for (const i of free) {
    let sum = (gradient[i] as number) - (bounds[i] as number);
    for (let j = 0; j < size; j++) sum += (hessian[i * size + j] as number) * (step[j] as number);
    for (let r = equalities; r < equalities + inequalities; r++) sum -= (multipliers[r] as number) * (jacobian[r * size + i] as number);
    residual[i] = sum;
  }
  const normal = new Float64Array(equalities * equalities);
  const right = new Float64Array(equalities);
  for (let r = 0; r < equalities; r++) {
    for (let s = 0; s < equalities; s++) {
      let sum = r === s ? 1e-12 : 0;
      for (const i of free) sum += (jacobian[r * size + i] as number) * (jacobian[s * size + i] as number);
      normal[r * equalities + s] = sum;
    }
    let sum = 0;
    for (const i of free) sum += (jacobian[r * size + i] as number) * (residual[i] as number);
    right[r] = sum;
  }
  if (solveLinearInPlace(normal, right, equalities)) multipliers.set(right.subarray(0, equalities), 0);
}
