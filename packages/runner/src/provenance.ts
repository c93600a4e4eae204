import type { Analysis, Outcome, Provenance, Warning } from "@wingseed/engine";
import { canonicalJson } from "./canonical.ts";
import type { Default } from "./given-inputs.ts";

/** What is told about where one case came from. */
export interface CaseOrigin {
  readonly inputs: unknown;
  readonly defaults: readonly Default[];
  readonly documents: readonly { readonly path: string; readonly hash: string }[];
  /** Of what it stands on. */
  readonly warnings: readonly Warning[];
  readonly outcome: Outcome<unknown>;
}

export interface Program {
  readonly version: string;
  readonly registryHash: string;
}

export function provenanceOf(program: Program, analysis: Analysis, cases: readonly CaseOrigin[]): Provenance {
  return {
    program: { name: "wingseed", version: program.version },
    registryHash: program.registryHash,
    runtime: { v8: process.versions.v8, architecture: process.arch },
    documents: distinct(cases.flatMap((item) => item.documents)).sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0)),
    defaults: distinct(cases.flatMap((item) => [...item.defaults, ...(item.outcome.assumed ?? [])])),
    method: analysis.method,
    seed: seedOf(cases[0]?.inputs),
  };
}

export function warningsOf(cases: readonly CaseOrigin[]): readonly Warning[] {
  return distinct(cases.flatMap((item) => [...(item.outcome.warnings ?? []), ...item.warnings]));
}

function distinct<Item>(items: readonly Item[]): Item[] {
  return [...new Map(items.map((item) => [canonicalJson(item), item])).values()];
}

/** An analysis that draws random numbers takes its seed as an input of that name. */
function seedOf(inputs: unknown): number | null {
  const seed = (inputs as { seed?: unknown } | null | undefined)?.seed;
  return typeof seed === "number" ? seed : null;
}
