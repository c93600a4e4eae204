/**
 * The unit symbols that documents may use, each with the units library's own spelling. Symbols that the library does not
 * know, would read as something else, or rounds (a knot, a degree) carry an exact factor to the unit it stands on.
 */
export interface UnitAtom {
  /** How the units library spells the unit that the factor below refers to. */
  readonly library: string;
  /** Exact factor `times / per` on that unit; absent when the library's own value is exact. */
  readonly times?: number;
  readonly per?: number;
}

const knot: UnitAtom = { library: "m/s", times: 1852, per: 3600 };
const degree: UnitAtom = { library: "rad", times: Math.PI, per: 180 };
const turn: UnitAtom = { library: "rad", times: 2 * Math.PI };
const ohm: UnitAtom = { library: "ohm" };
const milliohm: UnitAtom = { library: "ohm", per: 1000 };
const kelvin: UnitAtom = { library: "degK" };
const fahrenheit: UnitAtom = { library: "degK", times: 5, per: 9 };

export const unitAtoms: Readonly<Record<string, UnitAtom>> = {
  // length
  m: { library: "m" },
  um: { library: "m", per: 1e6 },
  mm: { library: "m", per: 1000 },
  cm: { library: "m", per: 100 },
  dm: { library: "m", per: 10 },
  km: { library: "m", times: 1000 },
  in: { library: "m", times: 254, per: 10000 },
  ft: { library: "m", times: 3048, per: 10000 },
  mi: { library: "m", times: 1609344, per: 1000 },
  nmi: { library: "m", times: 1852 },
  NM: { library: "m", times: 1852 },
  // mass
  kg: { library: "kg" },
  g: { library: "kg", per: 1000 },
  mg: { library: "kg", per: 1e6 },
  t: { library: "kg", times: 1000 },
  lb: { library: "kg", times: 45359237, per: 1e8 },
  oz: { library: "kg", times: 45359237, per: 16e8 },
  // time
  s: { library: "s" },
  ms: { library: "s", per: 1000 },
  us: { library: "s", per: 1e6 },
  min: { library: "s", times: 60 },
  h: { library: "s", times: 3600 },
  d: { library: "s", times: 86400 },
  // speed
  kt: knot,
  kn: knot,
  mph: { library: "m/s", times: 1609344, per: 3600e3 },
  // angle and rotation
  rad: { library: "rad" },
  mrad: { library: "rad", per: 1000 },
  deg: degree,
  "°": degree,
  rev: turn,
  rpm: { library: "rad/s", times: 2 * Math.PI, per: 60 },
  // temperature step; an absolute temperature is read apart
  K: kelvin,
  mK: { library: "degK", per: 1000 },
  degC: kelvin,
  "°C": kelvin,
  degF: fahrenheit,
  "°F": fahrenheit,
  // electricity
  A: { library: "A" },
  mA: { library: "A", per: 1000 },
  kA: { library: "A", times: 1000 },
  V: { library: "V" },
  mV: { library: "V", per: 1000 },
  kV: { library: "V", times: 1000 },
  Ohm: ohm,
  ohm,
  Ω: ohm,
  mOhm: milliohm,
  mohm: milliohm,
  mΩ: milliohm,
  uOhm: { library: "ohm", per: 1e6 },
  kOhm: { library: "ohm", times: 1000 },
  C: { library: "A*s" },
  Ah: { library: "A*s", times: 3600 },
  mAh: { library: "A*s", times: 36, per: 10 },
  // power, energy, force, pressure
  W: { library: "W" },
  mW: { library: "W", per: 1000 },
  kW: { library: "W", times: 1000 },
  MW: { library: "W", times: 1e6 },
  J: { library: "J" },
  kJ: { library: "J", times: 1000 },
  MJ: { library: "J", times: 1e6 },
  Wh: { library: "J", times: 3600 },
  mWh: { library: "J", times: 36, per: 10 },
  kWh: { library: "J", times: 3.6e6 },
  N: { library: "N" },
  mN: { library: "N", per: 1000 },
  kN: { library: "N", times: 1000 },
  Nm: { library: "N*m" },
  lbf: { library: "N", times: 44482216152605, per: 1e13 },
  uPa: { library: "Pa", per: 1e6 },
  Pa: { library: "Pa" },
  hPa: { library: "Pa", times: 100 },
  kPa: { library: "Pa", times: 1000 },
  MPa: { library: "Pa", times: 1e6 },
  bar: { library: "Pa", times: 1e5 },
  mbar: { library: "Pa", times: 100 },
  // 25.4 conventional millimetres of mercury of 13 595.1 kg/m³ under standard gravity; the density is from memory
  inHg: { library: "Pa", times: 25.4 * 13.5951 * 9.80665 },
  psi: { library: "Pa", times: 44482216152605, per: 64516e5 },
};

/** What people write instead; the text after it is offered as the cure. */
export const commonMisspellings: Readonly<Record<string, string>> = {
  kph: "km/h",
  kmh: "km/h",
  kmph: "km/h",
  mps: "m/s",
  fpm: "ft/min",
  kts: "kt",
  knots: "kt",
  knot: "kt",
  sec: "s",
  secs: "s",
  seconds: "s",
  hr: "h",
  hrs: "h",
  hours: "h",
  minutes: "min",
  kgs: "kg",
  lbs: "lb",
  grams: "g",
  meters: "m",
  metres: "m",
  feet: "ft",
  inch: "in",
  inches: "in",
  degrees: "deg",
  volts: "V",
  volt: "V",
  amps: "A",
  amp: "A",
  watts: "W",
  watt: "W",
  newton: "N",
  newtons: "N",
  celsius: "degC",
  kelvin: "K",
  "1/min": "rpm",
};
