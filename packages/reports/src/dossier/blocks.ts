import type { Figure } from "@wingseed/engine";

/** One piece of a printed document. A result becomes blocks; blocks become pages. */
export type Block =
  | { readonly kind: "title"; readonly text: string; readonly subtitle: string }
  | { readonly kind: "heading"; readonly level: 1 | 2; readonly text: string }
  | ParagraphBlock
  | { readonly kind: "caution"; readonly grade: "stops" | "care" | "note"; readonly text: string }
  | FigureBlock
  | { readonly kind: "pair"; readonly figures: readonly FigureBlock[] }
  | PanelsBlock
  | TableBlock
  | { readonly kind: "references"; readonly items: readonly { readonly mark: string; readonly text: string }[] };

export interface ParagraphBlock {
  readonly kind: "paragraph";
  /** `question` stands over an `answer`; `compact` is for what a reviewer looks up. */
  readonly look: "text" | "question" | "answer" | "note" | "compact" | "small";
  /** What the paragraph is about, set stronger before it. */
  readonly lead?: string;
  readonly text: string;
  /** Never the last on a page. */
  readonly withNext?: boolean;
}

export interface FigureBlock {
  readonly kind: "figure";
  readonly caption: string;
  readonly figure: Figure;
  readonly origin: FigureOrigin;
}

/** Small pictures of one kind, three beside each other; what makes them again is said once beside them. */
export interface PanelsBlock {
  readonly kind: "panels";
  readonly figures: readonly { readonly caption: string; readonly figure: Figure }[];
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
  /** Cells of each row; a row of one text in a table of several columns is a heading over the rows after it. */
  readonly rows: readonly (readonly string[])[];
  readonly note?: string;
}
