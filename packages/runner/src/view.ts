import type { Analysis, AnalysisResult, Answer, Figure, Limit } from "@wingseed/engine";

/** What faces show of one case. */
export interface CaseView {
  readonly answer: Answer;
  readonly figures: readonly Figure[];
  readonly limits: readonly Limit[];
}

export function viewOf(analysis: Analysis, result: AnalysisResult): readonly (CaseView | null)[] {
  return result.cases.map(({ inputs, outputs }) =>
    outputs === undefined
      ? null
      : {
          answer: analysis.answer(outputs, inputs),
          figures: analysis.figures(outputs, inputs),
          limits: analysis.limits(outputs, inputs),
        },
  );
}
