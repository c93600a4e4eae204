import type { Analysis, Context, Outcome, Problem } from "@wingseed/engine";
import { firstNotFinite } from "./finiteness.ts";
import { needKey } from "./need-key.ts";
import type { WorkerMessage, WorkerReply, WorkerTask } from "./worker-protocol.ts";

/** Progress closer together than this is not sent [ms]; the last of a run may be lost, which no one sees. */
const progressInterval = 40;

const registries = new Map<string, Promise<ReadonlyMap<string, Analysis>>>();

/** Runs one case of one analysis. The registry comes from the address the host gives, so any registry works. */
export default async function runTask(task: WorkerTask): Promise<WorkerReply> {
  try {
    send(task, { kind: "started" });
    const analysis = (await registryAt(task.registryUrl)).get(task.analysis);
    if (!analysis) return failed("internal-error", `The registry in the worker has no analysis "${task.analysis}".`);
    const outcome = analysis.run(task.project, task.inputs, contextFor(task)) as Outcome<unknown>;
    return checked(analysis, outcome);
  } catch (error) {
    if (error instanceof Error && error.name === "Cancelled") return { kind: "cancelled" };
    if (error instanceof NotFinite) return failed("not-finite", error.message);
    const stack = error instanceof Error ? error.stack : undefined;
    return failed("internal-error", error instanceof Error ? error.message : String(error), { stack });
  } finally {
    task.port.close();
  }
}

function registryAt(url: string): Promise<ReadonlyMap<string, Analysis>> {
  let loading = registries.get(url);
  if (!loading) {
    loading = import(url).then((module: { analyses: readonly Analysis[] }) => new Map(module.analyses.map((item) => [item.name, item])));
    registries.set(url, loading);
  }
  return loading;
}

function contextFor(task: WorkerTask): Context<unknown> {
  const outcomes = new Map(task.outcomes);
  let lastSent = Number.NEGATIVE_INFINITY;
  return {
    progress(done, total, doing) {
      const now = performance.now();
      if (now - lastSent < progressInterval && done < total) return;
      lastSent = now;
      send(task, { kind: "progress", done, total, doing });
    },
    cancelled: () => Atomics.load(task.cancelled, 0) !== 0,
    partial(outputs, statedError) {
      refuseNotFinite({ outputs });
      send(task, { kind: "partial", outputs: JSON.parse(JSON.stringify(outputs)), statedError });
    },
    analysis(name, inputs) {
      const outcome = outcomes.get(needKey(name, inputs));
      if (!outcome) throw new Error(`"${task.analysis}" asked for "${name}" with inputs that it did not declare in its needs.`);
      return outcome;
    },
  };
}

function checked(analysis: Analysis, outcome: Outcome<unknown>): WorkerReply {
  refuseNotFinite(outcome);
  if (outcome.outputs !== undefined) {
    const parsed = analysis.outputs.safeParse(outcome.outputs);
    if (!parsed.success) {
      const first = parsed.error.issues[0];
      const place = first ? `${first.path.map(String).join(".")}: ${first.message}` : "";
      return failed("invalid-outputs", `"${analysis.name}" gave outputs that its own schema does not allow: ${place}`);
    }
  } else if (!outcome.problem) {
    return failed("invalid-outputs", `"${analysis.name}" gave neither outputs nor a problem.`);
  }
  return { kind: "outcome", json: JSON.stringify(outcome) };
}

class NotFinite extends Error {}

function refuseNotFinite(value: unknown): void {
  const pointer = firstNotFinite(value);
  if (pointer !== null) throw new NotFinite(`A result held a number that is not finite, at ${pointer}. Nothing of it is shown.`);
}

function failed(kind: string, message: string, details: Record<string, unknown> = {}): WorkerReply {
  const problem: Problem = { kind, message, ...details };
  return { kind: "failed", problem };
}

function send(task: WorkerTask, message: WorkerMessage): void {
  task.port.postMessage(message);
}
