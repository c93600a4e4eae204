import { nearName } from "./near-name.ts";
import { complain, type Reading } from "./reading.ts";
import type { SchemaNode } from "./schema-node.ts";
import { propertyByTradeName } from "./trade-name.ts";
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
    const name = propertyNode(node, key) === undefined ? (propertyByTradeName(node, key) ?? key) : key;
    const known = propertyNode(node, name);
    if (known === undefined) unknownKey(reading, node, key, item, path);
    else if (Object.hasOwn(value, name) || (name !== key && Reflect.get(raw, name) !== undefined)) secondTime(reading, key, name, path);
    else value[name] = walk(name === key ? reading : unitsAsked(reading), known, item, [...path, name]);
  }
  const named = new Set(Object.keys(raw).map((key) => (propertyNode(node, key) === undefined ? propertyByTradeName(node, key) : key)));
  for (const key of node.required ?? []) {
    const given = Object.hasOwn(raw, key) ? Reflect.get(raw, key) !== undefined : named.has(key);
    if (!given) missingKey(reading, node, key, path);
  }
  return value;
}

/** By a name of the trade a plain number is in the trade's unit as likely as in SI: it has to say. */
function unitsAsked(reading: Reading): Reading {
  return reading.mode === "input" ? { ...reading, mode: "text" } : reading;
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

function secondTime(reading: Reading, key: string, name: string, path: readonly PathStep[]): void {
  complain(reading, [...path, key], {
    kind: "duplicate-key",
    place: "key",
    read: key,
    allowed: name,
    sentence: `this gives "${name}" a second time`,
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
