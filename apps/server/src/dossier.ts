import type { Project } from "@wingseed/documents";
import type { ProjectDefinition } from "@wingseed/engine";
import { answeredPages, conditionsInWords } from "@wingseed/reports";
import type { DossierChapter, DossierRequest as PrintedDossier, ValidationRow } from "@wingseed/reports/dossier";
import type { Progress, Runner } from "@wingseed/runner";

export interface DossierRequest {
  readonly runner: Runner;
  readonly project: Project;
  readonly version: string;
  readonly validation: readonly ValidationRow[];
  /** Printed references by source key. */
  readonly references: Readonly<Record<string, string>>;
  readonly signal: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
}

/** Asks every question that the dossier prints and sets the answers as PDF. */
export async function dossierPdf(request: DossierRequest): Promise<Uint8Array> {
  const answered = await answeredDossier(request);
  // The typesetter is large, and only whoever wants the dossier waits for it.
  const typesetter = await import("@wingseed/reports/dossier");
  return typesetter.dossierPdf(answered);
}

/** Everything that the dossier prints, with every question answered. */
export async function answeredDossier(request: DossierRequest): Promise<PrintedDossier> {
  const { project, version, validation, references } = request;
  const own = (await project.readDocument("project.yaml")).value?.data as ProjectDefinition | undefined;
  return {
    project: {
      title: own?.title ?? project.folder,
      demo: own?.demo === true,
      ...(own?.description === undefined ? {} : { description: own.description }),
    },
    chapters: await dossierChapters(request),
    validation,
    references,
    program: { name: "Wingseed", version },
  };
}

/** Those of the pages, as the project stands, and those of analyses that ask for a chapter, with their example. */
async function dossierChapters({ runner, signal, onProgress = () => {} }: DossierRequest): Promise<readonly DossierChapter[]> {
  const placed = new Set(answeredPages().flatMap((page) => page.slots.map((slot) => slot.analysis)));
  const printed = runner.registry.analyses.filter((analysis) => placed.has(analysis.name) || analysis.dossier);
  const chapters: DossierChapter[] = [];
  for (const meta of printed) {
    const inputs = placed.has(meta.name) ? {} : meta.example;
    const result = await runner.run({ analysis: meta.name, cases: [inputs], signal, onProgress });
    signal.throwIfAborted();
    const conditions = conditionsInWords(runner.registry.inputSchema(meta.name), result);
    chapters.push({ meta, result, view: runner.view(result), ...(conditions === "" ? {} : { conditions }) });
  }
  return chapters;
}
