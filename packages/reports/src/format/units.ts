import type { QuantityKind } from "@wingseed/engine";

/** A unit that people read. One of it is `scale` SI units; `zero` is where its scale starts [SI], for temperatures. */
export interface DisplayUnit {
  /** As printed, with no-break spaces inside. */
  readonly symbol: string;
  readonly scale: number;
  readonly zero?: number;
  /** Spoken name: one, many. */
  readonly spoken: readonly [one: string, many: string];
  /** True for signs that stand close to the number: 12°. */
  readonly close?: boolean;
  /** Fixed decimals where significant figures mean nothing: a temperature scale has no natural zero. */
  readonly decimals?: number;
  /** Significant figures if not three. */
  readonly figures?: number;
}

const foot = 0.3048;
const nauticalMile = 1852;

function unit(symbol: string, scale: number, one: string, many = `${one}s`, more: Partial<DisplayUnit> = {}): DisplayUnit {
  return { symbol: symbol.replaceAll(" ", "\u00a0"), scale, spoken: [one, many], ...more };
}

/** Every unit the faces can show, by its plain name. Factors are exact by definition (foot, nautical mile, knot). */
export const displayUnits = {
  "1": unit("", 1, "", ""),
  "%": unit("%", 0.01, "percent", "percent"),
  deg: unit("°", Math.PI / 180, "degree", "degrees", { close: true }),
  rad: unit("rad", 1, "radian"),
  "deg/s": unit("°/s", Math.PI / 180, "degree per second", "degrees per second", { close: true }),
  "rad/s": unit("rad/s", 1, "radian per second", "radians per second"),
  rpm: unit("rpm", Math.PI / 30, "revolution per minute", "revolutions per minute"),
  "rpm/V": unit("rpm/V", Math.PI / 30, "revolution per minute and volt", "revolutions per minute and volt"),
  mm: unit("mm", 1e-3, "millimetre"),
  m: unit("m", 1, "metre"),
  km: unit("km", 1e3, "kilometre"),
  ft: unit("ft", foot, "foot", "feet"),
  NM: unit("NM", nauticalMile, "nautical mile"),
  m2: unit("m²", 1, "square metre"),
  "m/s": unit("m/s", 1, "metre per second", "metres per second"),
  "km/h": unit("km/h", 1 / 3.6, "kilometre per hour", "kilometres per hour"),
  kt: unit("kt", nauticalMile / 3600, "knot"),
  "ft/min": unit("ft/min", foot / 60, "foot per minute", "feet per minute"),
  "m/s2": unit("m/s²", 1, "metre per second squared", "metres per second squared"),
  s: unit("s", 1, "second"),
  min: unit("min", 60, "minute"),
  h: unit("h", 3600, "hour"),
  g: unit("g", 1e-3, "gram"),
  kg: unit("kg", 1, "kilogram"),
  "kg m2": unit("kg m²", 1, "kilogram square metre"),
  "kg/m3": unit("kg/m³", 1, "kilogram per cubic metre", "kilograms per cubic metre"),
  N: unit("N", 1, "newton"),
  kN: unit("kN", 1e3, "kilonewton"),
  "N/s": unit("N/s", 1, "newton per second", "newtons per second"),
  "N m": unit("N m", 1, "newton metre"),
  W: unit("W", 1, "watt"),
  kW: unit("kW", 1e3, "kilowatt"),
  J: unit("J", 1, "joule"),
  kJ: unit("kJ", 1e3, "kilojoule"),
  Wh: unit("Wh", 3600, "watt-hour"),
  kWh: unit("kWh", 3.6e6, "kilowatt-hour"),
  "J/m": unit("J/m", 1, "joule per metre", "joules per metre"),
  "Wh/km": unit("Wh/km", 3.6, "watt-hour per kilometre", "watt-hours per kilometre"),
  "Wh/NM": unit("Wh/NM", 3600 / nauticalMile, "watt-hour per nautical mile", "watt-hours per nautical mile"),
  "1/s": unit("1/s", 1, "per second", "per second"),
  "J/K": unit("J/K", 1, "joule per kelvin", "joules per kelvin"),
  "J/(kg K)": unit("J/(kg K)", 1, "joule per kilogram and kelvin", "joules per kilogram and kelvin"),
  "K/W": unit("K/W", 1, "kelvin per watt", "kelvins per watt"),
  Pa: unit("Pa", 1, "pascal"),
  hPa: unit("hPa", 100, "hectopascal", "hectopascals", { figures: 4 }),
  kPa: unit("kPa", 1e3, "kilopascal"),
  "uPa s": unit("µPa s", 1e-6, "micropascal second"),
  K: unit("K", 1, "kelvin"),
  degC: unit("°C", 1, "degree Celsius", "degrees Celsius", { zero: 273.15, decimals: 1 }),
  A: unit("A", 1, "ampere"),
  V: unit("V", 1, "volt"),
  C: unit("C", 1, "coulomb"),
  Ah: unit("Ah", 3600, "ampere-hour"),
  Ohm: unit("Ω", 1, "ohm"),
  mOhm: unit("mΩ", 1e-3, "milliohm"),
  latitude: unit("°", Math.PI / 180, "degree", "degrees", { close: true, decimals: 4 }),
} as const satisfies Record<string, DisplayUnit>;

export type DisplayUnitName = keyof typeof displayUnits;

const allowed: Readonly<Record<QuantityKind, readonly DisplayUnitName[]>> = {
  acceleration: ["m/s2"],
  angle: ["deg", "rad"],
  anglePerTime: ["deg/s", "rad/s"],
  area: ["m2"],
  capacity: ["Ah", "C"],
  current: ["A"],
  density: ["kg/m3"],
  dimensionless: ["1", "%"],
  dynamicViscosity: ["uPa s"],
  energy: ["Wh", "kWh", "J", "kJ"],
  energyPerDistance: ["Wh/km", "Wh/NM", "J/m"],
  force: ["N", "kN"],
  forceRate: ["N/s"],
  growthRate: ["1/s"],
  heatCapacity: ["J/K"],
  inertia: ["kg m2"],
  latitude: ["latitude"],
  length: ["m", "km", "mm", "ft", "NM"],
  mass: ["kg", "g"],
  power: ["W", "kW"],
  pressure: ["kPa", "hPa", "Pa"],
  resistance: ["Ohm", "mOhm"],
  rotationRate: ["rpm", "rad/s"],
  specificHeat: ["J/(kg K)"],
  speed: ["m/s", "km/h", "kt", "ft/min"],
  speedConstant: ["rpm/V"],
  temperature: ["degC", "K"],
  temperatureDifference: ["K"],
  thermalResistance: ["K/W"],
  time: ["s", "min", "h"],
  torque: ["N m"],
  voltage: ["V"],
};

const otherSpellings: Readonly<Record<string, DisplayUnitName>> = {
  "": "1",
  "°": "deg",
  "°/s": "deg/s",
  "°C": "degC",
  "m²": "m2",
  "m/s²": "m/s2",
  "kg/m³": "kg/m3",
  "kg m²": "kg m2",
  Ω: "Ohm",
  mΩ: "mOhm",
  "W h": "Wh",
  "W h/km": "Wh/km",
  knots: "kt",
  hr: "h",
};

/** The units in which a kind can be shown, usual one first. */
export function displayUnitNames(kind: QuantityKind): readonly DisplayUnitName[] {
  return allowed[kind];
}

/**
 * The display unit that a unit text names.
 * @throws RangeError when this kind cannot be shown in it, with what it can be shown in.
 */
export function namedDisplayUnit(name: string, kind: QuantityKind): DisplayUnit {
  const plain = otherSpellings[name] ?? name;
  const found = allowed[kind].find((candidate) => candidate === plain || (candidate === "latitude" && plain === "deg"));
  if (found) return displayUnits[found];
  throw new RangeError(`a ${kind} cannot be shown in "${name}"; allowed: ${allowed[kind].join(", ")}`);
}
