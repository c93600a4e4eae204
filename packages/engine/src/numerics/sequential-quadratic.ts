import { dampedUpdate } from "./damped-update.ts";
import { clipped, freshState, meritOf, type NonlinearProgram, type ProgramState, violationOf } from "./nonlinear-program.ts";
import { quadraticStep } from "./quadratic-step.ts";

export interface SqpOptions {
  /** @defaultValue 80 */
  readonly maximumIterations?: number;
  /** Largest constraint violation of a solution. @defaultValue 1e-9 */
  readonly feasibilityTolerance?: number;
  /** Curvature of the Lagrangian from a neighbouring solution, row-major; positive definite. @defaultValue `firstCurvature` in every direction */
  readonly hessian?: Float64Array;
  /** What the curvature is taken for while nothing is known: small for programs that are nearly linear. @defaultValue 1 */
  readonly firstCurvature?: number;
  /** Change of the merit function below which a feasible iterate is a solution. @defaultValue 1e-8 */
  readonly optimalityTolerance?: number;
  /** Least price of breaking a constraint in the merit function: one that costs next to nothing must be met all the same. @defaultValue 0 */
  readonly leastPrice?: number;
  /** Leaves constraints out of a subproblem that cannot bind within its step: the same step for less. @defaultValue false */
  readonly leaveOutSlack?: boolean;
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
/** Merits remembered: a step need not better the last one. */
const memory = 3;

/** Solves a program in one go. */
export function solveNonlinearProgram(program: NonlinearProgram, start: Float64Array, options: SqpOptions = {}): SqpResult {
  const search = new SequentialQuadratic(program, start, options);
  return search.advance(options.maximumIterations ?? 80) ?? search.result();
}

/**
 * Sequential quadratic programming with damped BFGS, an exact-penalty line search and elastic subproblems; can be interrupted.
 *
 * @source nocedal-wright-2006, ch. 18, line-search SQP, unchecked
 */
export class SequentialQuadratic {
  readonly program: NonlinearProgram;
  readonly #options: SqpOptions;
  readonly #feasible: number;
  readonly #optimal: number;
  readonly #penalty: Float64Array;
  #state: ProgramState;
  #hessian: Float64Array;
  #multipliers: Float64Array;
  #stalled = 0;
  #recentMerit: number[] = [];
  #iteration = 0;
  #leastViolation = Number.POSITIVE_INFINITY;
  #leastAt = 0;
  #ended: SqpResult | undefined;

  constructor(program: NonlinearProgram, start: Float64Array, options: SqpOptions = {}) {
    this.program = program;
    this.#options = options;
    this.#feasible = options.feasibilityTolerance ?? 1e-9;
    this.#optimal = options.optimalityTolerance ?? 1e-8;
    const rows = program.equalities + program.inequalities;
    this.#penalty = new Float64Array(rows);
    this.#multipliers = new Float64Array(rows);
    this.#state = freshState(program, clipped(start, program.lower, program.upper));
    this.#hessian = options.hessian ? Float64Array.from(options.hessian) : this.#unknownCurvature();
  }

  get objective(): number {
    return this.#state.values[0] as number;
  }

  get violation(): number {
    return violationOf(this.program, this.#state.values);
  }

  get x(): Float64Array {
    return this.#state.x;
  }

  /** So many more iterations; the end if they reach it. */
  advance(iterations: number): SqpResult | undefined {
    const last = this.#iteration + iterations;
    while (this.#ended === undefined && this.#iteration < last) {
      this.#ended = this.#iterate();
      if (this.#ended === undefined) this.#iteration += 1;
    }
    return this.#ended;
  }

  /** Where the search stands. */
  result(): SqpResult {
    return this.#ended ?? this.#finished(this.violation < this.#feasible * 100 ? "converged" : "not-converged");
  }

  #iterate(): SqpResult | undefined {
    const state = this.#state;
    const quadratic = this.#subproblem();
    if (quadratic === undefined) return this.#startOver();
    this.#multipliers = Float64Array.from(quadratic.multipliers);
    const { violation } = this;
    if (violation < 0.9 * this.#leastViolation) {
      this.#leastViolation = violation;
      this.#leastAt = this.#iteration;
    }
    const patience = violation > plainlyHopelessViolation ? plainlyHopelessIterations : hopelessIterations;
    if (violation > hopelessViolation && this.#iteration - this.#leastAt > patience) return this.#finished("infeasible");
    const slope = this.#meritSlope(quadratic.step);
    const length = largest(quadratic.step);
    if (violation < this.#feasible && (length < 1e-9 || Math.abs(slope) < this.#optimal)) return this.#finished("converged");
    if (violation > hopelessViolation && length < 1e-6) return this.#finished("infeasible");
    this.#recentMerit.push(meritOf(this.program, state.values, this.#penalty));
    if (this.#recentMerit.length > memory) this.#recentMerit.shift();
    const next = this.#lineSearch(quadratic.step, Math.max(...this.#recentMerit), slope);
    if (next === undefined) {
      if (violation < this.#feasible * 100 && Math.abs(slope) < this.#optimal * 1e3) return this.#finished("converged");
      this.#recentMerit.length = 0;
      return this.#startOver(1);
    }
    dampedUpdate(this.program, this.#hessian, state, next, this.#multipliers);
    this.#state = next;
    return undefined;
  }

  #subproblem() {
    const { size, equalities, inequalities, lower, upper, stepLimit } = this.program;
    const { x, values, jacobian } = this.#state;
    const reach = (i: number) => stepLimit?.[i] ?? Number.POSITIVE_INFINITY;
    return quadraticStep(
      {
        size,
        equalities,
        inequalities,
        hessian: this.#hessian,
        gradient: jacobian.subarray(0, size),
        jacobian: jacobian.subarray(size),
        constraint: values.subarray(1),
        low: lower.map((bound, i) => Math.max(bound - (x[i] as number), -reach(i))),
        high: upper.map((bound, i) => Math.min(bound - (x[i] as number), reach(i))),
      },
      this.#options.leaveOutSlack ?? false,
    );
  }

  /** Forgets the curvature; after the second time, or one more where granted, there is no point in going on. */
  #startOver(granted = 0): SqpResult | undefined {
    if (this.#stalled++ > granted) return this.#finished(this.violation < this.#feasible * 100 ? "converged" : "not-converged");
    this.#hessian = this.#unknownCurvature();
    return undefined;
  }

  #unknownCurvature(): Float64Array {
    const { size } = this.program;
    const matrix = new Float64Array(size * size);
    for (let i = 0; i < size; i++) matrix[i * size + i] = this.#options.firstCurvature ?? 1;
    return matrix;
  }

  #finished(kind: SqpResult["kind"]): SqpResult {
    const { x, values } = this.#state;
    return {
      kind,
      x,
      values,
      violation: this.violation,
      multipliers: this.#multipliers,
      iterations: this.#iteration,
      hessian: this.#hessian,
    };
  }

  /** Raises penalties to hold the multipliers and gives the change of the merit function along the whole step, to first order. */
  #meritSlope(step: Float64Array): number {
    const { size, equalities, inequalities } = this.program;
    const { values, jacobian } = this.#state;
    const penalty = this.#penalty;
    const least = this.#options.leastPrice ?? 0;
    let slope = 0;
    for (let i = 0; i < size; i++) slope += (jacobian[i] as number) * (step[i] as number);
    for (let r = 0; r < equalities + inequalities; r++) {
      const multiplier = Math.abs(this.#multipliers[r] as number);
      penalty[r] = Math.max(least, multiplier, ((penalty[r] as number) + multiplier) / 2);
      const now = values[r + 1] as number;
      let after = now;
      for (let i = 0; i < size; i++) after += (jacobian[(r + 1) * size + i] as number) * (step[i] as number);
      const broken = (value: number) => (r < equalities ? Math.abs(value) : Math.max(0, -value));
      slope += (penalty[r] as number) * (broken(after) - broken(now));
    }
    return slope;
  }

  #lineSearch(step: Float64Array, reference: number, slope: number): ProgramState | undefined {
    const { program } = this;
    const state = this.#state;
    let share = 1;
    for (let halving = 0; halving < 12; halving++) {
      const x = clipped(
        state.x.map((value, i) => value + share * (step[i] as number)),
        program.lower,
        program.upper,
      );
      const values = new Float64Array(state.values.length);
      program.evaluate(x, values);
      const merit = meritOf(program, values, this.#penalty);
      if (merit <= reference + 1e-4 * share * Math.min(0, slope) + 1e-13 * Math.abs(reference)) {
        const jacobian = new Float64Array(state.jacobian.length);
        program.differentiate(x, values, jacobian);
        return { x, values, jacobian };
      }
      share *= halving < 3 ? 0.5 : 0.3;
    }
    return undefined;
  }
}

function largest(vector: Float64Array): number {
  let size = 0;
  for (const value of vector) size = Math.max(size, Math.abs(value));
  return size;
}
