/**
 * The last answer of a part, and one that is pinned, each with the numbers that it was an answer to: a gradient moves one number of the
 * aircraft at a time, and most parts do not feel it.
 */
export class Remembered<Answer> {
  /** Filled by the asker before `found`. */
  readonly asked: Float64Array;
  readonly #last: Float64Array;
  readonly #pinned: Float64Array;
  #lastAnswer: Answer | undefined;
  #pinnedAnswer: Answer | undefined;

  constructor(inputs: number) {
    this.asked = new Float64Array(inputs);
    this.#last = new Float64Array(inputs);
    this.#pinned = new Float64Array(inputs);
  }

  /** The answer to `asked` if it is one of the two. */
  found(): Answer | undefined {
    if (this.#lastAnswer !== undefined && same(this.asked, this.#last)) return this.#lastAnswer;
    return this.#pinnedAnswer !== undefined && same(this.asked, this.#pinned) ? this.#pinnedAnswer : undefined;
  }

  keep(answer: Answer): Answer {
    this.#last.set(this.asked);
    this.#lastAnswer = answer;
    return answer;
  }

  /** Keeps the last answer until the next is pinned. */
  pin(): void {
    this.#pinned.set(this.#last);
    this.#pinnedAnswer = this.#lastAnswer;
  }

  /** Forgets the last answer, not the pinned one. */
  forget(): void {
    this.#lastAnswer = undefined;
  }

  clear(): void {
    this.#lastAnswer = undefined;
    this.#pinnedAnswer = undefined;
  }
}

function same(a: Float64Array, b: Float64Array): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
