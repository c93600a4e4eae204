import type { Problem } from "@wingseed/engine";

/** Who has to act: the person who asked, the physics, the person who stopped it, or we. */
export type ProblemFamily = "usage" | "no-result" | "cancelled" | "internal";

/** What an analysis may answer when the question or a document is wrong, beside what the runner itself refuses. */
const usageKinds: ReadonlySet<string> = new Set([
  "invalid-inputs",
  "contradicting-inputs",
  "document",
  "no-project",
  "aircraft-missing",
  "aircraft-invalid",
  "mission-missing",
  "mission-invalid",
  "payload-unknown",
]);
const internalKinds: ReadonlySet<string> = new Set(["internal-error", "not-finite", "invalid-outputs"]);

export function problemFamily(problem: Problem): ProblemFamily {
  if (problem.kind === "cancelled") return "cancelled";
  if (usageKinds.has(problem.kind)) return "usage";
  return internalKinds.has(problem.kind) ? "internal" : "no-result";
}

export const cancelledProblem: Problem = { kind: "cancelled", message: "Stopped before it was finished." };

export function internalProblem(message: string, details: Record<string, unknown> = {}): Problem {
  return { kind: "internal-error", message, ...details };
}

/** The question itself cannot be put: no such analysis, or a registry that cannot be read. Thrown at the door. */
export class CannotAsk extends Error {
  readonly kind: "unknown-analysis" | "registry";
  readonly suggestions: readonly string[];
  constructor(kind: CannotAsk["kind"], message: string, suggestions: readonly string[] = []) {
    super(message);
    this.name = "CannotAsk";
    this.kind = kind;
    this.suggestions = suggestions;
  }
}
