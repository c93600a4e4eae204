import type { AnalysisResult, Case } from "@wingseed/engine";
import { type CaseListeners, type House, runCase } from "./case-run.ts";
import { InFlight } from "./in-flight.ts";
import { internalProblem } from "./problems.ts";
import { type Progress, progressOf } from "./progress.ts";
import type { ProjectSource } from "./project-source.ts";
import { type CaseOrigin, provenanceOf, warningsOf } from "./provenance.ts";
import { loadRegistry, type Registry } from "./registry.ts";
import { type CachePlace, openCache } from "./result-cache.ts";
import { type ResultView, viewOf } from "./view.ts";
import { openPool } from "./worker-pool.ts";

export interface RunnerOptions {
  /** `file:` URL of the module that exports `analyses` and `z`; the workers load the same. */
  readonly registryUrl: string;
  /** `file:` URL of the bundled worker. */
  readonly workerUrl: string;
  /** @defaultValue the number of processors, at most 8 */
  readonly workers?: number | undefined;
  /** null keeps results in memory only. */
  readonly cacheDirectory: string | null;
  /** null when only analyses that need no project are asked. */
  readonly project: ProjectSource | null;
  /** Version of the program, for keys and provenance. */
  readonly version: string;
}

export interface RunRequest {
  readonly analysis: string;
  /** One entry a case, as asked: numbers in SI or in text with units. */
  readonly cases: readonly unknown[];
  readonly onProgress?: (progress: Progress) => void;
  /** A coarse answer of one case: a result with that case alone. */
  readonly onPartial?: (partial: { index: number; result: AnalysisResult; statedError: string }) => void;
  readonly signal?: AbortSignal | undefined;
}

export interface Runner {
  readonly registry: Registry;
  readonly cachePlace: CachePlace;
  readonly workers: number;
  /** @throws CannotAsk when there is no such analysis; everything else is told in the result */
  run(request: RunRequest): Promise<AnalysisResult>;
  /** The faces' view of a result: answer, figures and limits of each case. */
  view(result: AnalysisResult): ResultView;
  close(): Promise<void>;
}

/** Runs any analysis of a registry: the one way from a question to a result for every face. */
export async function createRunner(options: RunnerOptions): Promise<Runner> {
  const [registry, cache] = await Promise.all([loadRegistry(options.registryUrl), openCache(options.cacheDirectory)]);
  const pool = openPool(options);
  const house: House = { ...options, registry, cache, pool, inFlight: new InFlight() };
  return {
    registry,
    cachePlace: cache.place,
    workers: pool.workers,
    run: (request) => run(house, request),
    view: (result) => viewOf(registry.named(result.analysis), result),
    close: () => pool.close(),
  };
}

async function run(house: House, request: RunRequest): Promise<AnalysisResult> {
  const analysis = house.registry.named(request.analysis);
  const signal = request.signal ?? new AbortController().signal;
  const progress = progressOf(request.cases.length, request.onProgress ?? (() => {}));
  const result = (origins: readonly CaseOrigin[]): AnalysisResult => ({
    analysis: analysis.name,
    cases: origins.map(asCase),
    warnings: warningsOf(origins),
    provenance: provenanceOf({ version: house.version, registryHash: house.registry.hash }, analysis, origins),
  });
  const origins = await inOrder(request.cases, house.pool.workers, async (raw, index): Promise<CaseOrigin> => {
    const listeners: CaseListeners = {
      progress: (done, total, doing) => progress.step(index, done, total, doing),
      partial: (origin, statedError) => request.onPartial?.({ index, result: result([origin]), statedError }),
    };
    const finished = await runCase(house, analysis.name, raw, listeners, signal).catch((error: unknown): CaseOrigin => {
      const message = error instanceof Error ? error.message : String(error);
      return { inputs: raw, defaults: [], documents: [], warnings: [], outcome: { problem: internalProblem(message) } };
    });
    progress.finish(index);
    return finished;
  });
  return result(origins);
}

function asCase({ inputs, outcome }: CaseOrigin): Case {
  return outcome.problem ? { inputs, problem: outcome.problem } : { inputs, outputs: outcome.outputs };
}

/** Maps in parallel, at most so many at a time; the order of the results is the order of the items. */
async function inOrder<Item, Value>(
  items: readonly Item[],
  atOnce: number,
  map: (item: Item, index: number) => Promise<Value>,
): Promise<Value[]> {
  const results: Value[] = new Array(items.length);
  const queue = items.entries();
  async function take(): Promise<void> {
    for (const [index, item] of queue) results[index] = await map(item, index);
  }
  await Promise.all(Array.from({ length: Math.min(atOnce, items.length) }, take));
  return results;
}
