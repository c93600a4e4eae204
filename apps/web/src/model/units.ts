import type { QuantityKind } from "@wingseed/engine";
import {
  type DisplayUnit,
  displayUnit,
  displayUnitNames,
  fromUnit,
  inUnit,
  namedDisplayUnit,
  type UnitSystem,
} from "@wingseed/reports/format";

/** A unit as it is sent ("degC") and as it is shown ("°C"). */
export interface FieldUnit {
  readonly name: string;
  readonly symbol: string;
  readonly unit: DisplayUnit;
}

export interface SplitText {
  readonly number: string;
  readonly unit: FieldUnit;
}

const numberPart = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?`;
const bareNumber = new RegExp(`^${numberPart}$`, "i");
const measured = new RegExp(`^(${numberPart})\\s*(\\D.*)$`, "i");

/** True when a text is a number without a unit. */
export function isBare(text: string): boolean {
  return bareNumber.test(plain(text));
}

/** The unit in which a number of this kind and size [SI] is usually typed. */
export function fieldUnit(kind: QuantityKind, magnitude: number, system: UnitSystem = "si"): FieldUnit {
  const unit = displayUnit(kind, magnitude, { system });
  const name = displayUnitNames(kind).find((one) => namedDisplayUnit(one, kind) === unit) ?? displayUnitNames(kind)[0] ?? "1";
  return { name: sentName(name), symbol: unit.symbol, unit };
}

/** A text as number and unit; undefined when its unit is none that we show, or it is no single number. */
export function splitText(text: string, kind: QuantityKind, system: UnitSystem = "si"): SplitText | undefined {
  const typed = plain(text);
  if (bareNumber.test(typed)) return { number: typed, unit: fieldUnit(kind, 0, system) };
  const [, number = "", unit = ""] = measured.exec(typed) ?? [];
  const known = number === "" ? undefined : knownUnit(unit, kind);
  return known ? { number, unit: known } : undefined;
}

/** Number and unit in one text, as it is sent. */
export function joined(number: string, unit: FieldUnit): string {
  return unit.name === "" ? number : `${number} ${unit.name}`;
}

/** A value [SI] in a unit, with at most six digits. */
export function numberIn(value: number, unit: FieldUnit): string {
  return String(Number(inUnit(value, unit.unit).toPrecision(6)));
}

/** The SI value of a text in a unit that we know. */
export function siValue(text: string, kind: QuantityKind): number | undefined {
  const split = splitText(text, kind);
  return split ? fromUnit(Number(split.number), split.unit.unit) : undefined;
}

/** Typographic signs as the server reads them. */
export function plain(text: string): string {
  return text.trim().replaceAll("\u2212", "-").replaceAll("\u00a0", " ").replaceAll("\u202f", " ");
}

function knownUnit(text: string, kind: QuantityKind): FieldUnit | undefined {
  try {
    const unit = namedDisplayUnit(text, kind);
    const name = displayUnitNames(kind).find((one) => namedDisplayUnit(one, kind) === unit);
    return name === undefined ? undefined : { name: sentName(name), symbol: unit.symbol, unit };
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** Latitudes are typed in degrees, plain numbers without a unit. */
function sentName(name: string): string {
  return name === "1" ? "" : name === "latitude" ? "deg" : name;
}
