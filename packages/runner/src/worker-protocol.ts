import type { MessagePort } from "node:worker_threads";
import type { Outcome, Problem, ProjectView } from "@wingseed/engine";

/** All that a worker gets for one case; nothing else reaches the analysis. */
export interface WorkerTask {
  readonly registryUrl: string;
  readonly analysis: string;
  readonly inputs: unknown;
  readonly project: ProjectView;
  /** Outcomes of declared analyses, by `needKey`. */
  readonly outcomes: readonly (readonly [string, Outcome<unknown>])[];
  /** One element over shared memory; not 0 once nobody wants the result. */
  readonly cancelled: Int32Array;
  readonly port: MessagePort;
}

export type WorkerMessage =
  | { readonly kind: "started" }
  | { readonly kind: "progress"; readonly done: number; readonly total: number; readonly doing: string }
  | { readonly kind: "partial"; readonly outputs: unknown; readonly statedError: string };

/** `json` is the outcome as JSON text: what is stored, and what every reader parses, so that fresh and kept results are alike. */
export type WorkerReply =
  | { readonly kind: "outcome"; readonly json: string }
  | { readonly kind: "cancelled" }
  | { readonly kind: "failed"; readonly problem: Problem };
