import { listValue, quantityValue, textOf } from "./field-text.ts";
import type { Field, RowsField, VariantsField } from "./schema.ts";

/** What was typed, by dotted path; an empty text unsets the input. `path~` holds a variant's name, `path#` a number of rows. */
export type Drafts = Readonly<Record<string, string>>;

/** Inputs as JSON: what the drafts say, else what the base holds; the rest is left to the server's standards. */
export function inputsOf(fields: readonly Field[], base: unknown, drafts: Drafts): Record<string, unknown> {
  const inputs: Record<string, unknown> = {};
  for (const field of fields) {
    const value = fieldValue(field, at(base, leaf(field.path)), drafts);
    if (value !== undefined) inputs[leaf(field.path)] = value;
  }
  return { ...unknownParts(fields, base), ...inputs };
}

/** What a file gave under names that no field has: sent as it is, so that it is refused by name and not lost. */
function unknownParts(fields: readonly Field[], base: unknown): Record<string, unknown> {
  if (typeof base !== "object" || base === null || Array.isArray(base)) return {};
  const known = new Set(fields.map((field) => leaf(field.path)));
  return Object.fromEntries(Object.entries(base).filter(([name]) => !known.has(name)));
}

/** The value of one field, undefined when it is left to the standard. */
function fieldValue(field: Field, base: unknown, drafts: Drafts): unknown {
  switch (field.kind) {
    case "constant":
      return field.value;
    case "group": {
      const value = inputsOf(field.fields, base, drafts);
      const given = Object.keys(value).length > field.fields.filter((child) => child.kind === "constant").length;
      return given || base !== undefined || field.required ? value : undefined;
    }
    case "rows":
      return rowsValue(field, base, drafts);
    case "variants":
      return variantValue(field, base, drafts);
    default: {
      const draft = drafts[field.path];
      if (draft === undefined) return base;
      return draft.trim() === "" ? undefined : leafValue(field, draft);
    }
  }
}

function leafValue(field: Field, draft: string): unknown {
  if (field.kind === "quantity") return quantityValue(draft, field.quantity);
  if (field.kind === "list") return listValue(draft, field.quantity);
  if (field.kind === "toggle") return draft === "yes";
  if (field.kind === "choice") return field.options.find((option) => String(option) === draft) ?? draft;
  return draft;
}

function rowsValue(field: RowsField, base: unknown, drafts: Drafts): unknown {
  const count = rowCount(field, base, drafts);
  if (count === 0 && drafts[`${field.path}#`] === undefined && !Array.isArray(base)) return undefined;
  return Array.from({ length: count }, (_, index) => inputsOf(rowFields(field, index), at(base, index), drafts));
}

export function rowCount(field: RowsField, base: unknown, drafts: Drafts): number {
  const drafted = Number(drafts[`${field.path}#`]);
  if (Number.isInteger(drafted) && drafts[`${field.path}#`] !== undefined) return Math.min(Math.max(drafted, 0), 200);
  return Array.isArray(base) ? base.length : 0;
}

/** The columns of one row as fields with full paths. */
export function rowFields(field: RowsField, index: number): readonly Field[] {
  return field.columns.map((column) => moved(column, `${field.path}.${index}.`));
}

function moved(field: Field, prefix: string): Field {
  const path = prefix + field.path;
  if (field.kind === "group") return { ...field, path, fields: field.fields.map((child) => moved(child, prefix)) };
  if (field.kind === "variants") {
    return { ...field, path, variants: field.variants.map((variant) => ({ ...variant, field: moved(variant.field, prefix) })) };
  }
  return { ...field, path };
}

function variantValue(field: VariantsField, base: unknown, drafts: Drafts): unknown {
  const chosen = chosenVariant(field, base, drafts);
  if (!chosen) return undefined;
  const drafted = drafts[`${field.path}~`];
  const isForeign = drafted === undefined && typeof base === "string" && chosen.field.kind === "group" && !fits(chosen.field, base);
  // A word that no variant knows is sent as it is, so that it is refused by name and not lost.
  if (isForeign && !Object.keys(drafts).some((path) => path.startsWith(`${field.path}.`))) return base;
  return fieldValue(chosen.field, drafted === undefined || fits(chosen.field, base) ? base : sharedPart(chosen.field, base), drafts);
}

/** What the variant before and the one chosen both have, so that it is sent as the form shows it. */
function sharedPart(field: Field, base: unknown): unknown {
  if (field.kind !== "group" || typeof base !== "object" || base === null || Array.isArray(base)) return undefined;
  const known = new Set(field.fields.filter((child) => child.kind !== "constant").map((child) => leaf(child.path)));
  return Object.fromEntries(Object.entries(base).filter(([name]) => known.has(name)));
}

/** The variant named by the drafts, else the one that the base value fits; undefined when unset. */
export function chosenVariant(field: VariantsField, base: unknown, drafts: Drafts): VariantsField["variants"][number] | undefined {
  const drafted = drafts[`${field.path}~`];
  if (drafted !== undefined) return field.variants.find((variant) => variant.name === drafted);
  if (base !== undefined) return field.variants.find((variant) => fits(variant.field, base)) ?? field.variants[0];
  const touched = Object.keys(drafts).some((path) => path === field.path || path.startsWith(`${field.path}.`));
  return field.required || touched ? field.variants[0] : undefined;
}

function fits(field: Field, value: unknown): boolean {
  if (field.kind === "constant") return field.value === value;
  if (field.kind === "list" || field.kind === "rows") return Array.isArray(value);
  if (field.kind === "group") {
    if (typeof value === "string")
      return field.fields.some((child) => child.kind === "constant" && plainWord(child.value) === plainWord(value));
    if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
    const known = new Set(field.fields.map((child) => leaf(child.path)));
    const constants = field.fields.filter((child) => child.kind === "constant");
    return Object.keys(value).every((name) => known.has(name)) && constants.every((child) => fits(child, at(value, leaf(child.path))));
  }
  if (field.kind === "quantity") return typeof value === "number" || typeof value === "string";
  if (field.kind === "toggle") return typeof value === "boolean";
  if (field.kind === "choice") return field.options.some((option) => option === value);
  return typeof value === "string";
}

/** "Lifting line" and "lifting-line" are one word. */
function plainWord(word: unknown): string {
  return String(word)
    .replaceAll(/[\s_-]/g, "")
    .toLowerCase();
}

/** What stands in a field: the draft, or the base value as text; empty when unset. */
export function shownText(field: Field, base: unknown, drafts: Drafts): string {
  const draft = drafts[field.path];
  if (draft !== undefined) return draft;
  const value = valueAt(base, field.path);
  return value === undefined ? "" : textOf(field, value);
}

/** The value under a dotted path. */
export function valueAt(base: unknown, path: string): unknown {
  return path.split(".").reduce<unknown>((value, name) => at(value, name), base);
}

function at(value: unknown, name: string | number): unknown {
  return typeof value === "object" && value !== null ? (value as Record<string | number, unknown>)[name] : undefined;
}

function leaf(path: string): string {
  return path.split(".").at(-1) ?? path;
}

/**
 * Of the fields that hold one text, those in use: of an input that can be given in several ways, the way chosen. Where the
 * form begins with values, groups that neither these nor the drafts say anything about are out of use.
 */
export function leavesInUse(fields: readonly Field[], base: unknown, drafts: Drafts): readonly Field[] {
  const begins = typeof base === "object" && base !== null && Object.keys(base).length > 0;
  return fields.flatMap((field) => {
    if (field.kind === "group") {
      const told = valueAt(base, field.path) !== undefined || Object.keys(drafts).some((path) => path.startsWith(`${field.path}.`));
      return field.required || told || !begins ? leavesInUse(field.fields, base, drafts) : [];
    }
    if (field.kind === "variants") {
      const chosen = chosenVariant(field, valueAt(base, field.path), drafts);
      return chosen ? leavesInUse([chosen.field], base, drafts) : leaves([field]);
    }
    return leaves([field]);
  });
}

/** Every field that holds one text, variants and groups opened, rows left out. */
export function leaves(fields: readonly Field[]): readonly Field[] {
  return fields.flatMap((field) => {
    if (field.kind === "group") return leaves(field.fields);
    if (field.kind === "variants") return field.variants.flatMap((variant) => leaves([variant.field]));
    return field.kind === "rows" || field.kind === "constant" ? [] : [field];
  });
}
