import type { QuantityKind } from "../quantities/index.ts";

/** A computed number in a sentence. It can be questioned: `path` leads to it in the outputs. */
export interface ReadingToken {
  readonly kind: "reading";
  readonly value: number;
  readonly quantity: QuantityKind;
  /** JSON Pointer into the outputs. */
  readonly path: string;
  /** "above ground", "above sea": heights always say what from. */
  readonly datum?: string;
  /** Unit to show when the usual one of the kind would read badly ("min", "km"). */
  readonly unit?: string;
}

/** Something the reader may change: an input of this analysis or a number of a document. */
export interface HandleToken {
  readonly kind: "handle";
  readonly text: string;
  /** JSON Pointer into the inputs, or document path + "#" + pointer. */
  readonly target: string;
}

export interface WordsToken {
  readonly kind: "words";
  readonly text: string;
}

export type Token = WordsToken | ReadingToken | HandleToken;

export function words(text: string): WordsToken {
  return { kind: "words", text };
}

export function reading(value: number, quantity: QuantityKind, path: string, more: { datum?: string; unit?: string } = {}): ReadingToken {
  return { kind: "reading", value, quantity, path, ...more };
}
