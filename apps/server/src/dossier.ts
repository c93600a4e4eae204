import type { Project } from "@wingseed/documents";
import type { Analysis, AnalysisResult } from "@wingseed/engine";
import { answeredPages } from "@wingseed/reports";
import type { Progress, ResultView, Runner } from "@wingseed/runner";

export interface DossierRequest {
  readonly runner: Runner;
  readonly project: Project;
  readonly version: string;
  readonly signal: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
}

/** One answer that the dossier prints. */
export interface DossierAnswer {
  readonly analysis: Analysis;
  readonly chapter: string;
  readonly result: AnalysisResult;
  readonly view: ResultView;
}

/**
 * Asks every question that the dossier prints: those of the pages, as the project stands, and those of analyses that ask
 * for a chapter, with their example where they say so.
 */
async function dossierAnswers({ runner, signal, onProgress = () => {} }: DossierRequest): Promise<readonly DossierAnswer[]> {
  const { analyses } = runner.registry;
  const pages = answeredPages().flatMap((page) => page.slots.map((slot) => ({ name: slot.analysis, chapter: page.name })));
  const placed = new Set(pages.map(({ name }) => name));
  const asked = [
    ...pages.flatMap(({ name, chapter }) => analyses.filter((one) => one.name === name).map((analysis) => ({ analysis, chapter, inputs: {} }))),
    ...analyses.flatMap((analysis) =>
      analysis.dossier && !placed.has(analysis.name) ? [{ analysis, chapter: analysis.dossier.chapter, inputs: analysis.example }] : [],
    ),
  ];
  const answers: DossierAnswer[] = [];
  for (const { analysis, chapter, inputs } of asked) {
    const result = await runner.run({ analysis: analysis.name, cases: [inputs], signal, onProgress });
    signal.throwIfAborted();
    answers.push({ analysis, chapter, result, view: runner.view(result) });
  }
  return answers;
}

export async function dossierPdf(request: DossierRequest): Promise<Uint8Array> {
  await dossierAnswers(request);
  throw new Error("typesetter missing");
}
