import type { LinearMotion } from "./linear-motion.ts";

/** States over time, one row per time. */
export interface LinearResponse {
  /** [s] */
  readonly times: readonly number[];
  /** One list per state, in the order of the motion. */
  readonly states: readonly (readonly number[])[];
}

const terms = 18;

/**
 * How a linear motion goes on from a disturbance, exact at every time: the exponential of the matrix over one step by its
 * series of halved steps, applied again and again.
 *
 * @derivation x(t + h) = e^(A h) x(t); e^(A h) = (Σ (A h / 2^s)^k / k!)^(2^s) with the norm of A h / 2^s below one half
 */
export function linearResponse(
  { states, matrix }: LinearMotion,
  start: readonly number[],
  duration: number,
  steps: number,
): LinearResponse {
  const n = states.length;
  const step = duration / steps;
  const transition = exponential(matrix, n, step);
  const times = [0];
  const history = start.map((value) => [value]);
  let now: readonly number[] = start;
  for (let k = 1; k <= steps; k++) {
    const from = now;
    now = from.map((_, i) => from.reduce((sum, value, j) => sum + (transition[i * n + j] as number) * value, 0));
    times.push(k * step);
    for (let i = 0; i < n; i++) (history[i] as number[]).push(now[i] as number);
  }
  return { times, states: history };
}

function exponential(matrix: Float64Array, n: number, step: number): Float64Array {
  let norm = 0;
  for (let i = 0; i < n; i++) {
    let row = 0;
    for (let j = 0; j < n; j++) row += Math.abs(matrix[i * n + j] as number);
    norm = Math.max(norm, row * step);
  }
  const halvings = Math.max(0, Math.ceil(Math.log2(norm * 2)));
  const small = matrix.map((entry) => (entry * step) / 2 ** halvings);
  let sum: Float64Array = identity(n);
  let term: Float64Array = identity(n);
  for (let k = 1; k <= terms; k++) {
    term = product(term, small, n).map((entry) => entry / k);
    sum = sum.map((entry, i) => entry + (term[i] as number));
  }
  for (let k = 0; k < halvings; k++) sum = product(sum, sum, n);
  return sum;
}

function identity(n: number): Float64Array {
  const unit = new Float64Array(n * n);
  for (let i = 0; i < n; i++) unit[i * n + i] = 1;
  return unit;
}

function product(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const c = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) {
      const factor = a[i * n + k] as number;
      for (let j = 0; j < n; j++) c[i * n + j] = (c[i * n + j] as number) + factor * (b[k * n + j] as number);
    }
  return c;
}
