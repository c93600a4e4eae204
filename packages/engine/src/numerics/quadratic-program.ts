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
