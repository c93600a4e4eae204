import type { z } from "zod";
import { candidates } from "./read-inputs.ts";
import { newReading, type WrittenNumber } from "./reading.ts";
import { resolved, type SchemaNode, schemaNode } from "./schema-node.ts";
import { unionBranch } from "./union-branch.ts";
import { dotted, type PathStep, type ValueProblem } from "./value-problem.ts";
import { walkValue } from "./value-walk.ts";

export type ChangeReading =
  | { readonly kind: "value"; readonly value: unknown; readonly numbers: readonly WrittenNumber[] }
  | { readonly kind: "problems"; readonly problems: readonly ValueProblem[] };

/** Reads a text for one place of a document that stands there already: with its unit, and as that place in that document wants it. */
export function readChange(definition: z.ZodType, data: unknown, path: readonly PathStep[], text: string): ChangeReading {
  const root = schemaNode(definition);
  const node = nodeAlong(root, data, path);
  if (node === undefined) return { kind: "problems", problems: [unknownKey(path)] };
  const problems: ValueProblem[] = [];
  for (const [attempt, raw] of candidates(text).entries()) {
    const reading = newReading(root, "text");
    const value = walkValue(reading, node, raw, path);
    if (reading.problems.length === 0) return { kind: "value", value, numbers: [...reading.written.values()] };
    const says = attempt === 0 || reading.problems.some((problem) => problem.kind !== "wrong-type");
    if (says) problems.splice(0, problems.length, ...reading.problems);
  }
  return { kind: "problems", problems };
}

/** The schema of a place, every choice on the way made by what stands in the document. */
function nodeAlong(root: SchemaNode, data: unknown, path: readonly PathStep[]): SchemaNode | undefined {
  let node: SchemaNode | undefined = root;
  let here = data;
  for (const step of path) {
    node = childOf(chosen(node, here, root), step);
    if (node === undefined) return undefined;
    here = typeof here === "object" && here !== null ? Reflect.get(here, step) : undefined;
  }
  return node;
}

function chosen(written: SchemaNode, here: unknown, root: SchemaNode): SchemaNode {
  const node = resolved(written, root);
  const branches = node.anyOf ?? node.oneOf;
  if (branches === undefined) return node;
  const branch = unionBranch(branches, here, root);
  return branch.kind === "branch" ? chosen(branch.node, here, root) : node;
}

function childOf(node: SchemaNode, step: PathStep): SchemaNode | undefined {
  if (node.type === "array") {
    const item = node.prefixItems?.[Number(step)] ?? node.items;
    return typeof item === "object" ? item : undefined;
  }
  if (node.properties !== undefined && Object.hasOwn(node.properties, step)) return node.properties[step];
  return typeof node.additionalProperties === "object" ? node.additionalProperties : undefined;
}

function unknownKey(path: readonly PathStep[]): ValueProblem {
  const name = dotted(path);
  const message = `${name}: this key is not known here`;
  return { kind: "unknown-key", path, place: "key", read: name, allowed: "a key of the definition", message, severity: "error" };
}
