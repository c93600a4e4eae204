import { quadraticStep } from "./quadratic-step.ts";

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

export interface SqpOptions {
  /** @defaultValue 80 */
  readonly maximumIterations?: number;
  /** Largest constraint violation of a solution. @defaultValue 1e-9 */
  readonly feasibilityTolerance?: number;
  /** Curvature of the Lagrangian from a neighbouring solution, row-major; positive definite. @defaultValue the unit matrix */
  readonly hessian?: Float64Array;
  /** Change of the merit function below which a feasible iterate is a solution. @defaultValue 1e-8 */
  readonly optimalityTolerance?: number;
}

export interface SqpResult {
  readonly kind: "converged" | "infeasible" | "not-converged";
  readonly x: Float64Array;
  readonly values: Float64Array;
  /** Largest |h| or −g. */
  readonly violation: number;
  /** One per equality, then per inequality. */
  readonly multipliers: Float64Array;
  readonly iterations: number;
  /** Curvature as built up on the way, a start for a neighbouring problem. */
  readonly hessian: Float64Array;
}

/** A violation above this that has not shrunk by a tenth over so many iterations is taken for a contradiction. */
const hopelessViolation = 1e-3;
const hopelessIterations = 22;
/** Far from feasible the contradiction shows sooner. */
const plainlyHopelessViolation = 0.1;
const plainlyHopelessIterations = 8;

interface State {
  readonly x: Float64Array;
  readonly values: Float64Array;
  readonly jacobian: Float64Array;
}

/**
 * Sequential quadratic programming with damped BFGS, an exact-penalty line search and elastic subproblems.
 *
 * @source nocedal-wright-2006, ch. 18, line-search SQP, unchecked
 * @source powell-1978, damped update, unchecked
 */
export function solveNonlinearProgram(program: NonlinearProgram, start: Float64Array, options: SqpOptions = {}): SqpResult {
  const maximumIterations = options.maximumIterations ?? 80;
  const feasible = options.feasibilityTolerance ?? 1e-9;
  const optimal = options.optimalityTolerance ?? 1e-8;
  const { size, equalities, inequalities, lower, upper } = program;
  const rows = equalities + inequalities;
  let state = freshState(program, clipped(start, lower, upper));
  let hessian = options.hessian ? Float64Array.from(options.hessian) : identity(size);
  const penalty = new Float64Array(rows);
  let multipliers = new Float64Array(rows);
  let stalled = 0;
  const recentMerit: number[] = [];
  let iteration = 0;
  let leastViolation = Number.POSITIVE_INFINITY;
  let leastAt = 0;
  for (; iteration < maximumIterations; iteration++) {
    const reach = (i: number) => program.stepLimit?.[i] ?? Number.POSITIVE_INFINITY;
    const low = lower.map((bound, i) => Math.max(bound - (state.x[i] as number), -reach(i)));
    const high = upper.map((bound, i) => Math.min(bound - (state.x[i] as number), reach(i)));
    const quadratic = quadraticStep({
      size,
      equalities,
      inequalities,
      hessian,
      gradient: state.jacobian.subarray(0, size),
      jacobian: state.jacobian.subarray(size),
      constraint: state.values.subarray(1),
      low,
      high,
    });
    if (quadratic === undefined) {
      if (stalled++ > 0) break;
      hessian = identity(size);
      continue;
    }
    multipliers = Float64Array.from(quadratic.multipliers);
    const violation = violationOf(program, state.values);
    if (violation < 0.9 * leastViolation) {
      leastViolation = violation;
      leastAt = iteration;
    }
    const patience = violation > plainlyHopelessViolation ? plainlyHopelessIterations : hopelessIterations;
    if (violation > hopelessViolation && iteration - leastAt > patience)
      return finished("infeasible", state, violation, multipliers, iteration, hessian);
    const slope = meritSlope(program, state, quadratic.step, penalty, multipliers);
    const length = largest(quadratic.step);
    if (violation < feasible && (length < 1e-9 || Math.abs(slope) < optimal))
      return finished("converged", state, violation, multipliers, iteration, hessian);
    if (violation > hopelessViolation && length < 1e-6) return finished("infeasible", state, violation, multipliers, iteration, hessian);
    const merit = meritOf(program, state.values, penalty);
    recentMerit.push(merit);
    if (recentMerit.length > 3) recentMerit.shift();
    const next = lineSearch(program, state, quadratic.step, penalty, Math.max(...recentMerit), slope);
    if (next === undefined) {
      if (violation < feasible * 100 && Math.abs(slope) < optimal * 1e3)
        return finished("converged", state, violation, multipliers, iteration, hessian);
      if (stalled++ > 1) break;
      hessian = identity(size);
      recentMerit.length = 0;
      continue;
    }
    updateHessian(program, hessian, state, next, multipliers);
    state = next;
  }
  const violation = violationOf(program, state.values);
  return finished(violation < feasible * 100 ? "converged" : "not-converged", state, violation, multipliers, iteration, hessian);
}

function finished(
  kind: SqpResult["kind"],
  state: State,
  violation: number,
  multipliers: Float64Array,
  iterations: number,
  hessian: Float64Array,
): SqpResult {
  return { kind, x: state.x, values: state.values, violation, multipliers, iterations, hessian };
}

function clipped(x: Float64Array, lower: Float64Array, upper: Float64Array): Float64Array {
  return x.map((value, i) => Math.min(upper[i] as number, Math.max(lower[i] as number, value)));
}

function freshState(program: NonlinearProgram, x: Float64Array): State {
  const count = 1 + program.equalities + program.inequalities;
  const values = new Float64Array(count);
  const jacobian = new Float64Array(count * program.size);
  program.evaluate(x, values);
  program.differentiate(x, values, jacobian);
  return { x, values, jacobian };
}

function identity(size: number): Float64Array {
  const matrix = new Float64Array(size * size);
  for (let i = 0; i < size; i++) matrix[i * size + i] = 1;
  return matrix;
}

function largest(vector: Float64Array): number {
  let size = 0;
  for (const value of vector) size = Math.max(size, Math.abs(value));
  return size;
}

function violationOf(program: NonlinearProgram, values: Float64Array): number {
  let worst = 0;
  for (let r = 0; r < program.equalities + program.inequalities; r++) {
    const value = values[r + 1] as number;
    const broken = r < program.equalities ? Math.abs(value) : -value;
    if (Number.isNaN(broken)) return Number.POSITIVE_INFINITY;
    if (broken > worst) worst = broken;
  }
  return worst;
}

function meritOf(program: NonlinearProgram, values: Float64Array, penalty: Float64Array): number {
  let merit = values[0] as number;
  for (let r = 0; r < program.equalities + program.inequalities; r++) {
    const value = values[r + 1] as number;
    merit += (penalty[r] as number) * (r < program.equalities ? Math.abs(value) : Math.max(0, -value));
  }
  return Number.isNaN(merit) ? Number.POSITIVE_INFINITY : merit;
}

/** Raises penalties to hold the multipliers and gives the change of the merit function along the whole step, to first order. */
function meritSlope(program: NonlinearProgram, state: State, step: Float64Array, penalty: Float64Array, multipliers: Float64Array): number {
  const { size, equalities, inequalities } = program;
  let slope = 0;
  for (let i = 0; i < size; i++) slope += (state.jacobian[i] as number) * (step[i] as number);
  for (let r = 0; r < equalities + inequalities; r++) {
    const multiplier = Math.abs(multipliers[r] as number);
    penalty[r] = Math.max(multiplier, ((penalty[r] as number) + multiplier) / 2);
    const now = state.values[r + 1] as number;
    let after = now;
    for (let i = 0; i < size; i++) after += (state.jacobian[(r + 1) * size + i] as number) * (step[i] as number);
    const broken = (value: number) => (r < equalities ? Math.abs(value) : Math.max(0, -value));
    slope += (penalty[r] as number) * (broken(after) - broken(now));
  }
  return slope;
}

function lineSearch(
  program: NonlinearProgram,
  state: State,
  step: Float64Array,
  penalty: Float64Array,
  reference: number,
  slope: number,
): State | undefined {
  let share = 1;
  for (let halving = 0; halving < 12; halving++) {
    const x = clipped(
      state.x.map((value, i) => value + share * (step[i] as number)),
      program.lower,
      program.upper,
    );
    const values = new Float64Array(state.values.length);
    program.evaluate(x, values);
    const merit = meritOf(program, values, penalty);
    if (merit <= reference + 1e-4 * share * Math.min(0, slope) + 1e-13 * Math.abs(reference)) {
      const jacobian = new Float64Array(state.jacobian.length);
      program.differentiate(x, values, jacobian);
      return { x, values, jacobian };
    }
    share *= halving < 3 ? 0.5 : 0.3;
  }
  return undefined;
}

function updateHessian(program: NonlinearProgram, hessian: Float64Array, from: State, to: State, multipliers: Float64Array): void {
  const { size } = program;
  const s = new Float64Array(size);
  const y = new Float64Array(size);
  const rows = program.equalities + program.inequalities;
  for (let i = 0; i < size; i++) {
    s[i] = (to.x[i] as number) - (from.x[i] as number);
    let change = (to.jacobian[i] as number) - (from.jacobian[i] as number);
    for (let r = 0; r < rows; r++) {
      const at = (r + 1) * size + i;
      change -= (multipliers[r] as number) * ((to.jacobian[at] as number) - (from.jacobian[at] as number));
    }
    y[i] = change;
  }
  const Bs = new Float64Array(size);
  let sBs = 0;
  let sy = 0;
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let j = 0; j < size; j++) sum += (hessian[i * size + j] as number) * (s[j] as number);
    Bs[i] = sum;
    sBs += sum * (s[i] as number);
    sy += (s[i] as number) * (y[i] as number);
  }
  if (!(sBs > 1e-20)) return;
  const damping = sy >= 0.2 * sBs ? 1 : (0.8 * sBs) / (sBs - sy);
  let sr = 0;
  const r = y.map((value, i) => damping * value + (1 - damping) * (Bs[i] as number));
  for (let i = 0; i < size; i++) sr += (s[i] as number) * (r[i] as number);
  if (!(sr > 1e-20)) return;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      hessian[i * size + j] =
        (hessian[i * size + j] as number) - ((Bs[i] as number) * (Bs[j] as number)) / sBs + ((r[i] as number) * (r[j] as number)) / sr;
}
