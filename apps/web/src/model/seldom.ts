import { valueAt } from "./inputs.ts";
import type { Field } from "./schema.ts";

/**
 * Fields that are seldom typed into: they have a standard, bear no role (a condition, a document), and the question does
 * not begin with a value in them. Where the question begins with values, those that it does well without are seldom too,
 * whole groups even with a role in them.
 * None when that is all there is.
 */
export function seldomFields(fields: readonly Field[], base: unknown): readonly Field[] {
  const seldom = fields.filter((field) => isSeldom(field, base));
  return seldom.length === fields.filter((field) => field.kind !== "constant").length ? [] : seldom;
}

function isSeldom(field: Field, base: unknown): boolean {
  if (field.kind === "constant" || field.required || valueAt(base, field.path) !== undefined) return false;
  if (hasValues(base) && inner(field).length > 0) return true;
  return !hasRole(field) && (hasStandard(field) || hasValues(base));
}

function hasValues(base: unknown): boolean {
  return typeof base === "object" && base !== null && Object.keys(base).length > 0;
}

function hasRole(field: Field): boolean {
  return field.role !== undefined || inner(field).some(hasRole);
}

function hasStandard(field: Field): boolean {
  if (field.standard !== undefined) return true;
  const fields = inner(field);
  return field.kind === "group" && fields.length > 0 && fields.every(hasStandard);
}

function inner(field: Field): readonly Field[] {
  return field.kind === "group" ? field.fields : [];
}
