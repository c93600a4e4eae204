import { createStore, type StoreApi } from "zustand/vanilla";
import type { Computed, Progress, RunEvent, RunProblem } from "./catalogue.ts";

/** A picture and the inputs it belongs to. */
export interface Shown {
  readonly computed: Computed;
  readonly grade: "coarse" | "exact";
  readonly statedError?: string;
  /** Canonical inputs, to tell whether the picture still answers the question. */
  readonly asked: string;
  /** The inputs as they were sent. */
  readonly inputs: Record<string, unknown>;
}

/** One question's latest run. `shown` survives later runs, so that the last good picture stays. */
export interface Run {
  readonly analysis: string;
  readonly asked: string;
  readonly inputs: Record<string, unknown>;
  readonly running: boolean;
  readonly stopped: boolean;
  readonly progress?: Progress;
  readonly problems: readonly RunProblem[];
  /** How long the last finished run of this question took [ms]. */
  readonly took?: number;
  readonly shown?: Shown;
}

export type PageState = "empty" | "coarse" | "exact" | "working" | "stale" | "error";

/** What the run store asks of the server. `ask` calls back until it has delivered a result or problems; the returned function cancels. */
export interface Client {
  ask(analysis: string, inputs: unknown, on: (event: RunEvent) => void): () => void;
}

export interface RunStore {
  readonly runs: Readonly<Record<string, Run>>;
  /** Starts a run for a question and cancels the one before; the same inputs already answered or under way are left alone unless `again`. */
  ask(question: string, analysis: string, inputs: Record<string, unknown>, again?: boolean): void;
  /** Cancels a question's run; what has arrived stays. */
  stop(question: string): void;
}

/** The runs of every question. No DOM; the clock [ms] is the caller's. */
export function createRunStore(client: Client, now: () => number): StoreApi<RunStore> {
  const cancels = new Map<string, () => void>();
  return createStore<RunStore>()((set, read) => {
    const change = (question: string, asked: string, next: (run: Run) => Run) =>
      set(({ runs }) => {
        const run = runs[question];
        return run && run.asked === asked && run.running ? { runs: { ...runs, [question]: next(run) } } : { runs };
      });
    const cancel = (question: string) => {
      cancels.get(question)?.();
      cancels.delete(question);
    };
    return {
      runs: {},
      ask(question, analysis, inputs, again = false) {
        const asked = askedText(analysis, inputs);
        const before = read().runs[question];
        if (!again && before?.asked === asked && (before.running || before.shown?.asked === asked || before.problems.length > 0)) return;
        cancel(question);
        const shown = before?.shown;
        const took = before?.took;
        const kept = { ...(shown ? { shown } : {}), ...(took === undefined ? {} : { took }) };
        const run: Run = { analysis, asked, inputs, running: true, stopped: false, problems: [], ...kept };
        const begun = now();
        set(({ runs }) => ({ runs: { ...runs, [question]: run } }));
        let live = true;
        const stop = client.ask(analysis, inputs, (event) => {
          if (live) change(question, asked, (current) => after(current, event, now() - begun));
        });
        cancels.set(question, () => {
          live = false;
          stop();
        });
      },
      stop(question) {
        cancel(question);
        set(({ runs }) => {
          const run = runs[question];
          return run?.running ? { runs: { ...runs, [question]: { ...withoutProgress(run), running: false, stopped: true } } } : { runs };
        });
      },
    };
  });
}

function after(run: Run, event: RunEvent, took: number): Run {
  switch (event.kind) {
    case "progress":
      return { ...run, progress: event.progress };
    case "partial":
      return {
        ...run,
        shown: { computed: event.computed, grade: "coarse", statedError: event.statedError, asked: run.asked, inputs: run.inputs },
      };
    case "result": {
      const refused = event.computed.result.cases.flatMap((one) => (one.problem ? [one.problem] : []));
      if (refused.length > 0 && refused.length === event.computed.result.cases.length) {
        return { ...withoutProgress(run), running: false, problems: refused.flatMap(singly) };
      }
      return {
        ...withoutProgress(run),
        running: false,
        took,
        shown: { computed: event.computed, grade: "exact", asked: run.asked, inputs: run.inputs },
      };
    }
    case "problem":
      return { ...withoutProgress(run), running: false, problems: event.problems.flatMap(singly) };
  }
}

/** A refusal that lists several inputs, one problem an input, its path as the form knows it. */
function singly(problem: RunProblem): readonly RunProblem[] {
  const listed = problem.problems;
  const problems = Array.isArray(listed) && listed.length > 0 ? (listed as readonly RunProblem[]) : [problem];
  return problems.map((one) => {
    const path = typeof one.path === "string" ? one.path.replace(/^inputs\.?/, "") : undefined;
    return {
      ...one,
      message: path === undefined ? one.message : withoutPlace(one.message, path),
      kind: one.kind ?? problem.kind,
      ...(path === undefined ? {} : { path }),
    };
  });
}

/** The sentence without the place before it, which stands before it on the page: `points[0].thrust`, or the group that it is in. */
function withoutPlace(message: string, path: string): string {
  const place = path.replaceAll(/\.(\d+)(?=\.|$)/g, "[$1]");
  const around = place.replace(/\.?[^.[\]]+$/, "");
  const before = [path, place, around].find((one) => one !== "" && message.startsWith(`${one}: `));
  return before === undefined ? message : message.slice(before.length + 2);
}

function withoutProgress({ progress: _progress, ...run }: Run): Run {
  return run;
}

/** The one word by which a page says how far it is with what it asks now. */
export function pageState(run: Run | undefined, asked: string): PageState {
  if (!run) return "empty";
  if (run.asked !== asked) return "working";
  if (run.problems.length > 0) return "error";
  const current = run.shown?.asked === asked ? run.shown : undefined;
  if (run.running) return current?.grade === "coarse" ? "coarse" : "working";
  if (current) return current.grade;
  return run.shown ? "stale" : "empty";
}

/** True when the picture does not belong to the inputs on the page and nothing newer is on its way. */
export function isStale(run: Run): boolean {
  return run.shown !== undefined && run.shown.asked !== run.asked && !run.running;
}

/** What a run was asked, as one text. */
export function askedText(analysis: string, inputs: Record<string, unknown>): string {
  return `${analysis} ${canonical(inputs)}`;
}

/** Equal inputs give equal texts, whatever the order of their keys. */
export function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) =>
    typeof part === "object" && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
