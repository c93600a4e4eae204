import { ElasticProgram } from "./elastic-program.kernel.ts";

/**
 * Minimise ½ dᵀB d + gᵀd + ρ (Σ |J d + c| over equalities + Σ max(0, −(J d + c)) over inequalities), low ≤ d ≤ high.
 * Constraints that agree are met exactly; those that contradict each other are broken as little as can be.
 */
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
  /** Not above 0. */
  readonly low: Float64Array;
  /** Not below 0. */
  readonly high: Float64Array;
}

export interface QuadraticStep {
  readonly step: Float64Array;
  /** One per constraint row; of either sign for equalities, ≥ 0 for inequalities. */
  readonly multipliers: Float64Array;
}

/** A variable whose bounds are closer than this does not move. */
const immovable = 1e-12;

/**
 * Primal-dual interior point method with Mehrotra's corrector on the elastic program: it has a feasible point whatever the
 * constraints, so it cannot fail by contradiction. Undefined only when the linear algebra breaks down (not finite).
 *
 * @source nocedal-wright-2006, ch. 16.6, interior point methods for convex quadratic programs, unchecked
 * @derivation elimination of slacks and elastic variables row by row
 */
export function quadraticStep(program: QuadraticProgram): QuadraticStep | undefined {
  const free = Array.from({ length: program.size }, (_, i) => i).filter((i) => (program.high[i] as number) - (program.low[i] as number) > immovable);
  const solver = new ElasticProgram(program, free);
  return solver.solve();
}
