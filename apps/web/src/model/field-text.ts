import type { QuantityKind } from "@wingseed/engine";
import type { Field } from "./schema.ts";
import { fromText, shown, unitText } from "./units.ts";

const number = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;
const range = /^(\S+)\s+to\s+(\S+)\s+by\s+(\S+)(?:\s+(\S.*))?$/;
const largestRange = 2000;

/** True when a text carries no unit of its own. */
export function isBare(text: string): boolean {
  return number.test(plain(text));
}

/** A typed quantity as it is sent: with the unit that stands in the field when none was typed. */
export function quantityValue(text: string, quantity: QuantityKind): unknown {
  const typed = plain(text);
  if (!number.test(typed)) return typed;
  return unitText(quantity) === "" ? Number(typed) : `${typed} ${unitText(quantity)}`;
}

/** "0, 5, 10 m/s" or "0 to 45 by 1 m/s" as a list; a unit at the end serves every number before it that has none. */
export function listValue(text: string, quantity: QuantityKind | undefined): readonly unknown[] {
  const stepped = range.exec(plain(text));
  if (stepped && quantity) return steps(stepped, quantity) ?? [plain(text)];
  const parts = text
    .split(/[,;]/)
    .map((part) => plain(part))
    .filter((part) => part !== "");
  if (!quantity) return parts;
  const unit = /^[+-]?[\d.]+(?:e[+-]?\d+)?\s*([^\d\s].*)$/i.exec(parts.at(-1) ?? "")?.[1];
  return parts.map((part) => (unit && number.test(part) ? `${part} ${unit}` : quantityValue(part, quantity)));
}

function steps(match: RegExpExecArray, quantity: QuantityKind): readonly unknown[] | undefined {
  const [from, to, by] = [match[1], match[2], match[3]].map(Number);
  if (from === undefined || to === undefined || by === undefined || !(by > 0) || !(to >= from)) return undefined;
  const count = Math.floor((to - from) / by + 1e-9) + 1;
  if (count > largestRange) return undefined;
  const unit = match[4] ?? unitText(quantity);
  return Array.from({ length: count }, (_, index) => {
    const value = Number((from + index * by).toPrecision(12));
    return unit === "" ? value : `${value} ${unit}`;
  });
}

/** A value as the text of its field, in the units shown. */
export function textOf(field: Field, value: unknown): string {
  if (field.kind === "quantity") return quantityText(value, field.quantity);
  if (field.kind === "list" && Array.isArray(value)) return listText(value, field.quantity);
  if (field.kind === "toggle") return value === true ? "yes" : "no";
  return typeof value === "string" || typeof value === "number" ? String(value) : JSON.stringify(value);
}

/** "12 m/s"; texts stay as they are. */
export function quantityText(value: unknown, quantity: QuantityKind): string {
  if (typeof value !== "number") return typeof value === "string" ? value : JSON.stringify(value);
  const unit = unitText(quantity);
  return unit === "" ? digits(shown(value, quantity)) : `${digits(shown(value, quantity))} ${unit}`;
}

function listText(values: readonly unknown[], quantity: QuantityKind | undefined): string {
  if (!quantity || !values.every((value) => typeof value === "number")) {
    return values.map((value) => (quantity ? quantityText(value, quantity) : String(value))).join(", ");
  }
  const numbers = values.map((value) => Number(shown(value, quantity).toPrecision(9)));
  const unit = unitText(quantity);
  const by = evenStep(numbers);
  const text = by === undefined ? numbers.map(digits).join(", ") : `${digits(numbers[0] ?? 0)} to ${digits(numbers.at(-1) ?? 0)} by ${digits(by)}`;
  return unit === "" ? text : `${text} ${unit}`;
}

function evenStep(values: readonly number[]): number | undefined {
  const [first, second] = values;
  if (values.length < 6 || first === undefined || second === undefined) return undefined;
  const by = Number((second - first).toPrecision(9));
  return by > 0 && values.every((value, index) => Math.abs(value - first - index * by) < by * 1e-6) ? by : undefined;
}

/** A unit of its own, if the text ends in one. */
export function typedUnit(text: string): string | undefined {
  return /^[+-]?[\d.]+(?:e[+-]?\d+)?\s*([^\d\s].*)$/i.exec(plain(text))?.[1];
}

/** The SI value of a typed text where the text is a plain number or in the shown unit; undefined otherwise. */
export function siValue(text: string, quantity: QuantityKind): number | undefined {
  return fromText(plain(text), quantity);
}

function digits(value: number): string {
  return String(Number(value.toPrecision(6)));
}

function plain(text: string): string {
  return text.trim().replace(/\u2212/g, "-").replace(/[\u00a0\u202f]/g, " ");
}
