import type { UnitSystem } from "@wingseed/reports/format";
import { readableText, textOf } from "./field-text.ts";
import { leaves } from "./inputs.ts";
import { type Field, sentenceCase, words } from "./schema.ts";

/** An input by its label and its value as people read it. */
export interface InputWords {
  readonly name: string;
  readonly text: string;
}

/** Tells inputs in words, with the units that the schema knows. Paths are dotted, with or without `inputs.` before them. */
export function inputDescriber(fields: readonly Field[], system: UnitSystem): (path: string, value: unknown) => InputWords {
  const known = new Map(leaves(fields).map((field) => [field.path, field]));
  return (path, value) => {
    const place = inputPath(path);
    const field = known.get(place);
    const name = field ? field.label : sentenceCase(place.split(".").map(words).join(", "));
    return { name, text: field ? valueText(field, value, system) : plainValue(value) };
  };
}

/** A value of a field as people read it. */
export function valueText(field: Field, value: unknown, system: UnitSystem): string {
  if (typeof value === "object" && value !== null && !(field.kind === "list" && Array.isArray(value))) return plainValue(value);
  const text = textOf(field, value, system);
  return field.kind === "quantity" ? readableText(text, field.quantity) : text;
}

export function inputPath(path: string): string {
  return path
    .replace(/^\//, "")
    .replaceAll("/", ".")
    .replace(/^inputs\.?/, "");
}

/** A value without a known kind as text; long lists are cut in the middle. */
function plainValue(value: unknown): string {
  if (typeof value === "string") return value;
  if (typeof value === "number") return String(Number(value.toPrecision(6))).replace("-", "−");
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (value === null || value === undefined) return "none";
  if (Array.isArray(value)) {
    const shown = value.length > 6 ? [...value.slice(0, 3), "…", ...value.slice(-1)] : value;
    return shown.map(plainValue).join(", ");
  }
  return Object.entries(value)
    .map(([name, part]) => `${words(name)} ${plainValue(part)}`)
    .join(", ");
}

/** Every input that holds one value, with its dotted path. */
export function flatInputs(value: unknown, path: string): readonly (readonly [string, unknown])[] {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return [[path, value]];
  return Object.entries(value).flatMap(([name, part]) => flatInputs(part, path === "" ? name : `${path}.${name}`));
}
