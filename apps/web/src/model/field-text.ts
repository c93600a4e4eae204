import type { QuantityKind } from "@wingseed/engine";
import type { UnitSystem } from "@wingseed/reports/format";
import type { Field } from "./schema.ts";
import { type FieldUnit, fieldUnit, isBare, joined, numberIn, plain, splitText } from "./units.ts";

const range = /^(\S+)\s+to\s+(\S+)\s+by\s+(\S+)(?:\s+(\S.*))?$/;
const unitAtEnd = /^[+-]?[\d.]+(?:e[+-]?\d+)?\s*([^\d\s].*)$/i;
const largestRange = 2000;

/** A typed quantity as it is sent: with its usual unit when none was typed, else exactly as typed. */
export function quantityValue(text: string, quantity: QuantityKind): unknown {
  const typed = plain(text);
  if (!isBare(typed)) return typed;
  const unit = fieldUnit(quantity, 0);
  return unit.name === "" ? Number(typed) : joined(typed, unit);
}

/** "0, 5, 10 m/s" or "0 to 45 by 1 m/s" as a list; a unit at the end serves every number before it that has none. */
export function listValue(text: string, quantity: QuantityKind | undefined): readonly unknown[] {
  const stepped = range.exec(plain(text));
  if (stepped && quantity) return steps(stepped, quantity) ?? [plain(text)];
  const parts = text
    .split(/[,;]/)
    .map(plain)
    .filter((part) => part !== "");
  if (!quantity) return parts;
  const unit = unitAtEnd.exec(parts.at(-1) ?? "")?.[1];
  return parts.map((part) => (unit && isBare(part) ? `${part} ${unit}` : quantityValue(part, quantity)));
}

function steps(match: RegExpExecArray, quantity: QuantityKind): readonly unknown[] | undefined {
  const [from, to, by] = [match[1], match[2], match[3]].map(Number);
  if (from === undefined || to === undefined || by === undefined || !(by > 0) || !(to >= from)) return undefined;
  const count = Math.floor((to - from) / by + 1e-9) + 1;
  if (count > largestRange) return undefined;
  return Array.from({ length: count }, (_, index) => {
    const value = String(Number((from + index * by).toPrecision(12)));
    return match[4] ? `${value} ${match[4]}` : quantityValue(value, quantity);
  });
}

/** A value as one text, in the unit people read. */
export function textOf(field: Field, value: unknown, system: UnitSystem = "si"): string {
  if (field.kind === "quantity") return quantityText(value, field.quantity, system);
  if (field.kind === "list" && Array.isArray(value)) return listText(value, field.quantity, system);
  if (field.kind === "toggle") return value === true ? "yes" : "no";
  if (value === null) return "none";
  return typeof value === "string" || typeof value === "number" ? String(value) : JSON.stringify(value);
}

/** "12 m/s"; texts stay as they are. */
function quantityText(value: unknown, quantity: QuantityKind, system: UnitSystem): string {
  if (typeof value !== "number") return typeof value === "string" ? value : JSON.stringify(value);
  const unit = fieldUnit(quantity, value, system);
  return joined(numberIn(value, unit), unit);
}

function listText(values: readonly unknown[], quantity: QuantityKind | undefined, system: UnitSystem): string {
  const numbers = values.filter((value) => typeof value === "number");
  if (!quantity || numbers.length === 0) return values.map(String).join(", ");
  const unit = fieldUnit(quantity, Math.max(...numbers.map(Math.abs)), system);
  if (numbers.length < values.length) {
    return values.map((value) => (typeof value === "number" ? joined(numberIn(value, unit), unit) : String(value))).join(", ");
  }
  return joined(
    evenly(numbers.map((value) => Number(numberIn(value, unit)))) ?? numbers.map((value) => numberIn(value, unit)).join(", "),
    unit,
  );
}

/** "0 to 45 by 1" for six or more evenly spaced numbers. */
function evenly(values: readonly number[]): string | undefined {
  const [first, second] = values;
  if (values.length < 6 || first === undefined || second === undefined) return undefined;
  const by = Number((second - first).toPrecision(6));
  const even = by > 0 && values.every((value, index) => Math.abs(value - first - index * by) < by * 1e-3);
  return even ? `${first} to ${values.at(-1)} by ${by}` : undefined;
}

/** A text with its unit sign as people read it: "20 °C" for "20 degC". */
export function readableText(text: string, quantity: QuantityKind | undefined): string {
  const split = quantity ? splitText(text, quantity) : undefined;
  if (!split) return text;
  return `${split.number.replace("-", "−")}${gap(split.unit)}${split.unit.symbol}`;
}

function gap(unit: FieldUnit): string {
  return unit.symbol === "" || unit.unit.close ? "" : "\u00a0";
}
