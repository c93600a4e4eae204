import type { QuantityKind } from "@wingseed/engine";
import { type DisplayUnit, type DisplayUnitName, displayUnits, namedDisplayUnit } from "./units.ts";

/** Which units people read: SI and what is accepted with it, or those of the cockpit. Display only. */
export type UnitSystem = "si" | "aviation";

export interface UnitChoice {
  /** Unit wished by whoever made the number; the cockpit's replaces it under `aviation`. */
  readonly unit?: string;
  /** What a height is measured from; a length with a datum is a height. */
  readonly datum?: string;
  readonly system?: UnitSystem;
}

const cockpit: Readonly<Record<string, DisplayUnitName>> = { "m/s": "kt", "km/h": "kt", km: "NM", "Wh/km": "Wh/NM" };

/** The unit for numbers of this kind whose largest magnitude is `magnitude` [SI]; one unit for a whole axis or column. */
export function displayUnit(kind: QuantityKind, magnitude: number, choice: UnitChoice = {}): DisplayUnit {
  const aviation = choice.system === "aviation";
  if (choice.unit !== undefined) {
    const replacement = aviation ? cockpit[choice.unit] : undefined;
    if (!(aviation && kind === "length" && choice.datum)) return namedDisplayUnit(replacement ?? choice.unit, kind);
  }
  return displayUnits[usual(kind, Math.abs(magnitude), aviation, choice.datum !== undefined)];
}

function usual(kind: QuantityKind, size: number, aviation: boolean, isHeight: boolean): DisplayUnitName {
  switch (kind) {
    case "length":
      return lengthUnit(size, aviation, isHeight);
    case "time":
      return timeUnit(size);
    case "speed":
      return aviation ? "kt" : "m/s";
    case "energyPerDistance":
      return aviation ? "Wh/NM" : "Wh/km";
    case "power":
      return size >= 1000 ? "kW" : "W";
    case "energy":
      return size >= 3.6e7 ? "kWh" : "Wh";
    case "force":
      return size >= 1e4 ? "kN" : "N";
    case "mass":
      return size > 0 && size < 0.1 ? "g" : "kg";
    case "resistance":
      return size > 0 && size < 1 ? "mOhm" : "Ohm";
    default:
      return fixedUnits[kind];
  }
}

function lengthUnit(size: number, aviation: boolean, isHeight: boolean): DisplayUnitName {
  if (isHeight) return aviation ? "ft" : "m";
  if (size >= 10_000) return aviation ? "NM" : "km";
  return size > 0 && size < 0.1 ? "mm" : "m";
}

function timeUnit(size: number): DisplayUnitName {
  if (size < 120) return "s";
  return size < 180 * 60 ? "min" : "h";
}

type FixedKind = Exclude<
  QuantityKind,
  "length" | "time" | "speed" | "energyPerDistance" | "power" | "energy" | "force" | "mass" | "resistance"
>;

const fixedUnits: Readonly<Record<FixedKind, DisplayUnitName>> = {
  acceleration: "m/s2",
  angle: "deg",
  anglePerTime: "deg/s",
  area: "m2",
  capacity: "Ah",
  current: "A",
  density: "kg/m3",
  dimensionless: "1",
  dynamicViscosity: "uPa s",
  forceRate: "N/s",
  growthRate: "1/s",
  heatCapacity: "J/K",
  inertia: "kg m2",
  latitude: "latitude",
  pressure: "kPa",
  rotationRate: "rpm",
  specificHeat: "J/(kg K)",
  speedConstant: "rpm/V",
  temperature: "degC",
  temperatureDifference: "K",
  thermalResistance: "K/W",
  torque: "N m",
  voltage: "V",
};

/** A value in a display unit [that unit]. */
export function inUnit(value: number, unit: DisplayUnit): number {
  return (value - (unit.zero ?? 0)) / unit.scale;
}

/** Back from a display unit to SI. */
export function fromUnit(shown: number, unit: DisplayUnit): number {
  return shown * unit.scale + (unit.zero ?? 0);
}
