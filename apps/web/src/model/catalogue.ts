import type { AnalysisResult, Answer, Figure, Limit, Method, Problem } from "@wingseed/engine";
import type { Page, ValidationRow } from "@wingseed/reports/draw";
import type { JsonSchema } from "./schema.ts";

/** One analysis of the registry as the server describes it. */
export interface AnalysisEntry {
  readonly name: string;
  readonly question: string;
  readonly inputs: JsonSchema;
  readonly outputs: JsonSchema;
  readonly method: Method;
  readonly example: Readonly<Record<string, unknown>>;
  readonly quick?: boolean;
}

/** What an analysis shows for one case: made on the server by the analysis itself. */
export interface CaseView {
  readonly answer: Answer;
  readonly figures: readonly Figure[];
  readonly limits: readonly Limit[];
}

export interface View {
  /** null where the case has a problem instead of outputs. */
  readonly cases: readonly (CaseView | null)[];
}

export interface Computed {
  readonly result: AnalysisResult;
  readonly view: View;
}

export interface ProjectEntry {
  readonly title: string;
  readonly demo: boolean;
  readonly aircraft: readonly string[];
  readonly missions: readonly string[];
  readonly problems: readonly Problem[];
  readonly cautions: readonly string[];
}

export interface Progress {
  readonly done: number;
  readonly total: number;
  readonly doing: string;
  readonly remainingSeconds?: number | null;
}

/** Why there is no answer, with the input it is about where the server knows it. */
export interface RunProblem extends Problem {
  /** Dotted path of the input, or empty when it is about the whole. */
  readonly path?: string;
}

export type RunEvent =
  | { readonly kind: "progress"; readonly progress: Progress }
  | { readonly kind: "partial"; readonly computed: Computed; readonly statedError: string }
  | { readonly kind: "result"; readonly computed: Computed }
  | { readonly kind: "problem"; readonly problems: readonly RunProblem[] };

/** What the server offers, read once at the start. */
export interface Catalogue {
  readonly analyses: readonly AnalysisEntry[];
  readonly pages: readonly Page[];
  readonly project: ProjectEntry;
  /** How the program compares with published data, as on record. */
  readonly validation: readonly ValidationRow[];
}
