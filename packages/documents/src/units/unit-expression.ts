import Qty from "js-quantities";
import { commonMisspellings, type UnitAtom, unitAtoms } from "./unit-atoms.ts";

/** A unit as written, understood: SI value = number × times ÷ per. */
export interface Unit {
  readonly kind: "unit";
  /** Symbols in the order written; tells "N m" from "J" where the dimension cannot. */
  readonly symbols: readonly string[];
  readonly times: number;
  readonly per: number;
  /** The same unit in the spelling of the units library, for comparing dimensions. */
  readonly library: string;
}

interface Factor {
  readonly symbol: string;
  readonly exponent: number;
}

const token = /\s*(?:(?<symbol>[A-Za-zΩ]+|°[CF]?)(?:\^?(?<exponent>-?[1-4]))?|(?<punctuation>[/*·()]))\s*/uy;

/**
 * Reads a unit such as "kg", "km/h", "kg m2" or "kJ/(kg K)". A blank, `*` or `·` multiplies; one `/` divides, with several
 * units below it in brackets. Returns a sentence when it cannot be read.
 */
export function readUnit(text: string): Unit | { readonly kind: "problem"; readonly message: string } {
  const parts = /^(?<above>[^/]*?)(?:\/\s*(?<below>.*))?$/u.exec(text.trim());
  const above = parts?.groups?.above?.trim() ?? "";
  const below = parts?.groups?.below?.trim();
  if (below?.includes("/")) return problem(`"${text}" divides twice; put the units below the line in brackets, as in "kJ/(kg K)"`);
  const bracketed = below?.startsWith("(") && below.endsWith(")") ? below.slice(1, -1) : undefined;
  const numerator = above === "" || above === "1" ? [] : factors(above);
  const denominator = below === undefined ? [] : factors(bracketed ?? below);
  if (typeof numerator === "string") return problem(`${numerator}`);
  if (typeof denominator === "string") return problem(`${denominator}`);
  if (below !== undefined && denominator.length === 0) return problem(`"${text}" ends after its "/"`);
  if (bracketed === undefined && denominator.length > 1) {
    return problem(`"${text}" can be read in two ways; write brackets, as in "${above}/(${below})"`);
  }
  return combined([...numerator, ...denominator.map((factor) => ({ ...factor, exponent: -factor.exponent }))]);
}

/** True when both units measure the same dimension. */
export function sameDimension(unit: Unit, library: string): boolean {
  return new Qty(unit.library).isCompatible(new Qty(library));
}

function factors(text: string): readonly Factor[] | string {
  const found: Factor[] = [];
  token.lastIndex = 0;
  let separated = true;
  while (token.lastIndex < text.length) {
    const start = token.lastIndex;
    const groups = token.exec(text)?.groups;
    if (groups === undefined) return `"${text.slice(start)}" is no unit`;
    if (groups.symbol === undefined) {
      if (groups.punctuation === "*" || groups.punctuation === "·") {
        if (separated) return `"${text}" has a "${groups.punctuation}" with nothing before it`;
        separated = true;
        continue;
      }
      return `"${text}" has a "${groups.punctuation}" where a unit was expected`;
    }
    if (!Object.hasOwn(unitAtoms, groups.symbol)) return unknownSymbol(groups.symbol);
    if (found.some((factor) => factor.symbol === groups.symbol)) return `"${text}" names "${groups.symbol}" twice`;
    found.push({ symbol: groups.symbol, exponent: Number(groups.exponent ?? "1") });
    separated = false;
  }
  if (separated && found.length > 0) return `"${text}" ends in a multiplication sign`;
  return found;
}

function unknownSymbol(symbol: string): string {
  const otherCase = Object.keys(unitAtoms).find((known) => known.toLowerCase() === symbol.toLowerCase());
  const cure = commonMisspellings[symbol.toLowerCase()] ?? otherCase;
  return `"${symbol}" is no unit known here${cure === undefined ? "" : `; write "${cure}"`}`;
}

function combined(all: readonly Factor[]): Unit {
  let times = 1;
  let per = 1;
  const above: string[] = [];
  const below: string[] = [];
  for (const { symbol, exponent } of all) {
    const atom = unitAtoms[symbol] as UnitAtom;
    for (let count = Math.abs(exponent); count > 0; count--) {
      times *= (exponent > 0 ? atom.times : atom.per) ?? 1;
      per *= (exponent > 0 ? atom.per : atom.times) ?? 1;
      const [top = "", bottom] = atom.library.split("/");
      (exponent > 0 ? above : below).push(top);
      if (bottom !== undefined) (exponent > 0 ? below : above).push(bottom);
    }
  }
  const library = `${above.length > 0 ? above.join("*") : "1"}${below.length > 0 ? `/${below.join("*")}` : ""}`;
  return { kind: "unit", symbols: all.map((factor) => factor.symbol), times, per, library };
}

function problem(message: string): { readonly kind: "problem"; readonly message: string } {
  return { kind: "problem", message };
}
