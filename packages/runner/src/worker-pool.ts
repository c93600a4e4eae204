import { availableParallelism } from "node:os";
import { MessageChannel, receiveMessageOnPort } from "node:worker_threads";
import { Piscina } from "piscina";
import { internalProblem } from "./problems.ts";
import type { WorkerMessage, WorkerReply, WorkerTask } from "./worker-protocol.ts";

/** After a polite request an analysis has this long to stop by itself before its thread is ended [ms]. */
const grace = 2_000;

export type PoolTask = Omit<WorkerTask, "registryUrl" | "cancelled" | "port">;

export interface WorkerPool {
  run(task: PoolTask, onMessage: (message: WorkerMessage) => void, signal: AbortSignal): Promise<WorkerReply>;
  readonly workers: number;
  close(): Promise<void>;
}

/** Real threads, started from the bundled worker and given the address of the registry. */
export function openPool(options: { workerUrl: string; registryUrl: string; workers?: number | undefined }): WorkerPool {
  const workers = options.workers ?? Math.min(8, availableParallelism());
  let pool: Piscina<WorkerTask, WorkerReply> | null = null;
  function started(): Piscina<WorkerTask, WorkerReply> {
    pool ??= new Piscina({ filename: options.workerUrl, minThreads: 0, maxThreads: workers, idleTimeout: 3_600_000, atomics: "disabled" });
    return pool;
  }
  return {
    workers,
    run: (task, onMessage, signal) => runOn(started(), { ...task, registryUrl: options.registryUrl }, onMessage, signal),
    async close() {
      await pool?.destroy();
      pool = null;
    },
  };
}

async function runOn(
  pool: Piscina<WorkerTask, WorkerReply>,
  task: Omit<WorkerTask, "cancelled" | "port">,
  onMessage: (message: WorkerMessage) => void,
  signal: AbortSignal,
): Promise<WorkerReply> {
  if (signal.aborted) return { kind: "cancelled" };
  const { port1: ours, port2: theirs } = new MessageChannel();
  const cancelled = new Int32Array(new SharedArrayBuffer(4));
  const ending = new AbortController();
  let isRunning = false;
  let patience: NodeJS.Timeout | undefined;
  const receive = (message: WorkerMessage) => {
    isRunning = true;
    onMessage(message);
  };
  const stop = () => {
    Atomics.store(cancelled, 0, 1);
    if (!isRunning) ending.abort();
    else patience = setTimeout(() => ending.abort(), grace);
  };
  ours.on("message", receive);
  signal.addEventListener("abort", stop, { once: true });
  try {
    const reply = await pool.run({ ...task, cancelled, port: theirs }, { transferList: [theirs], signal: ending.signal });
    for (let last = receiveMessageOnPort(ours); last; last = receiveMessageOnPort(ours)) receive(last.message as WorkerMessage);
    return reply;
  } catch (error) {
    if (ending.signal.aborted) return { kind: "cancelled" };
    return { kind: "failed", problem: internalProblem(`A worker was lost: ${error instanceof Error ? error.message : String(error)}`) };
  } finally {
    clearTimeout(patience);
    signal.removeEventListener("abort", stop);
    ours.close();
  }
}
