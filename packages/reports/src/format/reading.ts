import type { QuantityKind } from "@wingseed/engine";
import { displayUnit, inUnit, type UnitChoice } from "./display-unit.ts";
import { decade, fixedText, halfWidthDecimals, placedText, significantText } from "./number.ts";
import type { DisplayUnit } from "./units.ts";

export interface ReadingOptions extends UnitChoice {
  /** 95 % half-width [SI]. */
  readonly halfWidth?: number;
  /** 95 % bounds [SI]; shown as such when they are lopsided by more than a fifth, else as a half-width. */
  readonly interval?: { readonly low: number; readonly high: number };
}

/** One number as people read it. */
export interface ReadingText {
  /** Number, unit and datum: "300 m above sea". */
  readonly text: string;
  /** The number alone, with its interval. */
  readonly number: string;
  /** The unit's sign, empty for plain numbers. */
  readonly unit: string;
  /** For a voice: "300 metres above sea". */
  readonly spoken: string;
  /** Words that must stand near it wherever there is room. */
  readonly tags: readonly string[];
}

/**
 * A number with its unit, three significant figures if no interval is known, else cut where its half-width ends.
 * @param value [SI]
 * @throws RangeError for a number that is not finite or a unit that does not fit the kind.
 */
export function formatReading(value: number, kind: QuantityKind, options: ReadingOptions = {}): ReadingText {
  const unit = displayUnit(kind, value, options);
  const shown = inUnit(value, unit);
  const spread = spreadOf(value, unit, options);
  const number = spread ? spreadText(shown, spread) : plainText(shown, kind, unit);
  const tail = options.datum ? ` ${options.datum}` : "";
  const gap = unit.symbol === "" || unit.close ? "" : "\u00a0";
  const lopsided = spread?.kind === "bounds";
  return {
    text: lopsided
      ? `${number.value}${gap}${unit.symbol}, ${number.extra}${tail}`
      : `${number.value}${number.extra}${gap}${unit.symbol}${tail}`,
    number: lopsided ? `${number.value}, ${number.extra}` : number.value + number.extra,
    unit: unit.symbol,
    spoken: spokenText(number, unit, lopsided) + tail,
    tags: spread ? [] : ["no interval"],
  };
}

/** The number alone in a given unit, without interval: ticks, cells. */
export function plainNumber(shown: number, kind: QuantityKind, unit: DisplayUnit): string {
  return plainText(shown, kind, unit).value;
}

type Spread = { readonly kind: "half"; readonly width: number } | { readonly kind: "bounds"; readonly low: number; readonly high: number };
interface NumberText {
  readonly value: string;
  readonly extra: string;
}

function plainText(shown: number, kind: QuantityKind, unit: DisplayUnit): NumberText {
  if (unit.decimals !== undefined) return { value: fixedText(shown, unit.decimals), extra: "" };
  const isCount = kind === "dimensionless" && unit.scale === 1 && Number.isInteger(shown) && Math.abs(shown) < 1e7;
  return { value: isCount ? fixedText(shown, 0) : significantText(shown, unit.figures ?? 3), extra: "" };
}

function spreadOf(value: number, unit: DisplayUnit, options: ReadingOptions): Spread | undefined {
  if (options.halfWidth !== undefined && options.halfWidth > 0) return { kind: "half", width: options.halfWidth / unit.scale };
  const interval = options.interval;
  if (!interval || interval.high <= interval.low) return undefined;
  const [down, up] = [value - interval.low, interval.high - value];
  const lopsided = Math.abs(up - down) > 0.2 * Math.max(Math.abs(up), Math.abs(down));
  if (!lopsided) return { kind: "half", width: (up + down) / 2 / unit.scale };
  return { kind: "bounds", low: inUnit(interval.low, unit), high: inUnit(interval.high, unit) };
}

function spreadText(shown: number, spread: Spread): NumberText {
  if (spread.kind === "half") {
    const decimals = halfWidthDecimals(spread.width);
    return { value: placedText(shown, decimals), extra: ` ± ${placedText(spread.width, decimals)}` };
  }
  const half = (spread.high - spread.low) / 2;
  const decimals = decade(half) > 6 ? 0 : halfWidthDecimals(half);
  return { value: placedText(shown, decimals), extra: `${placedText(spread.low, decimals)} to ${placedText(spread.high, decimals)}` };
}

function spokenText(number: NumberText, unit: DisplayUnit, lopsided: boolean): string {
  const name = number.value === "1" && number.extra === "" ? unit.spoken[0] : unit.spoken[1];
  const named = (digits: string) => (name ? `${digits} ${name}` : digits);
  if (lopsided) return `${named(voiced(number.value))}, ${voiced(number.extra)}`;
  return named(voiced(number.value + number.extra));
}

function voiced(text: string): string {
  return text
    .replaceAll("\u202f", "")
    .replaceAll("±", "plus or minus")
    .replace(/\s×\s10(⁻?)([⁰¹²³⁴⁵⁶⁷⁸⁹]+)/u, (_, minus: string, power: string) => {
      const digits = [...power].map((sign) => "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(sign)).join("");
      return ` times ten to the ${minus ? "minus " : ""}${digits}`;
    })
    .replaceAll("−", "minus ");
}
