import type { UnitSystem } from "@wingseed/reports/format";
import { chosenVariant, type Drafts, inputsOf, rowCount, rowFields, valueAt } from "./inputs.ts";
import type { Field, RowsField } from "./schema.ts";
import { type FieldUnit, fieldUnit, numberIn, siValue, splitText } from "./units.ts";

/** True for a column whose values fit into one cell of a table. */
export function isCellField(field: Field): boolean {
  if (field.kind === "variants") return optionsOfCell(field) !== undefined;
  return field.kind !== "group" && field.kind !== "rows" && field.kind !== "constant";
}

/** The words that a cell may hold, undefined where it is typed into. */
export function optionsOfCell(field: Field): readonly string[] | undefined {
  if (field.kind === "toggle") return ["yes", "no"];
  if (field.kind === "choice") return field.options.map(String);
  if (field.kind !== "variants") return undefined;
  const words = field.variants.flatMap((variant) => optionsOfCell(variant.field) ?? []);
  return words.length > 0 ? words : undefined;
}

/** True for a column that may hold more than fits into its cell: a section written out, where the cell takes the name of one. */
export function opensBeside(field: Field): boolean {
  if (field.kind === "variants") return field.variants.some((variant) => optionsOfCell(variant.field) === undefined);
  return !isCellField(field);
}

/** The way in which a cell's value is given when no word of the cell is it. */
export function openedVariant(field: Field, base: unknown, drafts: Drafts): string | undefined {
  if (field.kind !== "variants") return undefined;
  const chosen = chosenVariant(field, valueAt(base, field.path), drafts);
  return chosen && optionsOfCell(chosen.field) === undefined ? chosen.name : undefined;
}

/** What is typed when a word is chosen in a cell. */
export function wordDrafts(field: Field, word: string): Drafts {
  if (field.kind !== "variants") return { [field.path]: word };
  const variant = field.variants.find((one) => optionsOfCell(one.field)?.includes(word));
  return { [`${field.path}~`]: variant?.name ?? "", [field.path]: word };
}

/** True when a list is best shown as a table: more than one column, or nothing that opens. */
export function isGrid(field: RowsField): boolean {
  return field.columns.filter(isCellField).length > 0 && field.columns.every((column) => isCellField(column) || !column.required);
}

/** Sign of the unit in which a column is shown. */
export function columnUnit(column: Field, system: UnitSystem): string {
  return column.kind === "quantity" ? fieldUnit(column.quantity, 0, system).symbol : "";
}

/** A value as its cell shows it: in the unit of the column where that can be, else as it was written. */
export function cellText(field: Field, text: string, system: UnitSystem): { readonly text: string; readonly unit?: FieldUnit } {
  if (field.kind !== "quantity") return { text };
  const unit = fieldUnit(field.quantity, 0, system);
  const split = text === "" ? undefined : splitText(text, field.quantity, system);
  if (!split) return { text, unit };
  if (split.unit.name === unit.name) return { text: split.number, unit };
  const value = siValue(text, field.quantity);
  return { text: value === undefined ? text : numberIn(value, unit), unit };
}

/** The rows of a list as they stand now, as values. */
export function rowValues(field: RowsField, base: unknown, drafts: Drafts): readonly unknown[] {
  const rows = valueAt(base, field.path);
  return Array.from({ length: rowCount(field, rows, drafts) }, (_, index) =>
    inputsOf(rowFields(field, index), Array.isArray(rows) ? rows[index] : undefined, drafts),
  );
}
