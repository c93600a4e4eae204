import type { Figure } from "@wingseed/engine";

/** One piece of a printed document. A result becomes blocks; blocks become pages. */
export type Block =
  | { readonly kind: "title"; readonly text: string; readonly subtitle: string }
  | { readonly kind: "heading"; readonly level: 1 | 2; readonly text: string }
  | { readonly kind: "paragraph"; readonly text: string; readonly look: "text" | "answer" | "note" | "small" }
  | { readonly kind: "caution"; readonly grade: "stops" | "care" | "note"; readonly text: string }
  | FigureBlock
  | { readonly kind: "pair"; readonly figures: readonly FigureBlock[] }
  | TableBlock
  | { readonly kind: "citation"; readonly key: string; readonly text: string }
  | { readonly kind: "page-break" };

export interface FigureBlock {
  readonly kind: "figure";
  readonly caption: string;
  readonly figure: Figure;
  readonly origin: FigureOrigin;
}

/** What makes a figure again: printed under it. */
export interface FigureOrigin {
  readonly analysis: string;
  readonly figure: string;
  /** Inputs in words, those that nobody gave left out. */
  readonly inputs: string;
  /** Digest of analysis, inputs and documents. */
  readonly hash: string;
  readonly command: string;
}

export interface TableBlock {
  readonly kind: "table";
  readonly caption: string;
  readonly head: readonly string[];
  /** True for columns of figures, which are set flush right. */
  readonly numeric: readonly boolean[];
  readonly rows: readonly (readonly string[])[];
  readonly note?: string;
}
