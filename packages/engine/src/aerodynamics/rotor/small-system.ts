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
  /** Slopes as last known, row by row. */
  readonly jacobian: Float64Array;
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

/** The state of one search. Buffers are made once: a search is the inner loop of others. */
class Search {
  evaluations = 0;
  residual = Number.POSITIVE_INFINITY;
  private readonly system: SmallSystem;
  private readonly jacobian: Float64Array;
  private readonly matrix: Float64Array;
  private readonly step: Float64Array;
  private readonly unknowns: Float64Array;
  private readonly values: Float64Array;
  private readonly trial: Float64Array;
  private readonly trialValues: Float64Array;
  private readonly best: Float64Array;
  private bestResidual = Number.POSITIVE_INFINITY;

  constructor(system: SmallSystem) {
    const { size } = system;
    this.system = system;
    this.jacobian = system.jacobian.slice();
    this.matrix = new Float64Array(size * size);
    this.step = new Float64Array(size);
    this.unknowns = system.start.slice();
    this.values = new Float64Array(size);
    this.trial = new Float64Array(size);
    this.trialValues = new Float64Array(size);
    this.best = system.start.slice();
    this.evaluate(this.unknowns, this.values);
    this.keep();
  }

  /** One step of Broyden's; false when the slopes have become singular. */
  secantStep(): boolean {
    if (!this.findStep()) return false;
    const { size } = this.system;
    const { unknowns, values, step, jacobian, trialValues: before } = this;
    before.set(values);
    let length = 0;
    for (let i = 0; i < size; i++) {
      const part = step[i] as number;
      unknowns[i] = (unknowns[i] as number) + part;
      length += part * part;
    }
    this.evaluate(unknowns, values);
    this.keep();
    if (length === 0) return false;
    for (let row = 0; row < size; row++) {
      let missed = (values[row] as number) - (before[row] as number);
      for (let column = 0; column < size; column++) missed -= (jacobian[row * size + column] as number) * (step[column] as number);
      for (let column = 0; column < size; column++) {
        const at = row * size + column;
        jacobian[at] = (jacobian[at] as number) + (missed * (step[column] as number)) / length;
      }
    }
    return true;
  }

  /** Slopes by differences at the present point. */
  measureSlopes(): void {
    const { size } = this.system;
    const { unknowns, values, trial, trialValues, jacobian } = this;
    trial.set(unknowns);
    for (let column = 0; column < size; column++) {
      trial[column] = (unknowns[column] as number) + differenceStep;
      this.evaluate(trial, trialValues);
      trial[column] = unknowns[column] as number;
      for (let row = 0; row < size; row++) {
        jacobian[row * size + column] = ((trialValues[row] as number) - (values[row] as number)) / differenceStep;
      }
    }
  }

  /** One step, halved until the residual falls; false when it never does. */
  guardedStep(): boolean {
    if (!this.findStep()) return false;
    const { unknowns, values, trial, trialValues, step } = this;
    for (let share = 1; share > 1e-3; share /= 2) {
      for (let i = 0; i < trial.length; i++) trial[i] = (unknowns[i] as number) + share * (step[i] as number);
      this.evaluate(trial, trialValues);
      if (largest(trialValues) >= this.residual) continue;
      unknowns.set(trial);
      values.set(trialValues);
      this.keep();
      return true;
    }
    return false;
  }

  returnToBest(): void {
    this.unknowns.set(this.best);
    this.evaluate(this.unknowns, this.values);
    this.keep();
  }

  end(converged: boolean): SmallSystemEnd {
    return { converged, unknowns: this.unknowns, residual: this.residual, evaluations: this.evaluations, jacobian: this.jacobian };
  }

  /** The step of Newton's with the present slopes, shortened as a whole; false when they are singular. */
  private findStep(): boolean {
    const { size, largestSteps } = this.system;
    const { step, values, matrix } = this;
    matrix.set(this.jacobian);
    for (let i = 0; i < size; i++) step[i] = -(values[i] as number);
    if (!solveLinearInPlace(matrix, step, size)) return false;
    let share = 1;
    for (let i = 0; i < size; i++) share = Math.min(share, (largestSteps[i] as number) / Math.abs(step[i] as number));
    if (!(share > 0)) return false;
    for (let i = 0; i < size; i++) step[i] = (step[i] as number) * share;
    return true;
  }

  private evaluate(unknowns: Float64Array, values: Float64Array): void {
    this.evaluations += 1;
    this.system.residuals(unknowns, values);
  }

  private keep(): void {
    this.residual = largest(this.values);
    if (this.residual < this.bestResidual) {
      this.bestResidual = this.residual;
      this.best.set(this.unknowns);
    }
  }
}

function largest(values: Float64Array): number {
  let size = 0;
  for (let i = 0; i < values.length; i++) size = Math.max(size, Math.abs(values[i] as number));
  return Number.isNaN(size) ? Number.POSITIVE_INFINITY : size;
}
