import { type DocumentProblem, inReadingOrder, problemLine, type Reading } from "@wingseed/documents";
import type { Analysis, Need, Outcome, Problem, ProjectView, Raster, ReadDocument, Warning } from "@wingseed/engine";
import { canonicalJson, sha256 } from "./canonical.ts";
import { needKey } from "./need-key.ts";
import { internalProblem } from "./problems.ts";
import type { ProjectSource } from "./project-source.ts";

/** An analysis may find out step by step what it needs (project → mission → route → raster); more steps than this are a mistake of ours. */
const mostRounds = 16;

/** What a nested run gives back. */
export interface NestedOutcome {
  readonly outcome: Outcome<unknown>;
  /** Identity of exactly what it depended on. */
  readonly key: string;
  readonly documents: readonly { readonly path: string; readonly hash: string }[];
  /** Of the documents it read. */
  readonly warnings: readonly Warning[];
}

export interface MetNeeds {
  readonly project: ProjectView;
  readonly outcomes: readonly (readonly [string, Outcome<unknown>])[];
  readonly documents: readonly { readonly path: string; readonly hash: string }[];
  /** Of the documents, and of the analyses that it stands on. */
  readonly warnings: readonly Warning[];
  /** One line for each thing the result may depend on, by content. */
  readonly dependencies: readonly string[];
}

export type NeedsReading = { readonly met: MetNeeds; readonly problem?: never } | { readonly problem: Problem; readonly met?: never };

type RunNested = (name: string, inputs: unknown) => Promise<NestedOutcome>;

/** Asks an analysis what it needs, reads that, and asks again with what is there until it asks for nothing new. */
export async function meetNeeds(
  analysis: Analysis,
  inputs: unknown,
  source: ProjectSource | null,
  runNested: RunNested,
): Promise<NeedsReading> {
  const documents: Record<string, ReadDocument> = {};
  const rasters: Record<string, Raster> = {};
  const nested = new Map<string, NestedOutcome>();
  const warnings: Warning[] = [];
  const seen = new Set<string>();
  for (let round = 0; round < mostRounds; round++) {
    const asked = askNeeds(analysis, inputs, { documents, rasters });
    if ("problem" in asked) return { problem: asked.problem };
    const fresh = asked.needs.filter((need) => !seen.has(identity(need)));
    if (fresh.length === 0) return { met: gather({ documents, rasters }, nested, warnings) };
    for (const need of fresh) seen.add(identity(need));
    const complaints: DocumentProblem[] = [];
    if (!source && fresh.some((need) => need.kind !== "analysis")) return { problem: noProject(analysis, fresh) };
    await Promise.all(
      fresh.map(async (need) => {
        if (need.kind === "analysis") nested.set(identity(need), await runNested(need.name, need.inputs));
        else if (source && need.kind === "document") keep(documents, need.path, await source.readDocument(need.path), complaints, warnings);
        else if (source) keep(rasters, need.path, await source.readRaster(need.path), complaints, warnings);
      }),
    );
    if (complaints.length > 0) return { problem: documentProblem(complaints) };
  }
  return { problem: internalProblem(`"${analysis.name}" did not stop asking for more after ${mostRounds} rounds.`) };
}

function askNeeds(analysis: Analysis, inputs: unknown, available: ProjectView): { needs: readonly Need[] } | { problem: Problem } {
  try {
    return { needs: analysis.needs?.(inputs, available) ?? [] };
  } catch (error) {
    return {
      problem: internalProblem(`"${analysis.name}" failed while saying what it needs: ${error instanceof Error ? error.message : error}`),
    };
  }
}

function identity(need: Need): string {
  return need.kind === "analysis" ? `analysis ${needKey(need.name, need.inputs)}` : `${need.kind} ${need.path}`;
}

function keep<Value>(
  into: Record<string, Value>,
  path: string,
  reading: Reading<Value>,
  complaints: DocumentProblem[],
  warnings: Warning[],
): void {
  if (reading.problems) {
    complaints.push(...reading.problems);
    return;
  }
  into[path] = reading.value;
  warnings.push(...reading.warnings.map((problem): Warning => ({ kind: "document", message: problemLine(problem), grade: "note" })));
}

function gather(project: ProjectView, nested: ReadonlyMap<string, NestedOutcome>, own: readonly Warning[]): MetNeeds {
  const read = [...Object.values(project.documents), ...Object.values(project.rasters)].map(({ path, hash }) => ({ path, hash }));
  return {
    project,
    outcomes: [...nested].map(([key, { outcome }]) => [key.replace(/^analysis /, ""), outcome]),
    documents: [...read, ...[...nested.values()].flatMap((item) => item.documents)],
    warnings: [...own, ...[...nested.values()].flatMap((item) => [...(item.outcome.warnings ?? []), ...item.warnings])],
    dependencies: [
      ...Object.values(project.documents).map((document) => `document ${document.path} ${documentDigest(document)}`),
      ...Object.values(project.rasters).map((raster) => `raster ${raster.path} ${rasterDigest(raster)}`),
      ...[...nested].map(([key, { key: dependsOn }]) => `${key} ${dependsOn}`),
    ].sort(),
  };
}

const digests = new WeakMap<object, string>();

/** Over what was read, not only over the file: a reader that reads differently gives a different identity. */
function documentDigest(document: ReadDocument): string {
  return digestOnce(document, () => canonicalJson(document));
}

function rasterDigest(raster: Raster): string {
  const { values: _values, hole: _hole, ...description } = raster;
  return digestOnce(raster, () => canonicalJson(description));
}

function digestOnce(subject: object, text: () => string): string {
  let digest = digests.get(subject);
  if (digest === undefined) {
    digest = sha256(text());
    digests.set(subject, digest);
  }
  return digest;
}

function documentProblem(found: readonly DocumentProblem[]): Problem {
  const problems = inReadingOrder(found);
  return { kind: "document", message: problems.map(problemLine).join("\n"), problems };
}

function noProject(analysis: Analysis, needs: readonly Need[]): Problem {
  const paths = needs.flatMap((need) => (need.kind === "analysis" ? [] : [need.path]));
  return { kind: "no-project", message: `"${analysis.name}" needs a project folder with ${paths.join(", ")}, and none was given.` };
}
