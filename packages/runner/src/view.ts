import type { Analysis, AnalysisResult, Answer, Figure, Limit } from "@wingseed/engine";

/** What faces show of one case. */
export interface CaseView {
  readonly answer: Answer;
  readonly figures: readonly Figure[];
  readonly limits: readonly Limit[];
}

/** What faces show of a result: case by case, null where there is a problem instead of outputs. */
export interface ResultView {
  readonly cases: readonly (CaseView | null)[];
}

export function viewOf(analysis: Analysis, result: AnalysisResult): ResultView {
  const cases = result.cases.map(({ inputs, outputs }) =>
    outputs === undefined
      ? null
      : {
          answer: analysis.answer(outputs, inputs),
          figures: analysis.figures(outputs, inputs),
          limits: analysis.limits(outputs, inputs),
        },
  );
  return { cases };
}
