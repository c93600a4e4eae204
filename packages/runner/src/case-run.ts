import type { Analysis, Outcome } from "@wingseed/engine";
import { canonicalJson, sha256 } from "./canonical.ts";
import { givenInputs } from "./given-inputs.ts";
import type { InFlight } from "./in-flight.ts";
import { needKey } from "./need-key.ts";
import { type MetNeeds, meetNeeds, type NestedOutcome } from "./needs.ts";
import { cancelledProblem, internalProblem } from "./problems.ts";
import type { ProjectSource } from "./project-source.ts";
import type { CaseOrigin } from "./provenance.ts";
import type { Registry } from "./registry.ts";
import type { ResultCache } from "./result-cache.ts";
import type { WorkerPool } from "./worker-pool.ts";
import type { WorkerMessage } from "./worker-protocol.ts";

/** Everything that one case is run with. */
export interface House {
  readonly registry: Registry;
  readonly project: ProjectSource | null;
  readonly cache: ResultCache;
  readonly pool: WorkerPool;
  readonly inFlight: InFlight;
  readonly version: string;
}

export interface CaseListeners {
  progress(done: number, total: number, doing: string): void;
  partial(origin: CaseOrigin, statedError: string): void;
}

export interface CaseRun extends CaseOrigin {
  /** Identity of what it depended on, for a case that depends on it in turn. */
  readonly key: string;
}

/** One case from what was asked to its outcome: read, gather what it needs, look whether it is kept, run, keep. */
export async function runCase(
  house: House,
  name: string,
  raw: unknown,
  listeners: CaseListeners,
  signal: AbortSignal,
  askedBy: readonly string[] = [],
): Promise<CaseRun> {
  const analysis = house.registry.named(name);
  const given = givenInputs(analysis, raw);
  if (given.problem) return withoutRun(raw, { problem: given.problem });
  const { inputs, defaults } = given;
  const asked = needKey(name, inputs);
  if (askedBy.includes(asked))
    return withoutRun(inputs, { problem: internalProblem(`Analyses need one another in a circle: ${[...askedBy, asked].join(" → ")}`) });
  const needs = await meetNeeds(analysis, inputs, house.project, (needed, neededInputs) =>
    runNested(house, needed, neededInputs, listeners, signal, [...askedBy, asked]),
  );
  if (needs.problem) return { ...withoutRun(inputs, { problem: needs.problem }), defaults };
  const { met } = needs;
  const key = caseKey(house, name, inputs, met);
  const origin = (outcome: Outcome<unknown>): CaseRun => ({
    inputs,
    defaults,
    documents: met.documents,
    warnings: met.warnings,
    outcome,
    key,
  });
  const listen = (message: WorkerMessage) => {
    if (message.kind === "progress") listeners.progress(message.done, message.total, message.doing);
    if (message.kind === "partial") listeners.partial(origin({ outputs: message.outputs }), message.statedError);
  };
  return origin(await keptOrRun(house, key, analysis, inputs, met, { listen, signal, listeners }));
}

async function keptOrRun(
  house: House,
  key: string,
  analysis: Analysis,
  inputs: unknown,
  met: MetNeeds,
  { listen, signal, listeners }: { listen: (message: WorkerMessage) => void; signal: AbortSignal; listeners: CaseListeners },
): Promise<Outcome<unknown>> {
  if (signal.aborted) return { problem: cancelledProblem };
  const kept = await house.cache.read(key);
  if (kept !== null) {
    listeners.progress(1, 1, "kept result");
    return JSON.parse(kept) as Outcome<unknown>;
  }
  const task = { analysis: analysis.name, inputs, project: met.project, outcomes: met.outcomes };
  const reply = await house.inFlight.join(key, listen, signal, async (onMessage, stop) => {
    const fresh = await house.pool.run(task, onMessage, stop);
    if (fresh.kind === "outcome") await house.cache.write(key, fresh.json);
    return fresh;
  });
  if (reply.kind === "cancelled") return { problem: cancelledProblem };
  return reply.kind === "failed" ? { problem: reply.problem } : (JSON.parse(reply.json) as Outcome<unknown>);
}

async function runNested(
  house: House,
  name: string,
  inputs: unknown,
  listeners: CaseListeners,
  signal: AbortSignal,
  askedBy: readonly string[],
): Promise<NestedOutcome> {
  const { outcome, key, documents, warnings } = await runCase(house, name, inputs, { ...listeners, partial: () => {} }, signal, askedBy);
  return { outcome, key, documents, warnings };
}

/** Names exactly what a result depends on, and nothing that it does not. */
function caseKey(house: House, name: string, inputs: unknown, met: MetNeeds): string {
  const parts = [house.registry.hash, house.version, process.versions.v8, process.arch, needKey(name, inputs), ...met.dependencies];
  return sha256(parts.join("\n"));
}

function withoutRun(inputs: unknown, outcome: Outcome<unknown>): CaseRun {
  return { inputs, defaults: [], documents: [], warnings: [], outcome, key: sha256(canonicalJson(outcome)) };
}
