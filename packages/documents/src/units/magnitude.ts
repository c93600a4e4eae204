import { type QuantityKind, quantityKinds } from "@wingseed/engine";
import { expectedOfKind, isQuantityKind, unitsOfKind } from "./kind-units.ts";
import { readUnit, sameDimension, type Unit } from "./unit-expression.ts";

type Refusal = { readonly kind: "problem"; readonly message: string };

/** A number with the factor of its unit: SI value = number × times ÷ per. */
export interface Scale {
  readonly kind: "scale";
  readonly number: number;
  readonly times: number;
  readonly per: number;
}

const absoluteTemperatures: Readonly<Record<string, (number: number) => number>> = {
  K: (number) => number,
  degC: (number) => number + 273.15,
  "°C": (number) => number + 273.15,
  degF: (number) => ((number + 459.67) * 5) / 9,
  "°F": (number) => ((number + 459.67) * 5) / 9,
};

/** Reads one number with its unit, without any interval, into SI. */
export function magnitude(text: string, kind: QuantityKind): { readonly kind: "quantity"; readonly value: number } | Refusal {
  if (kind === "temperature") return absoluteTemperature(text);
  const scale = scaleOf(text, kind, "value");
  if (scale.kind === "problem") return scale;
  return finite((scale.number * scale.times) / scale.per, text);
}

/** Number and unit of one quantity; `difference` reads an absolute temperature's half-width as a step in kelvin. */
export function scaleOf(text: string, kind: QuantityKind, use: "value" | "difference"): Scale | Refusal {
  const number = readNumber(text);
  if (number.kind === "problem") return number;
  const asked = use === "difference" && kind === "temperature" ? "temperatureDifference" : kind;
  if (asked === "dimensionless") return withoutUnit(number.value, number.rest);
  if (number.rest === "") return problem(`${shownText(text)} has no unit; ${expectedOfKind(asked)}`);
  const unit = readUnit(number.rest);
  if (unit.kind === "problem") return problem(`${unit.message}; ${expectedOfKind(asked)}`);
  if (!measures(unit, asked)) return problem(`${shownText(text)} ${describe(unit)}; ${expectedOfKind(asked)}`);
  return { kind: "scale", number: number.value, times: unit.times, per: unit.per };
}

/** Reads the number at the head of a text; `rest` is what follows it. */
export function readNumber(text: string): { readonly kind: "number"; readonly value: number; readonly rest: string } | Refusal {
  const head = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/u.exec(text)?.[0];
  if (head === undefined) return problem(`${shownText(text)} does not begin with a number`);
  const rest = text.slice(head.length);
  if (/^,\d/u.test(rest)) {
    return problem(`${shownText(text)} has a comma in its number; write a decimal point, as in "${text.replace(",", ".")}"`);
  }
  // "3 1/s": the one above the line of a unit is no digit of the number.
  if (/^\s*\d/u.test(rest) && !/^\s+1\s*\/\s*[^\d\s]/u.test(rest))
    return problem(`${shownText(text)} has a gap in its number; write the digits without blanks`);
  if (/^\.\d*/u.test(rest)) return problem(`${shownText(text)} has two decimal points`);
  const value = Number(head);
  return Number.isFinite(value) ? { kind: "number", value, rest: rest.trim() } : problem(`${shownText(text)} is too large for a number`);
}

/** A text in quotes, cut where it is too long to be shown. */
export function shownText(text: string): string {
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}…` : text);
}

function absoluteTemperature(text: string): { readonly kind: "quantity"; readonly value: number } | Refusal {
  const number = readNumber(text);
  if (number.kind === "problem") return number;
  if (number.rest === "") return problem(`${shownText(text)} has no unit; ${expectedOfKind("temperature")}`);
  const convert = Object.hasOwn(absoluteTemperatures, number.rest) ? absoluteTemperatures[number.rest] : undefined;
  if (convert === undefined) {
    const unit = readUnit(number.rest);
    const reason = unit.kind === "problem" ? unit.message : `${shownText(text)} ${describe(unit)}`;
    return problem(`${reason}; ${expectedOfKind("temperature")}`);
  }
  const value = convert(number.value);
  return value < 0 ? problem(`${shownText(text)} is below absolute zero`) : finite(value, text);
}

function withoutUnit(value: number, rest: string): Scale | Refusal {
  if (rest === "") return { kind: "scale", number: value, times: 1, per: 1 };
  if (rest === "%") return { kind: "scale", number: value, times: 1, per: 100 };
  return problem(`"${rest}" is a unit; ${expectedOfKind("dimensionless")}`);
}

/** Dimensions alone do not tell a torque from an energy, nor a force from an energy per distance: the spelling does. */
export function measures(unit: Unit, kind: QuantityKind): boolean {
  return sameDimension(unit, libraryUnit(kind)) && spelledForKind(unit, kind);
}

const energySymbols: ReadonlySet<string> = new Set(["J", "kJ", "MJ", "Wh", "mWh", "kWh"]);
const energySpelled: ReadonlySet<QuantityKind> = new Set(["energy", "energyPerDistance"]);
const energyRefused: ReadonlySet<QuantityKind> = new Set(["torque", "force", "pressure"]);

function spelledForKind(unit: Unit, kind: QuantityKind): boolean {
  const energy = unit.symbols.some((symbol) => energySymbols.has(symbol));
  if (energySpelled.has(kind)) return energy || unit.symbols.includes("W") || unit.symbols.includes("kW");
  return !(energyRefused.has(kind) && energy);
}

function describe(unit: Unit): string {
  const kind = Object.keys(quantityKinds).find((name) => isQuantityKind(name) && name !== "latitude" && measures(unit, name));
  return isQuantityKind(kind) ? `is ${unitsOfKind(kind).noun}` : "measures something else";
}

const libraryUnits: Partial<Record<QuantityKind, string>> = {
  capacity: "A*s",
  dynamicViscosity: "Pa*s",
  energyPerDistance: "J/m",
  heatCapacity: "J/degK",
  inertia: "kg*m*m",
  resistance: "ohm",
  specificHeat: "J/kg*degK",
  speedConstant: "rad/s*V",
  temperatureDifference: "degK",
  temperature: "degK",
  thermalResistance: "degK/W",
  torque: "N*m",
};

function libraryUnit(kind: QuantityKind): string {
  return libraryUnits[kind] ?? quantityKinds[kind];
}

function finite(value: number, text: string): { readonly kind: "quantity"; readonly value: number } | Refusal {
  return Number.isFinite(value) ? { kind: "quantity", value } : problem(`${shownText(text)} is too large for a number`);
}

function problem(message: string): Refusal {
  return { kind: "problem", message };
}
