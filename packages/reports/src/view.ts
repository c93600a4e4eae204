import type { Analysis, Answer, Figure, Limit } from "@wingseed/engine";

/** What reports need to know about an analysis; the schemas, where given, put units on machine-read columns. */
export type AnalysisMeta = Pick<Analysis, "name" | "question" | "method"> & Partial<Pick<Analysis, "dossier">>;

/** What is shown of one case. */
export interface CaseView {
  readonly answer: Answer;
  readonly figures: readonly Figure[];
  readonly limits: readonly Limit[];
}

/** What is shown of a result, case by case; null where a case has a problem instead of outputs. */
export interface ResultView {
  readonly cases: readonly (CaseView | null)[];
}
