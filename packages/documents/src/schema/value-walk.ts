import { isQuantityKind, unitsOfKind } from "../units/index.ts";
import { mappingValue } from "./mapping-value.ts";
import { numberValue } from "./number-value.ts";
import { complain, newReading, type Reading } from "./reading.ts";
import { resolved, type SchemaNode } from "./schema-node.ts";
import { listedByTradeName } from "./trade-name.ts";
import { alternativesWithin, unionBranch } from "./union-branch.ts";
import { alternatives, type PathStep, shown } from "./value-problem.ts";

/**
 * Reads a value against a schema: text quantities become SI numbers, everything that does not fit is gathered. What cannot
 * be read comes back as undefined.
 */
export function walkValue(reading: Reading, written: SchemaNode, raw: unknown, path: readonly PathStep[]): unknown {
  const node = resolved(written, reading.root);
  const branches = node.anyOf ?? node.oneOf;
  if (branches !== undefined) return unionValue(reading, branches, raw, path);
  if (node.const !== undefined || node.enum !== undefined) return listedValue(reading, node, raw, path);
  switch (node.type) {
    case "number":
    case "integer":
      return numberValue(reading, node, raw, path);
    case "object":
      return mappingValue(reading, node, raw, path, walkValue);
    case "array":
      return listValue(reading, node, raw, path);
    case "string":
      return textValue(reading, node, raw, path);
    case "boolean":
      return typeof raw === "boolean" ? raw : wrongType(reading, raw, path, "true or false");
    case "null":
      return raw === null ? null : wrongType(reading, raw, path, "nothing (null)");
    default:
      return raw;
  }
}

function wrongType(reading: Reading, raw: unknown, path: readonly PathStep[], allowed: string): undefined {
  complain(reading, path, { kind: "wrong-type", read: shown(raw), allowed, sentence: `${allowed} is expected; read ${shown(raw)}` });
  return undefined;
}

function listedValue(reading: Reading, node: SchemaNode, raw: unknown, path: readonly PathStep[]): unknown {
  const values = node.const === undefined ? (node.enum ?? []) : [node.const];
  if (values.includes(raw)) return raw;
  const meant = reading.mode === "document" ? undefined : listedByTradeName(values, raw);
  if (meant !== undefined) return meant;
  const allowed = alternatives(values);
  complain(reading, path, { kind: "not-allowed", read: shown(raw), allowed, sentence: `${allowed} is allowed; read ${shown(raw)}` });
  return undefined;
}

function textValue(reading: Reading, node: SchemaNode, raw: unknown, path: readonly PathStep[]): unknown {
  if (typeof raw !== "string") {
    const quoted = typeof raw === "number" || typeof raw === "boolean" ? ` (put it in quotes: "${raw}")` : "";
    complain(reading, path, {
      kind: "wrong-type",
      read: shown(raw),
      allowed: "a text",
      sentence: `a text is expected; read ${shown(raw)}${quoted}`,
    });
    return undefined;
  }
  const { minLength = 0, maxLength = Number.POSITIVE_INFINITY } = node;
  if (raw.length < minLength || raw.length > maxLength) {
    const allowed =
      raw.length > maxLength
        ? `a text of at most ${maxLength} characters`
        : minLength === 1
          ? "a text that is not empty"
          : `a text of at least ${minLength} characters`;
    complain(reading, path, { kind: "out-of-range", read: shown(raw), allowed, sentence: `${allowed} is expected; read ${shown(raw)}` });
    return undefined;
  }
  if (node.reference !== undefined) reading.references.push({ path, kind: node.reference, target: raw });
  // A pattern is left to the definition, whose own sentence says more than the expression does.
  return raw;
}

/** One entry, or several with commas between, where a list is meant: says how it is written. */
function noList(reading: Reading, raw: unknown, path: readonly PathStep[]): undefined {
  const entries = typeof raw === "number" || (typeof raw === "string" && /^[^[\]{}"]{1,40}$/u.test(raw)) ? `, as in [${raw}]` : "";
  const sentence = `a list is expected${entries}; read ${shown(raw)}`;
  complain(reading, path, { kind: "wrong-type", read: shown(raw), allowed: "a list", sentence });
  return undefined;
}

function listValue(reading: Reading, node: SchemaNode, raw: unknown, path: readonly PathStep[]): unknown {
  if (!Array.isArray(raw)) return noList(reading, raw, path);
  const { minItems = 0, maxItems = Number.POSITIVE_INFINITY } = node;
  if (raw.length < minItems || raw.length > maxItems) {
    const count = raw.length < minItems ? minItems : maxItems;
    const bound = minItems === maxItems ? "" : raw.length < minItems ? "at least " : "at most ";
    const allowed = `${bound}${count} ${count === 1 ? "entry" : "entries"}`;
    const sentence = `a list of ${allowed} is expected; read ${shown(raw)}`;
    complain(reading, path, { kind: "out-of-range", read: shown(raw), allowed, sentence });
  }
  return raw.map((item: unknown, index) => {
    const rest = typeof node.items === "object" ? node.items : {};
    return walkValue(reading, node.prefixItems?.[index] ?? rest, item, [...path, index]);
  });
}

function unionValue(reading: Reading, branches: readonly SchemaNode[], raw: unknown, path: readonly PathStep[]): unknown {
  const branch = unionBranch(branches, raw, reading.root);
  switch (branch.kind) {
    case "branch":
      return walkValue(reading, branch.node, raw, path);
    case "several":
      return firstThatFits(reading, branch.nodes, raw, path);
    case "wrong-tag": {
      const tag: unknown = (raw as Readonly<Record<string, unknown>>)[branch.key];
      const allowed = alternatives(branch.allowed);
      const place = tag === undefined ? path : [...path, branch.key];
      const sentence = tag === undefined ? `${branch.key} is missing; ${allowed} is allowed` : `${allowed} is allowed; read ${shown(tag)}`;
      complain(reading, place, { kind: tag === undefined ? "missing-key" : "not-allowed", read: shown(tag), allowed, sentence });
      return undefined;
    }
    case "tag-word": {
      const { key, meant, allowed } = branch;
      if (meant !== undefined && reading.mode !== "document") return unionValue(reading, branches, { [key]: meant }, path);
      const words = alternatives(allowed);
      const sentence = `a mapping with ${key}: ${words} is expected; read ${shown(raw)}`;
      complain(reading, path, { kind: "wrong-type", read: shown(raw), allowed: words, sentence });
      return undefined;
    }
    case "none":
      return wrongType(reading, raw, path, expected(branches, reading.root));
  }
}

function expected(branches: readonly SchemaNode[], root: SchemaNode): string {
  const words = branches.flatMap((node) => alternativesWithin(resolved(node, root), root)).map(inWords);
  return [...new Set(words)].join(" or ");
}

function firstThatFits(reading: Reading, nodes: readonly SchemaNode[], raw: unknown, path: readonly PathStep[]): unknown {
  let best: { readonly trial: Reading; readonly value: unknown } | undefined;
  for (const node of nodes) {
    const trial = newReading(reading.root, reading.mode);
    const value = walkValue(trial, node, raw, path);
    if (best === undefined || misfit(trial, path) < misfit(best.trial, path)) best = { trial, value };
    if (trial.problems.length === 0) break;
  }
  if (best === undefined) return undefined;
  reading.problems.push(...best.trial.problems);
  reading.references.push(...best.trial.references);
  for (const [pointer, number] of best.trial.written) reading.written.set(pointer, number);
  return best.value;
}

/** How badly a value fits an alternative: keys unknown or missing in the value itself weigh before all that lies deeper. */
function misfit({ problems }: Reading, path: readonly PathStep[]): number {
  const own = problems.filter(
    (problem) => problem.place === "key" && problem.path.length <= path.length + (problem.kind === "missing-key" ? 0 : 1),
  );
  return own.length * 1e6 + problems.length;
}

function inWords(node: SchemaNode): string {
  if (node.const !== undefined) return alternatives([node.const]);
  if (node.enum !== undefined) return alternatives(node.enum);
  if (isQuantityKind(node.quantity)) return `${unitsOfKind(node.quantity).noun} (as in "${unitsOfKind(node.quantity).example}")`;
  const names = {
    object: "a mapping",
    array: "a list",
    string: "a text",
    number: "a number",
    integer: "a whole number",
    boolean: "true or false",
    null: "nothing",
  };
  return node.type === undefined ? "something else" : names[node.type];
}
