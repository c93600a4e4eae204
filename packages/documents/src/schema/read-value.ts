import type { z } from "zod";
import { type FileReference, newReading, type ReadingMode, type WrittenNumber } from "./reading.ts";
import { schemaNode } from "./schema-node.ts";
import { dotted, type PathStep, pointer, shown, type ValueProblem } from "./value-problem.ts";
import { walkValue } from "./value-walk.ts";

export interface ValueReading {
  /** What was written, in SI, without the definition's defaults. */
  readonly written: unknown;
  /** The same as the definition returns it, with its defaults; undefined when there is a problem. */
  readonly value: unknown;
  readonly problems: readonly ValueProblem[];
  /** JSON Pointer → number as written. */
  readonly numbers: ReadonlyMap<string, WrittenNumber>;
  /** Texts that name other files of the project. */
  readonly references: readonly FileReference[];
}

/** Reads a value against a definition: units, keys, types and ranges here, then the rules that only the definition knows. */
export function readValue(definition: z.ZodType, raw: unknown, mode: ReadingMode): ValueReading {
  const root = schemaNode(definition);
  const reading = newReading(root, mode);
  const written = walkValue(reading, root, raw, []);
  const result = definition.safeParse(written);
  const { problems, written: numbers, references } = reading;
  if (result.success) return { written, value: problems.length === 0 ? result.data : undefined, problems, numbers, references };
  const further = result.error.issues.flatMap((issue) => ruleProblem(issue, written, problems, mode));
  return { written, value: undefined, problems: [...problems, ...further], numbers, references };
}

/**
 * A complaint of the definition that is not just the echo of one already told. Rules about which inputs go together are
 * not judged while one of them cannot be read; a document is told everything at once.
 */
function ruleProblem(issue: z.core.$ZodIssue, written: unknown, told: readonly ValueProblem[], mode: ReadingMode): readonly ValueProblem[] {
  const path = issue.path.map((step): PathStep => (typeof step === "number" ? step : String(step)));
  const place = pointer(path);
  const related = told.some((problem) => {
    const other = pointer(problem.path);
    return within(place, other) || ((issue.code !== "custom" || mode === "input") && within(other, place));
  });
  if (related) return [];
  const name = dotted(path);
  const read = shown(valueAt(written, path));
  const message = name === "" ? issue.message : `${name}: ${issue.message}`;
  return [{ kind: "rule", path, place: "value", read, allowed: issue.message, message, severity: "error" }];
}

function within(inner: string, outer: string): boolean {
  return inner === outer || inner.startsWith(`${outer}/`);
}

function valueAt(value: unknown, path: readonly PathStep[]): unknown {
  return path.reduce<unknown>(
    (current, step) => (typeof current === "object" && current !== null ? Reflect.get(current, step) : undefined),
    value,
  );
}
