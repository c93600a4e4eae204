import { choleskyInPlace, choleskySolveInPlace } from "./cholesky.ts";
import type { QuadraticProgram, QuadraticStep } from "./quadratic-program.ts";

/** ρ: price of breaking a constraint by one. */
const breakingPrice = 1e3;
const largestIterations = 40;
const complementarity = 1e-11;
const looseComplementarity = 1e-9;
const residualTolerance = 1e-9;
const boundaryShare = 0.995;
/** The elastic program over the variables that can move, with all its buffers. */
export class ElasticProgram {
  readonly program: QuadraticProgram;
  readonly free: readonly number[];
  readonly n: number;
  readonly rows: number;
  readonly elastic: number;
  /** Rows of constraints only, row-major; the rows of bounds that follow them have one entry, ±1, and are not stored. */
  readonly a: Float64Array;
  readonly c: Float64Array;
  readonly b: Float64Array;
  readonly g: Float64Array;
  /** Least multiplier of a row: −ρ for equalities, 0 otherwise. */
  readonly lowDual: Float64Array;
  readonly d: Float64Array;
  readonly dual: Float64Array;
  readonly above: Float64Array;
  readonly below: Float64Array;
  readonly right: Float64Array;
  readonly affine: Direction;
  readonly corrected: Direction;
  readonly factor: Float64Array;
  readonly weights: Float64Array;

  constructor(program: QuadraticProgram, free: readonly number[]) {
    this.program = program;
    this.free = free;
    const n = free.length;
    this.n = n;
    this.elastic = program.equalities + program.inequalities;
    this.rows = this.elastic + 2 * n;
    this.a = new Float64Array(this.elastic * n);
    this.right = new Float64Array(this.rows);
    this.affine = freshDirection(n, this.rows);
    this.corrected = freshDirection(n, this.rows);
    this.factor = new Float64Array(n * n);
    this.weights = new Float64Array(this.rows);
    this.c = new Float64Array(this.rows);
    this.b = new Float64Array(n * n);
    this.g = new Float64Array(n);
    for (let r = 0; r < this.elastic; r++) {
      for (let k = 0; k < n; k++) this.a[r * n + k] = program.jacobian[r * program.size + (free[k] as number)] as number;
      this.c[r] = program.constraint[r] as number;
    }
    for (let k = 0; k < n; k++) {
      const i = free[k] as number;
      this.c[this.elastic + 2 * k] = -(program.low[i] as number);
      this.c[this.elastic + 2 * k + 1] = program.high[i] as number;
      this.g[k] = program.gradient[i] as number;
      for (let m = 0; m < n; m++) this.b[k * n + m] = program.hessian[i * program.size + (free[m] as number)] as number;
    }
    this.d = new Float64Array(n);
    this.lowDual = new Float64Array(this.rows);
    this.dual = new Float64Array(this.rows);
    this.above = new Float64Array(this.rows);
    this.below = new Float64Array(this.rows);
    for (let r = 0; r < this.rows; r++) {
      const equality = r < program.equalities;
      this.lowDual[r] = equality ? -breakingPrice : 0;
      this.dual[r] = equality ? 0 : 1;
      const value = this.c[r] as number;
      this.above[r] = Math.max(value, 0) + 0.1;
      this.below[r] = Math.max(-value, 0) + 0.1;
    }
  }

  solve(): QuadraticStep | undefined {
    const { n, rows } = this;
    const stationarity = new Float64Array(n);
    const feasibility = new Float64Array(rows);
    for (let iteration = 0; iteration < largestIterations; iteration++) {
      const worst = this.residuals(stationarity, feasibility);
      const mu = this.gap();
      if (!Number.isFinite(worst) || !Number.isFinite(mu)) return undefined;
      // Residuals cannot fall below the rounding of multipliers as large as ρ; the gap tells the end.
      if (mu < complementarity || (worst < residualTolerance && mu < looseComplementarity)) break;
      // The weights of met constraints have outgrown the arithmetic: what is there is as good as it gets.
      if (!this.factorise()) break;
      const affine = this.direction(this.affine, stationarity, feasibility, 0, undefined);
      const centring = (this.gap(affine, this.longest(affine)) / mu) ** 3;
      const corrected = this.direction(this.corrected, stationarity, feasibility, centring * mu, affine);
      const share = Math.min(1, boundaryShare * this.longest(corrected));
      this.move(corrected, share);
    }
    return this.result();
  }

  /** Fills ∇ and row residuals; returns the largest. */
  residuals(stationarity: Float64Array, feasibility: Float64Array): number {
    const { n, a, b, g, c, d, dual, above, below, elastic } = this;
    let worst = 0;
    for (let k = 0; k < n; k++) {
      const low = elastic + 2 * k;
      let sum = (g[k] as number) - (dual[low] as number) + (dual[low + 1] as number);
      for (let m = 0; m < n; m++) sum += (b[k * n + m] as number) * (d[m] as number);
      stationarity[k] = sum;
      feasibility[low] = (c[low] as number) - (above[low] as number) + (d[k] as number);
      feasibility[low + 1] = (c[low + 1] as number) - (above[low + 1] as number) - (d[k] as number);
    }
    for (let r = 0; r < elastic; r++) {
      let sum = (c[r] as number) - (above[r] as number) + (below[r] as number);
      const multiplier = dual[r] as number;
      for (let k = 0, at = r * n; k < n; k++, at++) {
        const slope = a[at] as number;
        sum += slope * (d[k] as number);
        stationarity[k] = (stationarity[k] as number) - slope * multiplier;
      }
      feasibility[r] = sum;
    }
    for (let k = 0; k < n; k++) worst = Math.max(worst, Math.abs(stationarity[k] as number));
    for (let r = 0; r < feasibility.length; r++) worst = Math.max(worst, Math.abs(feasibility[r] as number));
    return worst;
  }

  /** Mean product of each slack with its price, now or after a share of a direction. */
  gap(direction?: Direction, share = 0): number {
    const { rows, elastic, dual, above, below, lowDual } = this;
    let sum = 0;
    for (let r = 0; r < rows; r++) {
      const price = (dual[r] as number) + share * (direction?.dual[r] ?? 0);
      sum += ((above[r] as number) + share * (direction?.above[r] ?? 0)) * (price - (lowDual[r] as number));
      if (r < elastic) sum += ((below[r] as number) + share * (direction?.below[r] ?? 0)) * (breakingPrice - price);
    }
    return sum / (rows + elastic);
  }

  /** Weight of a row in the normal equations: 1/(s/z_s + t/z_t). */
  weight(r: number): number {
    const up = (this.above[r] as number) / ((this.dual[r] as number) - (this.lowDual[r] as number));
    const down = r < this.elastic ? (this.below[r] as number) / (breakingPrice - (this.dual[r] as number)) : 0;
    return 1 / (up + down);
  }

  /** Cholesky factor of B + Aᵀ W A; false when it breaks down. */
  factorise(): boolean {
    const { n, a, b, factor, weights, elastic } = this;
    factor.set(b);
    for (let r = 0; r < elastic; r++) {
      const w = this.weight(r);
      weights[r] = w;
      const at = r * n;
      for (let k = 0; k < n; k++) {
        const left = (a[at + k] as number) * w;
        if (left === 0) continue;
        const row = k * n;
        for (let m = 0; m <= k; m++) factor[row + m] = (factor[row + m] as number) + left * (a[at + m] as number);
      }
    }
    for (let k = 0; k < n; k++) {
      const low = elastic + 2 * k;
      const pair = this.weight(low) + this.weight(low + 1);
      weights[low] = this.weight(low);
      weights[low + 1] = this.weight(low + 1);
      factor[k * n + k] = ((factor[k * n + k] as number) + pair) * (1 + 1e-14);
    }
    return choleskyInPlace(factor, n);
  }

  /** Newton's direction to complementarity `target`, with Mehrotra's second-order term when `affine` is given; fills `into`. */
  direction(
    into: Direction,
    stationarity: Float64Array,
    feasibility: Float64Array,
    target: number,
    affine: Direction | undefined,
  ): Direction {
    const { n, rows, a, elastic, dual, above, below, lowDual, right, weights } = this;
    const { d } = into;
    for (let r = 0; r < rows; r++) {
      const zAbove = (dual[r] as number) - (lowDual[r] as number);
      const second = affine ? (affine.above[r] as number) * (affine.dual[r] as number) : 0;
      const gapAbove = (target - (above[r] as number) * zAbove - second) / zAbove;
      into.above[r] = gapAbove;
      let sum = gapAbove - (feasibility[r] as number);
      if (r < elastic) {
        const zBelow = breakingPrice - (dual[r] as number);
        const gapBelow =
          (target - (below[r] as number) * zBelow + (affine ? (affine.below[r] as number) * (affine.dual[r] as number) : 0)) / zBelow;
        into.below[r] = gapBelow;
        sum -= gapBelow;
      }
      right[r] = sum;
    }
    for (let k = 0; k < n; k++) {
      const low = elastic + 2 * k;
      d[k] =
        (weights[low] as number) * (right[low] as number) -
        (weights[low + 1] as number) * (right[low + 1] as number) -
        (stationarity[k] as number);
    }
    for (let r = 0; r < elastic; r++) {
      const pull = (weights[r] as number) * (right[r] as number);
      for (let k = 0, at = r * n; k < n; k++, at++) d[k] = (d[k] as number) + (a[at] as number) * pull;
    }
    choleskySolveInPlace(this.factor, d, n);
    for (let r = 0; r < elastic; r++) {
      let sum = right[r] as number;
      for (let k = 0, at = r * n; k < n; k++, at++) sum -= (a[at] as number) * (d[k] as number);
      this.rowDirection(into, r, sum);
    }
    for (let k = 0; k < n; k++) {
      const low = elastic + 2 * k;
      this.rowDirection(into, low, (right[low] as number) - (d[k] as number));
      this.rowDirection(into, low + 1, (right[low + 1] as number) + (d[k] as number));
    }
    return into;
  }

  /** Change of a row's multiplier and slacks once its right side less A d is known. */
  rowDirection(into: Direction, r: number, remainder: number): void {
    const { dual, above, below, lowDual, weights } = this;
    const change = remainder * (weights[r] as number);
    into.dual[r] = change;
    into.above[r] = (into.above[r] as number) - ((above[r] as number) * change) / ((dual[r] as number) - (lowDual[r] as number));
    if (r < this.elastic)
      into.below[r] = (into.below[r] as number) + ((below[r] as number) * change) / (breakingPrice - (dual[r] as number));
  }

  /** Largest share of a direction, at most 1, that keeps slacks and prices positive. */
  longest(direction: Direction): number {
    let share = 1;
    const hold = (value: number, change: number) => {
      if (change < 0 && -value / change < share) share = -value / change;
    };
    for (let r = 0; r < this.rows; r++) {
      hold(this.above[r] as number, direction.above[r] as number);
      hold((this.dual[r] as number) - (this.lowDual[r] as number), direction.dual[r] as number);
      if (r >= this.elastic) continue;
      hold(this.below[r] as number, direction.below[r] as number);
      hold(breakingPrice - (this.dual[r] as number), -(direction.dual[r] as number));
    }
    return share;
  }

  move(direction: Direction, share: number): void {
    for (let k = 0; k < this.n; k++) this.d[k] = (this.d[k] as number) + share * (direction.d[k] as number);
    for (let r = 0; r < this.rows; r++) {
      this.dual[r] = (this.dual[r] as number) + share * (direction.dual[r] as number);
      this.above[r] = (this.above[r] as number) + share * (direction.above[r] as number);
      if (r < this.elastic) this.below[r] = (this.below[r] as number) + share * (direction.below[r] as number);
    }
  }

  result(): QuadraticStep | undefined {
    const step = new Float64Array(this.program.size);
    this.free.forEach((at, k) => {
      step[at] = Math.min(this.program.high[at] as number, Math.max(this.program.low[at] as number, this.d[k] as number));
    });
    return step.every(Number.isFinite) ? { step, multipliers: this.dual.slice(0, this.elastic) } : undefined;
  }
}

interface Direction {
  readonly d: Float64Array;
  readonly dual: Float64Array;
  readonly above: Float64Array;
  readonly below: Float64Array;
}

function freshDirection(n: number, rows: number): Direction {
  return { d: new Float64Array(n), dual: new Float64Array(rows), above: new Float64Array(rows), below: new Float64Array(rows) };
}
