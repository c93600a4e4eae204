/** Writes the rate of change of `state` at `time` into `rate`. */
export type RateOfChange = (time: number, state: Float64Array, rate: Float64Array) => void;

const weights = [23 / 12, -16 / 12, 5 / 12] as const;

/**
 * Equal steps with one evaluation each, third order: Adams-Bashforth of three steps, started by two steps of the classical
 * Runge-Kutta method, also after every `restart` (where something jumps).
 *
 *     y₊ = y + h (23 f − 16 f₋ + 5 f₋₋)/12
 *
 * Stable for rates of decay below 0.54/h; the caller chooses the step for the fastest state.
 *
 * @source hairer-norsett-wanner-1993, chapter III.1, Adams methods, from memory
 */
export class MultistepIntegrator {
  readonly #rate: RateOfChange;
  readonly #history: [Float64Array, Float64Array, Float64Array];
  readonly #stages: readonly [Float64Array, Float64Array, Float64Array];
  readonly #trial: Float64Array;
  /** Rates of change that are known from steps before. */
  #known = 0;
  /** Evaluations so far. */
  evaluations = 0;

  constructor(size: number, rate: RateOfChange) {
    this.#rate = rate;
    const fresh = () => new Float64Array(size);
    this.#history = [fresh(), fresh(), fresh()];
    this.#stages = [fresh(), fresh(), fresh()];
    this.#trial = fresh();
  }

  /** Forgets the steps before: what comes is no smooth continuation of them. */
  restart(): void {
    this.#known = 0;
  }

  /**
   * One step of `state` in place, from `time` to `time + step`. The step must be the one of the steps before, or `restart` come first.
   *
   * @param begun called when the rate at the beginning of the step is known and nothing else has been asked
   */
  advance(time: number, state: Float64Array, step: number, begun?: () => void): void {
    const [first, second, third] = this.#history;
    this.#history[0] = third;
    this.#history[1] = first;
    this.#history[2] = second;
    const now = third;
    this.#evaluate(time, state, now);
    begun?.();
    this.#known = Math.min(this.#known + 1, weights.length);
    if (this.#known < weights.length) {
      this.#start(time, state, now, step);
      return;
    }
    const [w0, w1, w2] = weights;
    for (let i = 0; i < state.length; i++) {
      const slope = w0 * (now[i] as number) + w1 * (first[i] as number) + w2 * (second[i] as number);
      state[i] = (state[i] as number) + step * slope;
    }
  }

  #evaluate(time: number, state: Float64Array, into: Float64Array): void {
    this.evaluations += 1;
    this.#rate(time, state, into);
  }

  #start(time: number, state: Float64Array, now: Float64Array, step: number): void {
    const [a, b, c] = this.#stages;
    this.#evaluate(time + step / 2, this.#along(state, now, step / 2), a);
    this.#evaluate(time + step / 2, this.#along(state, a, step / 2), b);
    this.#evaluate(time + step, this.#along(state, b, step), c);
    for (let i = 0; i < state.length; i++) {
      const slope = (now[i] as number) + 2 * (a[i] as number) + 2 * (b[i] as number) + (c[i] as number);
      state[i] = (state[i] as number) + (step / 6) * slope;
    }
  }

  #along(state: Float64Array, rate: Float64Array, step: number): Float64Array {
    for (let i = 0; i < state.length; i++) this.#trial[i] = (state[i] as number) + step * (rate[i] as number);
    return this.#trial;
  }
}
