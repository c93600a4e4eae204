import { solveLinearInPlace } from "../../numerics/index.ts";

/** A few equations in as many unknowns, with a good guess of their slopes. */
export interface SmallSystem {
  readonly size: number;
  residuals(unknowns: Float64Array, residuals: Float64Array): void;
  readonly start: Float64Array;
  /** Row by row. */
  readonly jacobian: Float64Array;
  /** Largest change of each unknown in one step; a longer step is shortened as a whole. */
  readonly largestSteps: readonly number[];
  readonly tolerance: number;
  readonly largestEvaluationCount: number;
}

export interface SmallSystemEnd {
  readonly converged: boolean;
  readonly unknowns: Float64Array;
  /** Largest residual. */
  readonly residual: number;
  readonly evaluations: number;
}

/** Evaluations by secant updates alone, before slopes are measured afresh. */
const secantPatience = 24;
const differenceStep = 1e-6;

/**
 * Broyden's method from the given slopes; when that has not ended after some evaluations, Newton's with measured slopes and
 * steps halved until they help. The last evaluation is always at the point that is returned.
 *
 * @source broyden-1965, unchecked
 */
export function solveSmallSystem(system: SmallSystem): SmallSystemEnd {
  const search = new Search(system);
  while (search.evaluations < Math.min(secantPatience, system.largestEvaluationCount)) {
    if (search.residual <= system.tolerance) return search.end(true);
    if (!search.secantStep()) break;
  }
  search.returnToBest();
  while (search.evaluations < system.largestEvaluationCount) {
    if (search.residual <= system.tolerance) return search.end(true);
    search.measureSlopes();
    if (!search.guardedStep()) break;
  }
  return search.end(search.residual <= system.tolerance);
}

/** The state of one search. */
class Search {
  evaluations = 0;
  residual = Number.POSITIVE_INFINITY;
  private readonly system: SmallSystem;
  private readonly jacobian: Float64Array;
  private readonly matrix: Float64Array;
  private unknowns: Float64Array;
  private values: Float64Array;
  private best: Float64Array;
  private bestResidual = Number.POSITIVE_INFINITY;

  constructor(system: SmallSystem) {
    this.system = system;
    this.jacobian = Float64Array.from(system.jacobian);
    this.matrix = new Float64Array(system.size * system.size);
    this.unknowns = Float64Array.from(system.start);
    this.values = new Float64Array(system.size);
    this.best = Float64Array.from(system.start);
    this.evaluate(this.unknowns, this.values);
    this.keep();
  }

  /** One step of Broyden's; false when the slopes have become singular. */
  secantStep(): boolean {
    const step = this.step();
    if (!step) return false;
    const { size } = this.system;
    const before = Float64Array.from(this.values);
    for (let i = 0; i < size; i++) this.unknowns[i] = (this.unknowns[i] as number) + (step[i] as number);
    this.evaluate(this.unknowns, this.values);
    this.keep();
    let length = 0;
    for (let i = 0; i < size; i++) length += (step[i] as number) ** 2;
    if (length === 0) return false;
    for (let row = 0; row < size; row++) {
      let missed = (this.values[row] as number) - (before[row] as number);
      for (let column = 0; column < size; column++) missed -= (this.jacobian[row * size + column] as number) * (step[column] as number);
      for (let column = 0; column < size; column++) {
        const at = row * size + column;
        this.jacobian[at] = (this.jacobian[at] as number) + (missed * (step[column] as number)) / length;
      }
    }
    return true;
  }

  /** Slopes by differences at the present point. */
  measureSlopes(): void {
    const { size } = this.system;
    const moved = Float64Array.from(this.unknowns);
    const values = new Float64Array(size);
    for (let column = 0; column < size; column++) {
      moved[column] = (this.unknowns[column] as number) + differenceStep;
      this.evaluate(moved, values);
      moved[column] = this.unknowns[column] as number;
      for (let row = 0; row < size; row++) {
        this.jacobian[row * size + column] = ((values[row] as number) - (this.values[row] as number)) / differenceStep;
      }
    }
  }

  /** One step, halved until the residual falls; false when it never does. */
  guardedStep(): boolean {
    const step = this.step();
    if (!step) return false;
    const trial = new Float64Array(this.system.size);
    const values = new Float64Array(this.system.size);
    for (let share = 1; share > 1e-3; share /= 2) {
      for (let i = 0; i < trial.length; i++) trial[i] = (this.unknowns[i] as number) + share * (step[i] as number);
      this.evaluate(trial, values);
      if (largest(values) >= this.residual) continue;
      this.unknowns = trial;
      this.values = values;
      this.keep();
      return true;
    }
    return false;
  }

  returnToBest(): void {
    this.unknowns = Float64Array.from(this.best);
    this.evaluate(this.unknowns, this.values);
    this.keep();
  }

  end(converged: boolean): SmallSystemEnd {
    return { converged, unknowns: this.unknowns, residual: this.residual, evaluations: this.evaluations };
  }

  private step(): Float64Array | undefined {
    const { size, largestSteps } = this.system;
    this.matrix.set(this.jacobian);
    const step = Float64Array.from(this.values, (value) => -value);
    if (!solveLinearInPlace(this.matrix, step, size)) return undefined;
    let share = 1;
    for (let i = 0; i < size; i++) share = Math.min(share, (largestSteps[i] as number) / Math.abs(step[i] as number));
    if (!(share > 0)) return undefined;
    return step.map((part) => part * share);
  }

  private evaluate(unknowns: Float64Array, values: Float64Array): void {
    this.evaluations += 1;
    this.system.residuals(unknowns, values);
  }

  private keep(): void {
    this.residual = largest(this.values);
    if (this.residual < this.bestResidual) {
      this.bestResidual = this.residual;
      this.best = Float64Array.from(this.unknowns);
    }
  }
}

function largest(values: Float64Array): number {
  let size = 0;
  for (const value of values) size = Math.max(size, Math.abs(value));
  return Number.isNaN(size) ? Number.POSITIVE_INFINITY : size;
}
