import { dotted, type PathStep, type ProblemKind, type ValueProblem } from "../schema/index.ts";

interface Slip {
  readonly kind: ProblemKind;
  readonly read: string;
  readonly allowed: string;
  readonly sentence: string;
  readonly severity?: "warning";
}

/** One problem at a place of a GeoJSON document. */
export function slipAt(path: readonly PathStep[], { kind, read, allowed, sentence, severity }: Slip): ValueProblem {
  const name = dotted(path);
  return {
    kind,
    path,
    place: "value",
    read,
    allowed,
    message: name === "" ? sentence : `${name}: ${sentence}`,
    severity: severity ?? "error",
  };
}

/** The place of a member, or of what should hold it when it is absent. */
export function memberPlace(path: readonly PathStep[], name: string, value: unknown): readonly PathStep[] {
  return value === undefined ? path : [...path, name];
}

export type Members = Readonly<Record<string, unknown>>;

export function isMembers(value: unknown): value is Members {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
