import type { AnalysisResult } from "@wingseed/engine";
import { problemFamily, type ResultView } from "@wingseed/runner";

/** What a command tells whoever started it. */
export const exitStatus = {
  done: 0,
  /** Done, but a requirement is not met. */
  notMet: 1,
  /** Wrong usage or a wrong document. */
  usage: 2,
  /** No result, with the reason. */
  noResult: 3,
  /** Our mistake. */
  internal: 70,
} as const;

export type ExitStatus = (typeof exitStatus)[keyof typeof exitStatus];

export function statusOf(result: AnalysisResult, view: ResultView): ExitStatus {
  const families = result.cases.flatMap(({ problem }) => (problem ? [problemFamily(problem)] : []));
  if (families.includes("internal")) return exitStatus.internal;
  if (families.includes("usage")) return exitStatus.usage;
  if (families.length === result.cases.length) return exitStatus.noResult;
  return view.cases.some((one) => one?.answer.met === false) ? exitStatus.notMet : exitStatus.done;
}

/** Cannot go on, with a sentence for the reader; ends the command with this status. */
export class Refused extends Error {
  readonly status: ExitStatus;
  constructor(message: string, status: ExitStatus = exitStatus.usage) {
    super(message);
    this.status = status;
  }
}
