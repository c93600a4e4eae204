import type { Page, ValidationRow } from "@wingseed/reports/draw";
import type { AnalysisEntry, Catalogue, Computed, ProjectEntry, RunEvent, RunProblem } from "../model/catalogue.ts";
import type { Client } from "../model/run-store.ts";

const gone: RunProblem = {
  kind: "server-gone",
  message: "Wingseed has stopped; nothing typed is lost. Start it again with “wingseed start”, then ask again here.",
};

/** What the server offers: read once at the start. */
export async function loadCatalogue(): Promise<Catalogue> {
  const [analyses, pages, project, validation] = await Promise.all([
    read("api/analyses"),
    read("api/pages"),
    read("api/project"),
    // An installation may come without it; then nothing is said about it.
    read("api/validation").catch(() => []),
  ]);
  return {
    analyses: analyses as readonly AnalysisEntry[],
    pages: pages as readonly Page[],
    project: project as ProjectEntry,
    validation: validation as readonly ValidationRow[],
  };
}

async function read(path: string): Promise<unknown> {
  const response = await fetch(path, { headers: { accept: "application/json" } });
  if (!response.ok) throw new Error(`The server answered ${response.status} to ${path}.`);
  return response.json();
}

/** Runs over HTTP with their events as a stream. */
export const httpClient: Client = {
  ask(analysis, inputs, on) {
    const leave = new AbortController();
    let close: (() => void) | undefined;
    begin(analysis, inputs, leave.signal)
      .then((begun) => {
        if ("problems" in begun) on({ kind: "problem", problems: begun.problems });
        else if (leave.signal.aborted) cancel(begun.id);
        else close = listen(begun.id, on);
      })
      .catch(() => {
        if (!leave.signal.aborted) on({ kind: "problem", problems: [gone] });
      });
    return () => {
      leave.abort();
      close?.();
    };
  },
};

async function begin(
  analysis: string,
  inputs: unknown,
  _signal: AbortSignal,
): Promise<{ readonly id: string } | { readonly problems: readonly RunProblem[] }> {
  // Not aborted on leaving: the answer brings the id by which the run is cancelled.
  const response = await fetch("api/runs", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ analysis, inputs }),
  });
  const body = (await response.json()) as {
    readonly id?: string;
    readonly problems?: readonly RunProblem[];
    readonly problem?: RunProblem;
  };
  if (response.ok && body.id !== undefined) return { id: body.id };
  return {
    problems:
      body.problems ??
      (body.problem ? [body.problem] : [{ kind: "refused", message: `The server refused this with status ${response.status}.` }]),
  };
}

function cancel(id: string): void {
  fetch(`api/runs/${encodeURIComponent(id)}`, { method: "DELETE" }).catch(() => undefined);
}

function listen(id: string, on: (event: RunEvent) => void): () => void {
  const source = new EventSource(`api/runs/${encodeURIComponent(id)}/events`);
  const data = <Body>(event: MessageEvent<string>) => JSON.parse(event.data) as Body;
  source.addEventListener("progress", (event) => on({ kind: "progress", progress: data(event) }));
  source.addEventListener("partial", (event) => {
    const { statedError, ...computed } = data<Computed & { readonly statedError: string }>(event);
    on({ kind: "partial", computed, statedError });
  });
  source.addEventListener("result", (event) => {
    source.close();
    on({ kind: "result", computed: data(event) });
  });
  source.addEventListener("problem", (event) => {
    source.close();
    const body = data<RunProblem & { readonly problems?: readonly RunProblem[] }>(event);
    on({ kind: "problem", problems: body.problems ?? [body] });
  });
  source.addEventListener("error", () => {
    if (source.readyState === EventSource.CLOSED) return;
    source.close();
    on({ kind: "problem", problems: [gone] });
  });
  return () => {
    source.close();
    cancel(id);
  };
}
