import { type QuantityKind, quantityKinds } from "@wingseed/engine";
import { expectedOfKind, isQuantityKind, parseQuantity, type Uncertainty, unitsOfKind } from "../units/index.ts";
import { complain, type Reading, remember } from "./reading.ts";
import type { SchemaNode } from "./schema-node.ts";
import { dotted, type PathStep, shown } from "./value-problem.ts";

interface ReadNumber {
  readonly text: string;
  readonly value: number;
  readonly uncertainty?: Uncertainty;
}

/** Reads a number, with or without a quantity kind, bare or as a mapping of `value` and `source`. */
export function numberValue(reading: Reading, node: SchemaNode, raw: unknown, path: readonly PathStep[]): unknown {
  const mapping = sourcedMapping(reading, raw, path);
  if (mapping === "refused") return undefined;
  const place = mapping === undefined ? path : [...path, "value"];
  const number = readNumber(reading, node, mapping === undefined ? raw : mapping.value, place);
  if (number === undefined) return undefined;
  if (!withinBounds(reading, node, number, place)) return undefined;
  remember(reading, { path, ...number, ...(mapping?.source === undefined ? {} : { source: mapping.source }) });
  return number.value;
}

interface Sourced {
  readonly value: unknown;
  readonly source?: string;
}

function sourcedMapping(reading: Reading, raw: unknown, path: readonly PathStep[]): Sourced | undefined | "refused" {
  if (typeof raw !== "object" || raw === null || Array.isArray(raw) || !Object.hasOwn(raw, "value")) return undefined;
  const { value, source, ...others } = raw as { readonly value: unknown; readonly source?: unknown };
  for (const key of Object.keys(others)) {
    const cure = Reflect.get(others, key) === null ? "; put a text with a comma in quotes" : "";
    complain(reading, [...path, key], {
      kind: "unknown-key",
      place: "key",
      read: key,
      allowed: "value and source",
      sentence: `a number written as a mapping has the keys value and source${cure}`,
    });
  }
  if (source !== undefined && typeof source !== "string") {
    complain(reading, [...path, "source"], {
      kind: "wrong-type",
      read: shown(source),
      allowed: "a text",
      sentence: `a source is a text; read ${shown(source)}`,
    });
    return "refused";
  }
  return { value, ...(source === undefined ? {} : { source }) };
}

function readNumber(reading: Reading, node: SchemaNode, raw: unknown, path: readonly PathStep[]): ReadNumber | undefined {
  const kind = isQuantityKind(node.quantity) ? node.quantity : undefined;
  if (typeof raw === "number") return plainNumber(reading, node, raw, path, kind);
  if (typeof raw === "string" && kind !== undefined) {
    const quantity = parseQuantity(raw, kind);
    if (quantity.kind === "quantity") {
      return { text: raw, value: quantity.value, ...(quantity.uncertainty ? { uncertainty: quantity.uncertainty } : {}) };
    }
    complain(reading, path, { kind: "wrong-quantity", read: shown(raw), allowed: allowedText(node, kind), sentence: quantity.message });
    return undefined;
  }
  const expectation = kind === undefined ? `a ${node.type === "integer" ? "whole number" : "number"} is expected` : expectedOfKind(kind);
  complain(reading, path, {
    kind: "wrong-type",
    read: shown(raw),
    allowed: allowedText(node, kind),
    sentence: `${expectation}; read ${shown(raw)}`,
  });
  return undefined;
}

function plainNumber(
  reading: Reading,
  node: SchemaNode,
  raw: number,
  path: readonly PathStep[],
  kind: QuantityKind | undefined,
): ReadNumber | undefined {
  const refuse = (sentence: string, code: "wrong-type" | "wrong-quantity"): undefined => {
    complain(reading, path, { kind: code, read: String(raw), allowed: allowedText(node, kind), sentence });
    return undefined;
  };
  if (!Number.isFinite(raw)) return refuse(`a finite number is expected; read ${raw}`, "wrong-type");
  if (node.type === "integer" && !Number.isInteger(raw)) return refuse(`a whole number is expected; read ${raw}`, "wrong-type");
  if (kind !== undefined && kind !== "dimensionless" && reading.mode !== "input") {
    return refuse(`${raw} has no unit; ${expectedOfKind(kind)}`, "wrong-quantity");
  }
  return { text: String(raw), value: raw };
}

function withinBounds(reading: Reading, node: SchemaNode, number: ReadNumber, path: readonly PathStep[]): boolean {
  const spread = number.uncertainty;
  const low = spread !== undefined && spread.kind !== "normal" ? spread.low : number.value;
  const high = spread !== undefined && spread.kind !== "normal" ? spread.high : number.value;
  const inside =
    low >= (node.minimum ?? Number.NEGATIVE_INFINITY) &&
    low > (node.exclusiveMinimum ?? Number.NEGATIVE_INFINITY) &&
    high <= (node.maximum ?? Number.POSITIVE_INFINITY) &&
    high < (node.exclusiveMaximum ?? Number.POSITIVE_INFINITY);
  if (inside) return true;
  const range = boundsInWords(node, unitAsWritten(node, number.text));
  complain(reading, path, {
    kind: "out-of-range",
    read: number.text,
    allowed: range,
    sentence: `${number.text} is out of range; ${range} is allowed${dotted(path) === "" ? " here" : ""}`,
  });
  return false;
}

/** The range of a number in words: "more than 0 kg", "at least 0 and at most 1", in the unit given or the usual one. */
export function boundsInWords(node: SchemaNode, unit?: UnitAsWritten): string {
  const say = (value: number) => bound(node, value, unit);
  const bounds = [
    node.exclusiveMinimum === undefined ? undefined : `more than ${say(node.exclusiveMinimum)}`,
    node.minimum === undefined || node.minimum === Number.MIN_SAFE_INTEGER ? undefined : `at least ${say(node.minimum)}`,
    node.exclusiveMaximum === undefined ? undefined : `less than ${say(node.exclusiveMaximum)}`,
    node.maximum === undefined || node.maximum === Number.MAX_SAFE_INTEGER ? undefined : `at most ${say(node.maximum)}`,
  ];
  return bounds.filter((part) => part !== undefined).join(" and ");
}

function bound(node: SchemaNode, value: number, unit: UnitAsWritten | undefined): string {
  const kind = isQuantityKind(node.quantity) ? node.quantity : undefined;
  if (kind === undefined || (kind === "dimensionless" && unit === undefined)) return String(value);
  if (unit !== undefined) return `${Number(((value - unit.zero) / unit.step).toPrecision(6))} ${unit.name}`;
  const inDegrees = quantityKinds[kind] === "rad" && value !== 0;
  return inDegrees ? `${Number(((value * 180) / Math.PI).toPrecision(6))} deg` : `${value} ${quantityKinds[kind]}`;
}

/** A unit that somebody used: SI value = zero + step × number. */
interface UnitAsWritten {
  readonly name: string;
  readonly zero: number;
  readonly step: number;
}

/** The unit behind a single number, so that the range is told in it; undefined for a bare number or an interval. */
function unitAsWritten(node: SchemaNode, text: string): UnitAsWritten | undefined {
  const name = /^[+-]?[\d.]+(?:[eE][+-]?\d+)?\s*(\S[^±(]*)$/u.exec(text.trim())?.[1];
  if (name === undefined || !isQuantityKind(node.quantity)) return undefined;
  const [none, one] = [parseQuantity(`0 ${name}`, node.quantity), parseQuantity(`1 ${name}`, node.quantity)];
  if (none.kind !== "quantity" || one.kind !== "quantity" || one.value === none.value) return undefined;
  return { name, zero: none.value, step: one.value - none.value };
}

function allowedText(node: SchemaNode, kind: QuantityKind | undefined): string {
  const range = boundsInWords(node);
  const basis = kind === undefined ? (node.type === "integer" ? "a whole number" : "a number") : `${unitsOfKind(kind).noun}`;
  const units = kind === undefined || kind === "dimensionless" ? "" : ` in ${unitsOfKind(kind).usual.join(", ")}`;
  return `${basis}${units}${range === "" ? "" : `, ${range}`}`;
}
