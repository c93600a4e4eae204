declare module "quadprog" {
  export interface QuadraticProgramResult {
    /** 1-based. */
    solution: number[];
    Lagrangian: number[];
    value: number[];
    iact: number[];
    message: string;
  }
  /** All arrays are 1-based; Amat is indexed [variable][constraint]; Aᵀx ≥ b, the first `meq` as equalities. */
  export function solveQP(
    Dmat: number[][],
    dvec: number[],
    Amat: number[][],
    bvec: number[],
    meq?: number,
  ): QuadraticProgramResult;
}
