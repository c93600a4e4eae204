// A search of its own kind for flights that balance: bounded least squares on what is violated, from anywhere. It shares no step with the
// program that trims, only the numbers that say what balance and limits are.
import type { NonlinearProgram } from "../../packages/engine/src/numerics/index.ts";

export interface Violation {
  readonly x: Float64Array;
  /** Largest single violation, in the program's scaled measure. */
  readonly largest: number;
}

/** The program asked for less than a cost: its first value joins what may be violated. */
export interface Asked {
  readonly program: NonlinearProgram;
  /** Scaled cost that must be undercut; absent: any flight will do. */
  readonly costBelow?: number;
}

const iterations = 50;
/** Violations below this count as none: two orders above the solver's own. */
const none = 1e-6;

/** Numbers from 0 to 1, the same ones from the same seed. @source lehmer generator, common practice */
export function evenNumbers(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** A start anywhere within the bounds; every second one in their middle half. */
export function anywhere({ lower, upper, size }: NonlinearProgram, next: () => number, index: number): Float64Array {
  const reach = index % 2 === 0 ? 1 : 0.5;
  return Float64Array.from({ length: size }, (_, i) => {
    const [low, high] = [lower[i] as number, upper[i] as number];
    return (low + high) / 2 + (next() - 0.5) * reach * (high - low);
  });
}

/** Values of the program as violations: every equality, every inequality below zero, the cost above what is asked. */
function violations({ program, costBelow }: Asked, values: Float64Array, into: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < into.length; row++) {
    const value = values[row] as number;
    const over =
      row === 0 ? (costBelow === undefined ? 0 : Math.max(0, value - costBelow)) : row <= program.equalities ? value : Math.min(0, value);
    into[row] = over;
    sum += over * over;
  }
  return sum;
}

/** Levenberg's and Marquardt's steps, cut to the bounds, from one start. */
export function leastViolation(asked: Asked, start: Float64Array): Violation {
  const { program } = asked;
  const { size, lower, upper, stepLimit } = program;
  const rows = 1 + program.equalities + program.inequalities;
  let x = Float64Array.from(start);
  let values = new Float64Array(rows);
  const residual = new Float64Array(rows);
  const trialResidual = new Float64Array(rows);
  const jacobian = new Float64Array(rows * size);
  program.evaluate(x, values);
  let square = violations(asked, values, residual);
  let damping = 1e-2;
  let checked = square;
  for (let iteration = 0; iteration < iterations && Number.isFinite(square); iteration++) {
    if (largestOf(residual) < none) break;
    // A start that has come nowhere after a while is given up.
    if (iteration % 6 === 5) {
      if (square > 0.8 * checked) break;
      checked = square;
    }
    program.differentiate(x, values, jacobian);
    let moved = false;
    for (let attempt = 0; attempt < 6 && !moved; attempt++) {
      const step = dampedStep(program, x, residual, jacobian, rows, damping);
      const trial = Float64Array.from(x, (value, i) => {
        const most = stepLimit?.[i] ?? Number.POSITIVE_INFINITY;
        const cut = Math.min(most, Math.max(-most, step[i] as number));
        return Math.min(upper[i] as number, Math.max(lower[i] as number, value + cut));
      });
      const trialValues = new Float64Array(rows);
      program.evaluate(trial, trialValues);
      const trialSquare = violations(asked, trialValues, trialResidual);
      if (trialSquare < square) {
        x = trial;
        values = trialValues;
        residual.set(trialResidual);
        square = trialSquare;
        damping = Math.max(1e-9, damping / 5);
        moved = true;
      } else damping *= 6;
    }
    if (!moved) break;
  }
  return { x, largest: largestOf(residual) };
}

const largestOf = (residual: Float64Array): number => residual.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

/** (JᵀJ + damping) step = −Jᵀr over the variables that are not held at a bound. */
function dampedStep(
  { size, lower, upper }: NonlinearProgram,
  x: Float64Array,
  residual: Float64Array,
  jacobian: Float64Array,
  rows: number,
  damping: number,
): Float64Array {
  const gradient = new Float64Array(size);
  const normal = new Float64Array(size * size);
  for (let row = 0; row < rows; row++) {
    const value = residual[row] as number;
    if (value === 0) continue;
    for (let i = 0; i < size; i++) {
      const slope = jacobian[row * size + i] as number;
      if (slope === 0) continue;
      gradient[i] = (gradient[i] as number) + slope * value;
      for (let k = 0; k <= i; k++) normal[i * size + k] = (normal[i * size + k] as number) + slope * (jacobian[row * size + k] as number);
    }
  }
  const free: number[] = [];
  for (let i = 0; i < size; i++) {
    const [low, high, down] = [lower[i] as number, upper[i] as number, -(gradient[i] as number)];
    const stuck = high - low < 1e-12 || (x[i] === low && down < 0) || (x[i] === high && down > 0);
    if (!stuck) free.push(i);
  }
  const step = new Float64Array(size);
  const solution = choleskySolution(
    free.map((i, a) =>
      free
        .slice(0, a + 1)
        .map((k, b) => (normal[i * size + k] as number) + (a === b ? damping * ((normal[i * size + i] as number) + 1e-6) : 0)),
    ),
    free.map((i) => -(gradient[i] as number)),
  );
  free.forEach((i, a) => {
    step[i] = solution[a] as number;
  });
  return step;
}

/** Solves a positive definite system given by its lower triangle. */
function choleskySolution(lower: number[][], right: number[]): number[] {
  const n = right.length;
  for (let i = 0; i < n; i++) {
    const row = lower[i] as number[];
    for (let k = 0; k <= i; k++) {
      const other = lower[k] as number[];
      let value = row[k] as number;
      for (let m = 0; m < k; m++) value -= (row[m] as number) * (other[m] as number);
      row[k] = i === k ? Math.sqrt(Math.max(value, 1e-14)) : value / (other[k] as number);
    }
  }
  const y = [...right];
  for (let i = 0; i < n; i++) {
    const row = lower[i] as number[];
    for (let k = 0; k < i; k++) y[i] = (y[i] as number) - (row[k] as number) * (y[k] as number);
    y[i] = (y[i] as number) / (row[i] as number);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) y[i] = (y[i] as number) - ((lower[k] as number[])[i] as number) * (y[k] as number);
    y[i] = (y[i] as number) / ((lower[i] as number[])[i] as number);
  }
  return y;
}
