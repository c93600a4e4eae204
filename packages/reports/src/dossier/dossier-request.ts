import type { AnalysisResult } from "@wingseed/engine";
import type { ValidationRow } from "../validation/index.ts";
import type { AnalysisMeta, ResultView } from "../view.ts";

/** One analysis as the dossier prints it. */
export interface DossierChapter {
  readonly meta: AnalysisMeta;
  readonly result: AnalysisResult;
  readonly view: ResultView;
  /** The conditions of the answer in words, as the host knows them. */
  readonly conditions?: string;
}

export interface DossierRequest {
  readonly project: {
    readonly title: string;
    readonly description?: string;
    /** True when the project says that its aircraft and places are invented to show the program. */
    readonly demo: boolean;
    /** Date or revision as the project states it; the clock is not asked, so that the same inputs give the same bytes. */
    readonly revision?: string;
  };
  /** In any order: those on pages come in the order of the pages, the others after them. */
  readonly chapters: readonly DossierChapter[];
  readonly validation: readonly ValidationRow[];
  readonly program: { readonly name: string; readonly version: string };
  /** Full references by source key; a key without one is printed as the key. */
  readonly references?: Readonly<Record<string, string>>;
}
