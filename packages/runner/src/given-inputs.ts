import { readInputs } from "@wingseed/documents";
import type { Analysis, Problem } from "@wingseed/engine";

export type GivenInputs =
  | { readonly inputs: unknown; readonly defaults: readonly Default[]; readonly problem?: never }
  | { readonly problem: Problem; readonly inputs?: never };

export interface Default {
  /** Dotted, within the inputs. */
  readonly path: string;
  readonly value: unknown;
  readonly because: string;
}

type InputProblem = ReturnType<typeof readInputs>["problems"][number];

interface InputComplaint {
  /** Dotted, beginning with `inputs`. */
  readonly path: string;
  readonly message: string;
}

/** From what was asked (units in text allowed) to what the analysis takes, with every default that was filled in. */
export function givenInputs(analysis: Analysis, raw: unknown): GivenInputs {
  const read = readInputs(analysis.inputs, raw ?? {});
  const complaints = read.problems.filter((problem) => problem.severity !== "warning");
  if (complaints.length > 0) {
    return { problem: invalid(complaints.map((complaint) => ({ path: dotted(placeOf(complaint)), message: complaint.message }))) };
  }
  const parsed = analysis.inputs.safeParse(read.inputs);
  if (parsed.success) return { inputs: parsed.data, defaults: filledIn(read.inputs ?? {}, parsed.data, "") };
  return {
    problem: invalid(
      parsed.error.issues.map((issue) => {
        const place = issue.path.length > 0 ? `${issue.path.map(String).join(".")}: ` : "";
        return { path: dotted(issue.path), message: place + withRead(issue.message, valueAt(raw, issue.path)) };
      }),
    ),
  };
}

/** Where the cure goes: what is missing goes under its own key, not into the mapping that lacks it. */
function placeOf({ kind, place, path, allowed }: InputProblem): readonly PropertyKey[] {
  return kind === "missing-key" && place === "key" ? [...path, allowed] : path;
}

function dotted(path: readonly PropertyKey[]): string {
  return ["inputs", ...path.map(String)].join(".");
}

function invalid(problems: readonly InputComplaint[]): Problem {
  return { kind: "invalid-inputs", message: problems.map(({ message }) => message).join("\n"), problems };
}

function withRead(message: string, read: unknown): string {
  if (read === undefined) return message;
  const text = JSON.stringify(read) ?? String(read);
  return `${message} (read ${text.length > 80 ? `${text.slice(0, 77)}…` : text})`;
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((node, key) => (node as Record<PropertyKey, unknown> | null | undefined)?.[key], value);
}

/** Every value of the parsed inputs that the asker did not give. */
function filledIn(raw: unknown, parsed: unknown, path: string): readonly Default[] {
  if (typeof parsed !== "object" || parsed === null || Array.isArray(parsed)) return [];
  const given = typeof raw === "object" && raw !== null ? (raw as Record<string, unknown>) : {};
  return Object.entries(parsed).flatMap(([name, value]) => {
    if (value === undefined) return [];
    const place = path === "" ? name : `${path}.${name}`;
    if (given[name] === undefined) return [{ path: place, value, because: "not given: the default of the analysis" }];
    return filledIn(given[name], value, place);
  });
}
