import { type QuantityKind, quantityKinds } from "@wingseed/engine";

/** How a kind of quantity is called and written. */
export interface KindUnits {
  /** With its article, for sentences: "a length". */
  readonly noun: string;
  /** Units one usually writes; any other unit of the same dimension is read too. */
  readonly usual: readonly string[];
  /** A value with its unit, for sentences and editors. */
  readonly example: string;
}

const kindUnits: Readonly<Record<QuantityKind, KindUnits>> = {
  acceleration: { noun: "an acceleration", usual: ["m/s2"], example: "9.81 m/s2" },
  angle: { noun: "an angle", usual: ["deg", "rad"], example: "8 deg" },
  anglePerTime: { noun: "an angular rate", usual: ["deg/s", "rad/s"], example: "60 deg/s" },
  area: { noun: "an area", usual: ["m2", "cm2", "mm2", "ft2"], example: "0.42 m2" },
  capacity: { noun: "an electric charge", usual: ["Ah", "mAh", "C"], example: "3.4 Ah" },
  current: { noun: "a current", usual: ["A", "mA"], example: "45 A" },
  density: { noun: "a density", usual: ["kg/m3", "g/cm3"], example: "1.225 kg/m3" },
  dimensionless: { noun: "a number without unit", usual: ["%"], example: "0.84" },
  dynamicViscosity: { noun: "a dynamic viscosity", usual: ["Pa s", "uPa s"], example: "1.8e-5 Pa s" },
  energy: { noun: "an energy", usual: ["Wh", "kWh", "J", "kJ", "MJ"], example: "178 Wh" },
  energyPerDistance: { noun: "an energy per distance", usual: ["Wh/km", "J/m"], example: "22 Wh/km" },
  force: { noun: "a force", usual: ["N", "kN", "lbf"], example: "235 N" },
  forceRate: { noun: "a rate of force", usual: ["N/s"], example: "40 N/s" },
  growthRate: { noun: "a growth rate", usual: ["1/s"], example: "-0.5 1/s" },
  heatCapacity: { noun: "a heat capacity", usual: ["J/K", "kJ/K"], example: "350 J/K" },
  inertia: { noun: "a moment of inertia", usual: ["kg m2", "g m2"], example: "0.55 kg m2" },
  latitude: { noun: "a latitude", usual: ["deg", "rad"], example: "-47.5 deg" },
  length: { noun: "a length", usual: ["m", "mm", "cm", "km", "ft", "in", "nmi"], example: "1.15 m" },
  mass: { noun: "a mass", usual: ["kg", "g", "t", "lb"], example: "24 kg" },
  power: { noun: "a power", usual: ["W", "kW"], example: "1.5 kW" },
  pressure: { noun: "a pressure", usual: ["hPa", "Pa", "kPa", "bar", "inHg", "psi"], example: "1013.25 hPa" },
  resistance: { noun: "an electric resistance", usual: ["mOhm", "Ohm"], example: "42 mOhm" },
  rotationRate: { noun: "a rotation rate", usual: ["rpm", "rad/s", "rev/s"], example: "700 rpm" },
  specificHeat: { noun: "a specific heat", usual: ["kJ/(kg K)", "J/(kg K)"], example: "0.92 kJ/(kg K)" },
  speed: { noun: "a speed", usual: ["m/s", "km/h", "kt", "ft/min", "mph"], example: "52 km/h" },
  speedConstant: { noun: "a speed constant", usual: ["rpm/V", "rad/(s V)"], example: "160 rpm/V" },
  temperature: { noun: "a temperature", usual: ["degC", "K", "degF"], example: "15 degC" },
  temperatureDifference: { noun: "a temperature difference", usual: ["K", "degC"], example: "5 K" },
  thermalResistance: { noun: "a thermal resistance", usual: ["K/W"], example: "0.45 K/W" },
  time: { noun: "a time", usual: ["s", "min", "h", "ms"], example: "90 s" },
  torque: { noun: "a torque", usual: ["N m", "kN m", "N mm"], example: "12 N m" },
  voltage: { noun: "a voltage", usual: ["V", "mV", "kV"], example: "58.8 V" },
};

export function unitsOfKind(kind: QuantityKind): KindUnits {
  return kindUnits[kind];
}

export function isQuantityKind(name: unknown): name is QuantityKind {
  return typeof name === "string" && Object.hasOwn(quantityKinds, name);
}

/** The part of a sentence that says what would be right. */
export function expectedOfKind(kind: QuantityKind): string {
  const { noun, example } = unitsOfKind(kind);
  return `${noun} is expected, for example "${example}"`;
}
