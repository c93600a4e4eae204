import { randomUUID } from "node:crypto";
import type { Problem } from "@wingseed/engine";
import type { Runner, RunRequest } from "@wingseed/runner";

export type RunEvent = { readonly name: "progress" | "partial" | "result" | "problem"; readonly data: unknown };

/** One run that a page has asked for. Whoever begins to listen late gets what is still of use. */
interface Run {
  readonly stop: AbortController;
  readonly listeners: Set<(event: RunEvent) => void>;
  progress?: RunEvent;
  partial?: RunEvent;
  ended?: RunEvent;
}

/** This many ended runs can still be listened to; older ones are forgotten. */
const rememberedRuns = 32;

/** The runs under way and those that ended last. */
export class RunBook {
  readonly #runs = new Map<string, Run>();
  readonly #runner: Runner;

  constructor(runner: Runner) {
    this.#runner = runner;
  }

  /** Starts a run and gives the name by which it is listened to and stopped. */
  begin(request: Pick<RunRequest, "analysis" | "cases">): string {
    const id = randomUUID();
    const run: Run = { stop: new AbortController(), listeners: new Set() };
    this.#runs.set(id, run);
    this.#forgetOldest();
    this.#follow(run, request);
    return id;
  }

  /** Hands over what has happened and what will, until the end; undefined when there is no such run. The returned function leaves. */
  listen(id: string, on: (event: RunEvent) => void): (() => void) | undefined {
    const run = this.#runs.get(id);
    if (!run) return undefined;
    if (run.ended) {
      on(run.ended);
      return () => {};
    }
    if (run.progress) on(run.progress);
    if (run.partial) on(run.partial);
    run.listeners.add(on);
    return () => {
      run.listeners.delete(on);
      // Nobody waits any longer, so nobody needs it.
      if (run.listeners.size === 0) run.stop.abort();
    };
  }

  /** Stops a run; false when there is no such run. */
  stop(id: string): boolean {
    const run = this.#runs.get(id);
    run?.stop.abort();
    return run !== undefined;
  }

  stopAll(): void {
    for (const run of this.#runs.values()) run.stop.abort();
  }

  async #follow(run: Run, request: Pick<RunRequest, "analysis" | "cases">): Promise<void> {
    const tell = (event: RunEvent) => {
      for (const listener of run.listeners) listener(event);
    };
    try {
      const result = await this.#runner.run({
        ...request,
        signal: run.stop.signal,
        onProgress: (progress) => {
          run.progress = { name: "progress", data: progress };
          tell(run.progress);
        },
        onPartial: (partial) => {
          run.partial = { name: "partial", data: { ...partial, view: this.#runner.view(partial.result) } };
          tell(run.partial);
        },
      });
      const stopped = result.cases.every(({ problem }) => problem?.kind === "cancelled");
      run.ended = stopped
        ? { name: "problem", data: result.cases[0]?.problem ?? {} }
        : { name: "result", data: { result, view: this.#runner.view(result) } };
    } catch (error) {
      const problem: Problem = { kind: "internal-error", message: error instanceof Error ? error.message : String(error) };
      run.ended = { name: "problem", data: problem };
    }
    tell(run.ended);
    run.listeners.clear();
  }

  #forgetOldest(): void {
    const ended = [...this.#runs].filter(([, run]) => run.ended);
    for (const [id] of ended.slice(0, Math.max(0, ended.length - rememberedRuns))) this.#runs.delete(id);
  }
}
