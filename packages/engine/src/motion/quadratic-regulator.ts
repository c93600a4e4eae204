import { Matrix, solve } from "ml-matrix";

/** A linear motion x' = A x + B u with what deviations cost. */
export interface RegulatorProblem {
  /** Row-major, states by states. */
  readonly matrix: Float64Array;
  /** Row-major, states by controls. */
  readonly controls: Float64Array;
  /** Deviation of every state that counts as one; infinite where it does not matter. */
  readonly stateScale: readonly number[];
  /** Deflection of every control that counts as one; 0 for a control that stays where it is. */
  readonly controlScale: readonly number[];
  /** Time between two actions [s]. */
  readonly step: number;
}

const mostDoublings = 40;
const settled = 1e-10;

/**
 * Gain K (row-major, controls by states) of the feedback u = −K x that makes the sum of (x/scale)² + (u/scale)² over all steps least, controls
 * held between steps; undefined where no feedback keeps the motion bounded or the iteration does not settle.
 *
 *     A₊ = A (I + G H)⁻¹ A      G₊ = G + A (I + G H)⁻¹ G Aᵀ      H₊ = H + Aᵀ H (I + G H)⁻¹ A
 *
 * from A = Φ, G = Γ R⁻¹ Γᵀ, H = Q; H tends to the solution of the discrete Riccati equation.
 *
 * @source anderson-1978, doubling for the discrete Riccati equation, from memory
 */
export function quadraticRegulator(problem: RegulatorProblem): Float64Array | undefined {
  const n = problem.stateScale.length;
  const used = problem.controlScale.flatMap((scale, i) => (scale > 0 ? [i] : []));
  const gain = new Float64Array(problem.controlScale.length * n);
  if (used.length === 0) return gain;
  const { phi, gamma } = discretised(problem, n, used);
  const weight = Matrix.diag(problem.stateScale.map((scale) => 1 / scale ** 2));
  const cost = Matrix.diag(used.map((i) => 1 / (problem.controlScale[i] as number) ** 2));
  const solution = riccati(phi, gamma, weight, cost);
  if (!solution) return undefined;
  const turned = gamma.transpose().mmul(solution);
  const small = solve(Matrix.add(cost, turned.mmul(gamma)), turned.mmul(phi));
  used.forEach((control, row) => {
    for (let j = 0; j < n; j++) gain[control * n + j] = small.get(row, j);
  });
  return gain.every(Number.isFinite) ? gain : undefined;
}

function riccati(phi: Matrix, gamma: Matrix, weight: Matrix, cost: Matrix): Matrix | undefined {
  let a = phi;
  let g = gamma.mmul(solve(cost, gamma.transpose()));
  let h = weight;
  for (let k = 0; k < mostDoublings; k++) {
    const inner = Matrix.add(Matrix.eye(h.rows), g.mmul(h));
    const passedA = solve(inner, a);
    const passedG = solve(inner, g);
    const gain = a.transpose().mmul(h).mmul(passedA);
    const next = Matrix.add(h, gain);
    g = Matrix.add(g, a.mmul(passedG).mmul(a.transpose()));
    a = a.mmul(passedA);
    h = Matrix.add(next, next.transpose()).mul(0.5);
    const size = h.norm();
    if (!Number.isFinite(size)) return undefined;
    if (gain.norm() <= settled * size) return h;
  }
  return undefined;
}

/** Motion from one action to the next, controls held: the series of the matrix exponential with halving. */
function discretised(problem: RegulatorProblem, n: number, used: readonly number[]): { readonly phi: Matrix; readonly gamma: Matrix } {
  const size = n + used.length;
  const count = problem.controlScale.length;
  const block = new Matrix(size, size);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) block.set(i, j, (problem.matrix[i * n + j] as number) * problem.step);
    used.forEach((control, k) => {
      block.set(i, n + k, (problem.controls[i * count + control] as number) * problem.step);
    });
  }
  const halvings = Math.max(0, Math.ceil(Math.log2(Math.max(block.norm(), 1e-12))) + 2);
  const small = Matrix.mul(block, 2 ** -halvings);
  let sum: Matrix = Matrix.eye(size);
  let term: Matrix = Matrix.eye(size);
  for (let k = 1; k <= 10; k++) {
    term = term.mmul(small).mul(1 / k);
    sum = Matrix.add(sum, term);
  }
  for (let k = 0; k < halvings; k++) sum = sum.mmul(sum);
  return { phi: sum.subMatrix(0, n - 1, 0, n - 1), gamma: sum.subMatrix(0, n - 1, n, size - 1) };
}
