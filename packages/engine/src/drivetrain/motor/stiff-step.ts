export type TwoRates = readonly [number, number];

export interface StiffStep {
  readonly state: TwoRates;
  readonly step: number;
  /** Step to try next. */
  readonly next: number;
  /** Rates at both ends. */
  readonly first: TwoRates;
  readonly last: TwoRates;
}

const d = 1 / (2 + Math.SQRT2);
const e32 = 6 + Math.SQRT2;

/**
 * One step of two coupled rates that may be of very different speed, its error held below `tolerance` by shortening it.
 *
 * A Rosenbrock pair of order 2 with an error estimate of order 3, autonomous.
 *
 * @source steihaug-wolfbrandt-1979, coefficients of order 2 from memory
 */
export function stiffStep(rates: (a: number, b: number) => TwoRates, from: TwoRates, wanted: number, tolerance: number): StiffStep {
  const first = rates(from[0], from[1]);
  const jacobian = slopes(rates, from, first);
  for (let step = wanted; ; ) {
    const { state, last, error } = tried(rates, from, first, jacobian, step);
    const ratio = error / tolerance;
    const factor = Math.min(4, Math.max(0.2, 0.8 / Math.cbrt(Math.max(ratio, 1e-9))));
    if (ratio <= 1 || step < wanted * 1e-6) return { state, step, next: step * factor, first, last };
    step *= Math.min(factor, 0.8);
  }
}

type Matrix = readonly [number, number, number, number];

function slopes(rates: (a: number, b: number) => TwoRates, [a, b]: TwoRates, at: TwoRates): Matrix {
  const by = 0.01;
  const inA = rates(a + by, b);
  const inB = rates(a, b + by);
  return [(inA[0] - at[0]) / by, (inB[0] - at[0]) / by, (inA[1] - at[1]) / by, (inB[1] - at[1]) / by];
}

function tried(rates: (a: number, b: number) => TwoRates, from: TwoRates, first: TwoRates, [j11, j12, j21, j22]: Matrix, step: number) {
  const h = step * d;
  const [w11, w12, w21, w22] = [1 - h * j11, -h * j12, -h * j21, 1 - h * j22];
  const determinant = w11 * w22 - w12 * w21;
  const solved = (x: number, y: number): TwoRates => [(w22 * x - w12 * y) / determinant, (w11 * y - w21 * x) / determinant];
  const k1 = solved(first[0], first[1]);
  const middle = rates(from[0] + (step / 2) * k1[0], from[1] + (step / 2) * k1[1]);
  const turned = solved(middle[0] - k1[0], middle[1] - k1[1]);
  const k2: TwoRates = [turned[0] + k1[0], turned[1] + k1[1]];
  const state: TwoRates = [from[0] + step * k2[0], from[1] + step * k2[1]];
  const last = rates(state[0], state[1]);
  const k3 = solved(
    last[0] - e32 * (k2[0] - middle[0]) - 2 * (k1[0] - first[0]),
    last[1] - e32 * (k2[1] - middle[1]) - 2 * (k1[1] - first[1]),
  );
  const error = (step / 6) * Math.max(Math.abs(k1[0] - 2 * k2[0] + k3[0]), Math.abs(k1[1] - 2 * k2[1] + k3[1]));
  return { state, last, error };
}
