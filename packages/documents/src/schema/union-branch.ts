import { isQuantityKind } from "../units/index.ts";
import { resolved, type SchemaNode } from "./schema-node.ts";
import { listedByTradeName } from "./trade-name.ts";

/** Which of several alternatives a value means, so that its slips are told against that one. */
export type UnionBranch =
  | { readonly kind: "branch"; readonly node: SchemaNode }
  | { readonly kind: "several"; readonly nodes: readonly SchemaNode[] }
  | { readonly kind: "wrong-tag"; readonly key: string; readonly allowed: readonly unknown[] }
  /** A bare word where mappings are told apart by the word of one key. */
  | { readonly kind: "tag-word"; readonly key: string; readonly allowed: readonly unknown[]; readonly meant: string | undefined }
  | { readonly kind: "none" };

export function unionBranch(branches: readonly SchemaNode[], raw: unknown, root: SchemaNode): UnionBranch {
  const nodes = branches.flatMap((branch) => alternativesWithin(resolved(branch, root), root));
  const exact = nodes.find((node) => raw !== undefined && (node.const === raw || node.enum?.includes(raw)));
  if (exact !== undefined) return { kind: "branch", node: exact };
  const listed = nodes.find((node) => listedByTradeName(node.enum ?? [node.const], raw) !== undefined);
  if (listed !== undefined) return { kind: "branch", node: listed };
  const fitting = nodes.filter((node) => fitsType(node, raw));
  const tag = isMapping(raw) ? tagOf(fitting, root) : undefined;
  if (tag !== undefined && isMapping(raw)) return taggedBranch(fitting, tag, raw, root);
  const named = isMapping(raw) ? fitting.filter((node) => hasTagOf(node, raw, root)) : [];
  if (named.length === 1 && named[0] !== undefined) return { kind: "branch", node: named[0] };
  const [only] = fitting;
  if (only === undefined) return typeof raw === "string" ? tagWord(nodes, raw, root) : { kind: "none" };
  return fitting.length === 1 ? { kind: "branch", node: only } : { kind: "several", nodes: fitting };
}

/** Alternatives with those inside them, none of them itself a choice. */
export function alternativesWithin(node: SchemaNode, root: SchemaNode): readonly SchemaNode[] {
  const inner = node.anyOf ?? node.oneOf;
  return inner === undefined ? [node] : inner.flatMap((branch) => alternativesWithin(resolved(branch, root), root));
}

/** The property whose constant differs from alternative to alternative, as `kind` does. */
function tagOf(nodes: readonly SchemaNode[], root: SchemaNode): string | undefined {
  const [first] = nodes;
  if (first === undefined || nodes.some((node) => node.type !== "object")) return undefined;
  const keys = Object.keys(first.properties ?? {});
  return keys.find((key) => nodes.every((node) => tagValues(node, key, root).length > 0));
}

function tagValues(node: SchemaNode, key: string, root: SchemaNode): readonly unknown[] {
  const property = node.properties?.[key];
  if (property === undefined) return [];
  const { const: constant, enum: listed } = resolved(property, root);
  return constant === undefined ? (listed ?? []) : [constant];
}

/** True when the mapping has a word by which this alternative is known, though others are known without one. */
function hasTagOf(node: SchemaNode, raw: Readonly<Record<string, unknown>>, root: SchemaNode): boolean {
  return Object.entries(node.properties ?? {}).some(([key, property]) => {
    const { const: constant } = resolved(property, root);
    return typeof constant === "string" && raw[key] === constant;
  });
}

function taggedBranch(nodes: readonly SchemaNode[], key: string, raw: Readonly<Record<string, unknown>>, root: SchemaNode): UnionBranch {
  const node = nodes.find((candidate) => tagValues(candidate, key, root).includes(raw[key]));
  if (node !== undefined) return { kind: "branch", node };
  return { kind: "wrong-tag", key, allowed: nodes.flatMap((candidate) => tagValues(candidate, key, root)) };
}

/** "free" where `{ kind: free }` is meant. */
function tagWord(nodes: readonly SchemaNode[], raw: string, root: SchemaNode): UnionBranch {
  const mappings = nodes.filter((node) => node.type === "object");
  const key = mappings.length === nodes.length ? tagOf(mappings, root) : undefined;
  if (key === undefined) return { kind: "none" };
  const allowed = mappings.flatMap((node) => tagValues(node, key, root));
  return {
    kind: "tag-word",
    key,
    allowed,
    meant: (allowed.find((one) => one === raw) as string | undefined) ?? listedByTradeName(allowed, raw),
  };
}

function fitsType(node: SchemaNode, raw: unknown): boolean {
  if (node.const !== undefined || node.enum !== undefined) return false;
  if (raw === null) return node.type === "null";
  if (Array.isArray(raw)) return node.type === "array" || node.type === undefined;
  if (isNumberNode(node)) {
    const sourced = isMapping(raw) && Object.hasOwn(raw, "value");
    return typeof raw === "number" || sourced || (typeof raw === "string" && isQuantityKind(node.quantity) && looksNumeric(raw));
  }
  if (isMapping(raw)) return node.type === "object" || node.type === undefined;
  return node.type === typeof raw || node.type === undefined;
}

function looksNumeric(text: string): boolean {
  return /^\s*(?:[+\-−(]*[\d.]|uniform|triangular)/u.test(text);
}

function isNumberNode(node: SchemaNode): boolean {
  return node.type === "number" || node.type === "integer";
}

function isMapping(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
