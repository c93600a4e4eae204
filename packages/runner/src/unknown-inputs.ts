import type { JsonSchema } from "./registry.ts";
import { suggestions } from "./suggestions.ts";

export interface InputComplaint {
  /** Dotted, beginning with `inputs`. */
  readonly path: string;
  readonly message: string;
}

/**
 * Inputs whose names the schema does not know. A schema library would drop them in silence, and a mistyped name
 * would give the answer to another question.
 */
export function unknownInputs(schema: JsonSchema, raw: unknown): readonly InputComplaint[] {
  const complaints: InputComplaint[] = [];
  walk(schema, schema, raw, "inputs", complaints);
  return complaints;
}

function walk(root: JsonSchema, schema: unknown, raw: unknown, path: string, complaints: InputComplaint[]): void {
  const shapes = shapesOf(root, schema);
  if (Array.isArray(raw)) {
    const items = shapes.flatMap((shape) => ("items" in shape ? [shape.items] : []));
    if (items.length > 0) for (const [index, item] of raw.entries()) walk(root, { anyOf: items }, item, `${path}.${index}`, complaints);
    return;
  }
  if (typeof raw !== "object" || raw === null) return;
  const objects = shapes.filter((shape) => typeof shape.properties === "object" && shape.properties !== null);
  if (objects.length === 0 || shapes.some((shape) => shape.additionalProperties && shape.additionalProperties !== false)) return;
  const known = new Map<string, unknown[]>();
  for (const shape of objects) {
    for (const [name, property] of Object.entries(shape.properties as Record<string, unknown>)) {
      known.set(name, [...(known.get(name) ?? []), property]);
    }
  }
  for (const [name, value] of Object.entries(raw)) {
    const properties = known.get(name);
    if (properties) walk(root, { anyOf: properties }, value, `${path}.${name}`, complaints);
    else complaints.push({ path: `${path}.${name}`, message: unknownName(name, [...known.keys()]) });
  }
}

function unknownName(name: string, known: readonly string[]): string {
  const near = suggestions(name, known);
  const hint = near.length > 0 ? ` Did you mean ${near.join(" or ")}?` : ` Known: ${known.join(", ")}.`;
  return `there is no input of this name.${hint}`;
}

/** The plain shapes behind references and alternatives. */
function shapesOf(root: JsonSchema, schema: unknown, depth = 0): readonly JsonSchema[] {
  if (typeof schema !== "object" || schema === null || depth > 20) return [];
  const node = schema as JsonSchema;
  if (typeof node.$ref === "string") return shapesOf(root, atPointer(root, node.$ref), depth + 1);
  const parts = [node.anyOf, node.oneOf, node.allOf].flatMap((list) => (Array.isArray(list) ? (list as unknown[]) : []));
  return [node, ...parts.flatMap((part) => shapesOf(root, part, depth + 1))];
}

function atPointer(root: JsonSchema, reference: string): unknown {
  return reference
    .replace(/^#\/?/, "")
    .split("/")
    .filter(Boolean)
    .reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key.replaceAll("~1", "/").replaceAll("~0", "~")], root);
}
