import { nearName } from "./near-name.ts";
import { complain, type Reading } from "./reading.ts";
import type { SchemaNode } from "./schema-node.ts";
import { type PathStep, shown } from "./value-problem.ts";

type Walk = (reading: Reading, node: SchemaNode, raw: unknown, path: readonly PathStep[]) => unknown;

/** Reads a mapping with known keys, a mapping with free keys, or both. A key that no schema names is always a slip. */
export function mappingValue(reading: Reading, node: SchemaNode, raw: unknown, path: readonly PathStep[], walk: Walk): unknown {
  if (typeof raw !== "object" || raw === null || Array.isArray(raw)) {
    complain(reading, path, {
      kind: "wrong-type",
      read: shown(raw),
      allowed: "a mapping",
      sentence: `a mapping is expected${keysInWords(node)}; read ${shown(raw)}`,
    });
    return undefined;
  }
  const value: Record<string, unknown> = {};
  for (const [key, item] of Object.entries(raw)) {
    if (item === undefined) continue;
    const known = propertyNode(node, key);
    if (known === undefined) unknownKey(reading, node, key, item, path);
    else value[key] = walk(reading, known, item, [...path, key]);
  }
  for (const key of node.required ?? []) {
    if (!Object.hasOwn(raw, key) || Reflect.get(raw, key) === undefined) missingKey(reading, node, key, path);
  }
  return value;
}

function propertyNode(node: SchemaNode, key: string): SchemaNode | undefined {
  if (node.properties !== undefined && Object.hasOwn(node.properties, key)) return node.properties[key];
  if (key === "__proto__") return undefined;
  if (typeof node.additionalProperties === "object") {
    const names = node.propertyNames?.enum;
    return names === undefined || names.includes(key) ? node.additionalProperties : undefined;
  }
  return undefined;
}

function unknownKey(reading: Reading, node: SchemaNode, key: string, item: unknown, path: readonly PathStep[]): void {
  const known = knownKeys(node);
  const near = nearName(key, known);
  const comma = item === null && near === undefined ? " (put a text with a comma in quotes)" : "";
  const cure = near === undefined ? `${keysInWords(node)}${comma}` : `; did you mean "${near}"?`;
  complain(reading, [...path, key], {
    kind: "unknown-key",
    place: "key",
    read: key,
    allowed: known.join(", "),
    sentence: `this key is not known here${cure}`,
  });
}

function missingKey(reading: Reading, node: SchemaNode, key: string, path: readonly PathStep[]): void {
  const meaning = node.properties?.[key]?.description;
  complain(reading, path, {
    kind: "missing-key",
    place: "key",
    read: "nothing",
    allowed: key,
    sentence: `"${key}" is missing${meaning === undefined ? "" : `: ${meaning.replace(/\.$/u, "")}`}`,
  });
}

function knownKeys(node: SchemaNode): readonly string[] {
  const names = node.propertyNames?.enum?.filter((name) => typeof name === "string") ?? [];
  return [...Object.keys(node.properties ?? {}), ...names];
}

function keysInWords(node: SchemaNode): string {
  const known = knownKeys(node);
  return known.length === 0 ? "" : `; the keys are ${known.join(", ")}`;
}
