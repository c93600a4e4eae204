import { parse } from "yaml";
import type { z } from "zod";
import { nearName } from "./near-name.ts";
import { readValue } from "./read-value.ts";
import { newReading, type WrittenNumber } from "./reading.ts";
import { resolved, type SchemaNode, schemaNode } from "./schema-node.ts";
import { dotted, type PathStep, type ValueProblem } from "./value-problem.ts";
import { walkValue } from "./value-walk.ts";

export interface InputReading {
  /** What was given, in SI, before the schema fills its defaults. Undefined when there is a problem. */
  readonly inputs: unknown;
  readonly problems: readonly ValueProblem[];
  /** JSON Pointer → number as written, for texts with units and intervals. */
  readonly written: ReadonlyMap<string, WrittenNumber>;
}

/**
 * Reads what a caller gives to an analysis. A plain number is SI, a text carries its unit. `file` is named in front of each
 * message when the inputs came from one.
 */
export function readInputs(schema: z.ZodType, raw: unknown, options: { readonly file?: string } = {}): InputReading {
  const reading = readValue(schema, raw === undefined || raw === null ? {} : raw, "input");
  const { file } = options;
  const problems = reading.problems.map((problem) =>
    file === undefined ? problem : { ...problem, message: `${file}: ${problem.message}` },
  );
  return { inputs: problems.length === 0 ? reading.written : undefined, problems, written: reading.numbers };
}

export type InputTextReading =
  | { readonly kind: "value"; readonly path: readonly PathStep[]; readonly value: unknown }
  | { readonly kind: "problems"; readonly problems: readonly ValueProblem[] };

/**
 * Reads one input given as text on a command line: `inputs.wind.speed` or `wind.speed` or `/wind/speed`, and "10 m/s". Text
 * without a unit is refused where the number has a dimension. A list or a mapping is written as in YAML.
 */
export function readInputText(schema: z.ZodType, place: string, text: string): InputTextReading {
  const root = schemaNode(schema);
  const path = steps(place);
  const found = nodeAt(root, path);
  if (found.kind === "unknown") return { kind: "problems", problems: [unknownPlace(found)] };
  const problemsOfFirst: ValueProblem[] = [];
  for (const [attempt, raw] of candidates(text).entries()) {
    const reading = newReading(root, "text");
    const value = walkValue(reading, found.node, raw, path);
    if (reading.problems.length === 0) return { kind: "value", path, value };
    if (attempt === 0 || reading.problems.some((problem) => problem.kind !== "wrong-type")) {
      problemsOfFirst.splice(0, problemsOfFirst.length, ...reading.problems);
    }
  }
  return { kind: "problems", problems: problemsOfFirst };
}

function steps(place: string): readonly PathStep[] {
  if (place.startsWith("/"))
    return place
      .slice(1)
      .split("/")
      .map((step) => asStep(step.replaceAll("~1", "/").replaceAll("~0", "~")));
  return place
    .replace(/^inputs\./u, "")
    .replaceAll(/\[(\d+)\]/gu, ".$1")
    .split(".")
    .map(asStep);
}

function asStep(text: string): PathStep {
  return /^\d+$/u.test(text) ? Number(text) : text;
}

/** The text itself, then what it says as YAML: a number, a list, true or false. */
export function candidates(text: string): readonly unknown[] {
  try {
    const parsed: unknown = parse(text, { maxAliasCount: 0, logLevel: "silent" });
    return parsed === text ? [text] : [text, parsed];
  } catch {
    return [text];
  }
}

type FoundNode =
  | { readonly kind: "node"; readonly node: SchemaNode }
  | { readonly kind: "unknown"; readonly path: readonly PathStep[]; readonly known: readonly string[] };

function nodeAt(root: SchemaNode, path: readonly PathStep[]): FoundNode {
  let nodes: readonly SchemaNode[] = [root];
  for (const [index, step] of path.entries()) {
    const open = nodes.flatMap((node) => alternativesOf(node, root));
    const next = open.flatMap((node) => childOf(node, step));
    if (next.length === 0) {
      return {
        kind: "unknown",
        path: path.slice(0, index + 1),
        known: [...new Set(open.flatMap((node) => Object.keys(node.properties ?? {})))],
      };
    }
    nodes = next;
  }
  const [only, ...others] = nodes;
  return { kind: "node", node: others.length === 0 && only !== undefined ? only : { anyOf: nodes } };
}

function alternativesOf(node: SchemaNode, root: SchemaNode): readonly SchemaNode[] {
  const whole = resolved(node, root);
  return (whole.anyOf ?? whole.oneOf)?.flatMap((branch) => alternativesOf(branch, root)) ?? [whole];
}

function childOf(node: SchemaNode, step: PathStep): readonly SchemaNode[] {
  if (node.type === "array" && typeof step === "number") {
    const item = node.prefixItems?.[step] ?? node.items;
    return typeof item === "object" ? [item] : [];
  }
  const property = node.properties !== undefined && Object.hasOwn(node.properties, step) ? node.properties[step] : undefined;
  if (property !== undefined) return [property];
  return typeof node.additionalProperties === "object" ? [node.additionalProperties] : [];
}

function unknownPlace(found: Extract<FoundNode, { readonly kind: "unknown" }>): ValueProblem {
  const near = nearName(String(found.path.at(-1)), found.known);
  const cure = near === undefined ? `; the inputs here are ${found.known.join(", ") || "none"}` : `; did you mean "${near}"?`;
  return {
    kind: "unknown-key",
    path: found.path,
    place: "key",
    read: dotted(found.path),
    allowed: found.known.join(", "),
    message: `${dotted(found.path)}: this input is not known${cure}`,
    severity: "error",
  };
}
