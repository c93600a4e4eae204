/** Minimise f(x) subject to h(x) = 0, g(x) ≥ 0 and bounds; variables, constraints and objective scaled to the order of one. */
export interface NonlinearProgram {
  readonly size: number;
  readonly equalities: number;
  readonly inequalities: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Largest move of each variable in one iteration: keeps a start's answer near the start. @defaultValue none */
  readonly stepLimit?: Float64Array;
  /** Writes f, then h, then g. */
  evaluate(x: Float64Array, values: Float64Array): void;
  /** Writes the derivatives of every value, row-major (1 + equalities + inequalities)×size; `values` belong to `x`. */
  differentiate(x: Float64Array, values: Float64Array, jacobian: Float64Array): void;
}

/** A place with all its values and slopes. */
export interface ProgramState {
  readonly x: Float64Array;
  readonly values: Float64Array;
  readonly jacobian: Float64Array;
}

/** @derivation not a formula */
export function clipped(x: Float64Array, lower: Float64Array, upper: Float64Array): Float64Array {
  return x.map((value, i) => Math.min(upper[i] as number, Math.max(lower[i] as number, value)));
}

/** @derivation not a formula */
export function freshState(program: NonlinearProgram, x: Float64Array): ProgramState {
  const count = 1 + program.equalities + program.inequalities;
  const values = new Float64Array(count);
  const jacobian = new Float64Array(count * program.size);
  program.evaluate(x, values);
  program.differentiate(x, values, jacobian);
  return { x, values, jacobian };
}

/** Largest |h| or −g. */
export function violationOf(program: NonlinearProgram, values: Float64Array): number {
  let worst = 0;
  for (let r = 0; r < program.equalities + program.inequalities; r++) {
    const value = values[r + 1] as number;
    const broken = r < program.equalities ? Math.abs(value) : -value;
    if (Number.isNaN(broken)) return Number.POSITIVE_INFINITY;
    if (broken > worst) worst = broken;
  }
  return worst;
}

/** f and the price of every broken constraint. */
export function meritOf(program: NonlinearProgram, values: Float64Array, penalty: Float64Array): number {
  let merit = values[0] as number;
  for (let r = 0; r < program.equalities + program.inequalities; r++) {
    const value = values[r + 1] as number;
    merit += (penalty[r] as number) * (r < program.equalities ? Math.abs(value) : Math.max(0, -value));
  }
  return Number.isNaN(merit) ? Number.POSITIVE_INFINITY : merit;
}
