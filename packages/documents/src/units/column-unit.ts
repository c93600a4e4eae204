import { type QuantityKind, quantityKinds } from "@wingseed/engine";
import { measures } from "./magnitude.ts";
import { readUnit } from "./unit-expression.ts";

/** Unit of a whole column: SI value = number × times ÷ per + offset. */
export interface ColumnUnit {
  readonly kind: "unit";
  /** What the column may measure; several where a unit serves for several, as a degree does. */
  readonly kinds: readonly QuantityKind[];
  readonly times: number;
  readonly per: number;
  /** Zero of the unit in SI: of an absolute temperature in degrees [K]. */
  readonly offset: number;
}

const plain: ColumnUnit = { kind: "unit", kinds: ["dimensionless"], times: 1, per: 1, offset: 0 };
const kelvin: ColumnUnit = { kind: "unit", kinds: ["temperature", "temperatureDifference"], times: 1, per: 1, offset: 0 };
const celsius: ColumnUnit = { ...kelvin, offset: 273.15 };
const fahrenheit: ColumnUnit = { ...kelvin, times: 5, per: 9, offset: (459.67 * 5) / 9 };
const named: Readonly<Record<string, ColumnUnit>> = {
  "1": plain,
  "-": plain,
  "−": plain,
  "%": { ...plain, per: 100 },
  K: kelvin,
  degC: celsius,
  "°C": celsius,
  degF: fahrenheit,
  "°F": fahrenheit,
};

/** Reads the unit of a column as it stands in square brackets; null where there are none. Returns a sentence otherwise. */
export function readColumnUnit(text: string | null): ColumnUnit | { readonly kind: "problem"; readonly message: string } {
  if (text === null) return plain;
  const own = Object.hasOwn(named, text) ? named[text] : undefined;
  if (own !== undefined) return own;
  const unit = readUnit(text.replaceAll("²", "2").replaceAll("³", "3").replaceAll(/[µμ]/gu, "u").replaceAll("\u2126", "Ω"));
  if (unit.kind === "problem") return unit;
  const kinds = Object.keys(quantityKinds).filter((kind): kind is QuantityKind => measures(unit, kind as QuantityKind));
  if (kinds.length === 0) return { kind: "problem", message: `[${text}] measures nothing that a table here can hold` };
  return { kind: "unit", kinds, times: unit.times, per: unit.per, offset: 0 };
}
