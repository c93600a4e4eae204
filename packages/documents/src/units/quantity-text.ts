import type { QuantityKind, WrittenQuantity } from "@wingseed/engine";
import { expectedOfKind } from "./kind-units.ts";
import { magnitude, readNumber, type Scale, scaleOf, shownText } from "./magnitude.ts";

/** How sure the writer of a number is. */
export type Uncertainty = NonNullable<WrittenQuantity["uncertainty"]>;

export type QuantityReading =
  | { readonly kind: "quantity"; readonly value: number; readonly uncertainty?: Uncertainty }
  | { readonly kind: "problem"; readonly message: string };

const longestText = 200;

/**
 * Reads a quantity of one kind from text into SI: "24 kg", "24 kg ± 1 %", "24 kg ± 0.2 kg", "uniform(0.1 m, 0.2 m)",
 * "triangular(1, 2, 3 m)". After ± stands the half-width of the 95 % interval, absolute or in per cent of the value. The value
 * of a uniform distribution is its middle, that of a triangular one its peak. Anything else returns a sentence with the cure.
 */
export function parseQuantity(text: string, kind: QuantityKind): QuantityReading {
  const shown = shownText(text);
  if (text.length > longestText) return problem(`${shown} is longer than the ${longestText} characters that a quantity may take`);
  const clean = plainSigns(text);
  if (clean === "") return problem(`nothing is written; ${expectedOfKind(kind)}`);
  const named = /^(?<name>[A-Za-z]+)\s*\((?<inside>.*)\)$/u.exec(clean)?.groups;
  if (named?.name !== undefined) return distribution(named.name, named.inside ?? "", kind);
  const bracketed = /^\((?<value>[^()]*)±(?<half>[^()]*)\)\s*(?<unit>.*)$/u.exec(clean)?.groups;
  const parts = bracketed
    ? [`${bracketed.value?.trim()} ${bracketed.unit}`, `${bracketed.half?.trim()} ${bracketed.unit}`]
    : clean.split("±").map((part) => part.trim());
  const [first = "", second] = parts;
  if (parts.length > 2) return problem(`${shown} has more than one ±`);
  return second === undefined ? magnitude(first, kind) : interval(first, second, kind);
}

function interval(first: string, second: string, kind: QuantityKind): QuantityReading {
  const percent = /^(?<number>[^%]*)%$/u.exec(second)?.groups?.number;
  if (percent !== undefined) return percentInterval(first, percent, kind);
  const halfWidth = scaleOf(second, kind, "difference");
  if (halfWidth.kind === "problem") return halfWidth;
  const bareValue = readNumber(first);
  const value =
    bareValue.kind === "number" && bareValue.rest === "" && kind !== "dimensionless"
      ? magnitude(`${first} ${readNumberRest(second)}`, kind)
      : magnitude(first, kind);
  if (value.kind === "problem") return value;
  return withHalfWidth(value.value, inSi(halfWidth), second);
}

function percentInterval(first: string, percent: string, kind: QuantityKind): QuantityReading {
  if (first.endsWith("%")) {
    return problem(
      `"${first} ± ${percent.trim()} %" can mean per cent of the value or points; write a plain number, such as "0.84 ± 0.02"`,
    );
  }
  const value = magnitude(first, kind);
  if (value.kind === "problem") return value;
  if (kind === "temperature") return problem(`a per cent of a temperature has no meaning; write the half-width, as in "15 degC ± 2 K"`);
  if (value.value === 0) return problem(`a per cent of zero is no interval; write the half-width with its unit`);
  const share = readNumber(percent.trim());
  if (share.kind === "problem") return share;
  if (share.rest !== "") return problem(`"${share.rest}" stands between the number and its %`);
  return withHalfWidth(value.value, (Math.abs(value.value) * share.value) / 100, `${percent.trim()} %`);
}

function withHalfWidth(value: number, halfWidth: number, written: string): QuantityReading {
  if (!(halfWidth > 0)) return problem(`"± ${written}" must be more than zero; leave it out where the value is exact`);
  return { kind: "quantity", value, uncertainty: { kind: "normal", halfWidth } };
}

function distribution(name: string, inside: string, kind: QuantityKind): QuantityReading {
  const counts: Readonly<Record<string, number>> = { uniform: 2, triangular: 3 };
  const count = counts[name];
  if (count === undefined) return problem(`"${name}" is no distribution known here; uniform(a, b) and triangular(a, b, c) are`);
  const written = inside.split(",").map((part) => part.trim());
  if (written.length !== count) {
    const cure = /\d,\d/u.test(inside) ? "; a decimal comma is not read, write a decimal point" : "";
    return problem(`${name} takes ${count} values, ${written.length} were read${cure}`);
  }
  const unit = readNumberRest(written.at(-1) ?? "");
  const values: number[] = [];
  for (const part of written) {
    const number = readNumber(part);
    const value = magnitude(number.kind === "number" && number.rest === "" ? `${part} ${unit}` : part, kind);
    if (value.kind === "problem") return value;
    values.push(value.value);
  }
  return ordered(name, values);
}

function ordered(name: string, values: readonly number[]): QuantityReading {
  const [low = 0, second = 0, third] = values;
  const high = third ?? second;
  const rising = third === undefined ? low < high : low <= second && second <= third && low < third;
  if (!rising) return problem(`the values of ${name} must rise from the smallest to the largest`);
  return third === undefined
    ? { kind: "quantity", value: low + (high - low) / 2, uncertainty: { kind: "uniform", low, high } }
    : { kind: "quantity", value: second, uncertainty: { kind: "triangular", low, mode: second, high } };
}

function readNumberRest(text: string): string {
  const number = readNumber(text);
  return number.kind === "number" ? number.rest : "";
}

function inSi(scale: Scale): number {
  return (scale.number * scale.times) / scale.per;
}

/** One spelling for signs and blanks that look alike. */
function plainSigns(text: string): string {
  return text
    .replaceAll("−", "-")
    .replaceAll(/[µμ]/gu, "u")
    .replaceAll(/\+\/?-/gu, "±")
    .replaceAll("²", "2")
    .replaceAll("³", "3")
    .replaceAll("⁴", "4")
    .replaceAll("⁻¹", "-1")
    .replaceAll("\u2126", "Ω")
    .replaceAll(/[\s\u00a0\u2009\u202f]+/gu, " ")
    .trim();
}

function problem(message: string): { readonly kind: "problem"; readonly message: string } {
  return { kind: "problem", message };
}
