import { describe, expect, test } from "vitest";
import { parseQuantity } from "./quantity-text.ts";

test.each([
  ["24 kg", "mass", 24],
  ["52 km/h", "speed", 52 / 3.6],
  ["178 Wh", "energy", 640800],
  ["7.2 Wh", "energy", 25920],
  ["42 mOhm", "resistance", 0.042],
  ["42 mΩ", "resistance", 0.042],
  ["160 rpm/V", "speedConstant", (160 * 2 * Math.PI) / 60],
  ["15 degC", "temperature", 288.15],
  ["15 °C", "temperature", 288.15],
  ["288.15 K", "temperature", 288.15],
  ["59 degF", "temperature", 288.15],
  ["5 K", "temperatureDifference", 5],
  ["5 degC", "temperatureDifference", 5],
  ["-3 deg", "angle", (-3 * Math.PI) / 180],
  ["−3 deg", "angle", (-3 * Math.PI) / 180],
  ["3°", "angle", (3 * Math.PI) / 180],
  ["0.45 K/W", "thermalResistance", 0.45],
  ["0.92 kJ/(kg K)", "specificHeat", 920],
  ["3.4 Ah", "capacity", 12240],
  ["3.4 A h", "capacity", 12240],
  ["3400 mAh", "capacity", 12240],
  ["40 N/s", "forceRate", 40],
  ["60 deg/s", "anglePerTime", Math.PI / 3],
  ["12 N m", "torque", 12],
  ["12 Nm", "torque", 12],
  ["12 N·m", "torque", 12],
  ["0.55 kg m2", "inertia", 0.55],
  ["0.55 kg m²", "inertia", 0.55],
  ["0.55 kg*m^2", "inertia", 0.55],
  ["350 J/K", "heatCapacity", 350],
  ["84 %", "dimensionless", 0.84],
  ["0.84", "dimensionless", 0.84],
  ["22 Wh/km", "energyPerDistance", 79.2],
  ["6 kt", "speed", (6 * 1852) / 3600],
  ["500 ft/min", "speed", (500 * 0.3048) / 60],
  ["1.2 g/cm3", "density", 1200],
  ["9.81 m s-2", "acceleration", 9.81],
  ["1e-3 m", "length", 0.001],
  [".5 m", "length", 0.5],
] as const)("%s is read as a %s", (text, kind, value) => {
  const reading = parseQuantity(text, kind);
  expect(reading.kind).toBe("quantity");
  if (reading.kind === "quantity") expect(Math.abs(reading.value - value)).toBeLessThanOrEqual(4e-16 * Math.abs(value));
});

describe("intervals", () => {
  test.each([
    ["24 kg ± 1 %", "mass", 24, { kind: "normal", halfWidth: 0.24 }],
    ["0.062 m2 ± 10 %", "area", 0.062, { kind: "normal", halfWidth: 0.0062 }],
    ["24 kg ± 0.2 kg", "mass", 24, { kind: "normal", halfWidth: 0.2 }],
    ["24 kg +- 200 g", "mass", 24, { kind: "normal", halfWidth: 0.2 }],
    ["24 kg +/- 200 g", "mass", 24, { kind: "normal", halfWidth: 0.2 }],
    ["24 ± 0.2 kg", "mass", 24, { kind: "normal", halfWidth: 0.2 }],
    ["(24 ± 0.2) kg", "mass", 24, { kind: "normal", halfWidth: 0.2 }],
    ["-3 deg ± 10 %", "angle", (-3 * Math.PI) / 180, { kind: "normal", halfWidth: Math.PI / 600 }],
    ["15 degC ± 2 K", "temperature", 288.15, { kind: "normal", halfWidth: 2 }],
    ["15 degC ± 2 degC", "temperature", 288.15, { kind: "normal", halfWidth: 2 }],
    ["0.84 ± 0.02", "dimensionless", 0.84, { kind: "normal", halfWidth: 0.02 }],
    ["0.5 ± 2 %", "dimensionless", 0.5, { kind: "normal", halfWidth: 0.01 }],
    ["uniform(0.1 m, 0.2 m)", "length", 0.15, { kind: "uniform", low: 0.1, high: 0.2 }],
    ["uniform(10, 20 cm)", "length", 0.15, { kind: "uniform", low: 0.1, high: 0.2 }],
    ["triangular(1, 2, 3 m)", "length", 2, { kind: "triangular", low: 1, mode: 2, high: 3 }],
    ["uniform(10 degC, 20 degC)", "temperature", 288.15, { kind: "uniform", low: 283.15, high: 293.15 }],
  ] as const)("%s keeps its interval", (text, kind, value, uncertainty) => {
    const reading = parseQuantity(text, kind);
    if (reading.kind !== "quantity" || reading.uncertainty === undefined) throw new Error(JSON.stringify(reading));
    expect(reading.value).toBeCloseTo(value, 12);
    expect(reading.uncertainty.kind).toBe(uncertainty.kind);
    for (const [name, number] of Object.entries(uncertainty)) {
      if (typeof number === "number") expect(Reflect.get(reading.uncertainty, name)).toBeCloseTo(number, 12);
    }
  });
});

test.each([
  ["24", "mass", '"24" has no unit; a mass is expected, for example "24 kg"'],
  ["24 kg kg", "mass", '"kg kg" names "kg" twice; a mass is expected, for example "24 kg"'],
  ["1.15 kg", "length", '"1.15 kg" is a mass; a length is expected, for example "1.15 m"'],
  ["0,4 m", "length", '"0,4 m" has a comma in its number; write a decimal point, as in "0.4 m"'],
  ["12 N m", "energy", '"12 N m" is a torque; an energy is expected, for example "178 Wh"'],
  ["12 J", "torque", '"12 J" is an energy; a torque is expected, for example "12 N m"'],
  ["12 Nm", "energy", '"12 Nm" is a torque; an energy is expected, for example "178 Wh"'],
  ["1 J/m", "force", '"1 J/m" is an energy per distance; a force is expected, for example "235 N"'],
  ["1 N", "energyPerDistance", '"1 N" is a force; an energy per distance is expected, for example "22 Wh/km"'],
  ["52 kph", "speed", '"kph" is no unit known here; write "km/h"; a speed is expected, for example "52 km/h"'],
  ["24 Kg", "mass", '"Kg" is no unit known here; write "kg"; a mass is expected, for example "24 kg"'],
  [
    "0.92 kJ/kg K",
    "specificHeat",
    '"kJ/kg K" can be read in two ways; write brackets, as in "kJ/(kg K)"; a specific heat is expected, for example "0.92 kJ/(kg K)"',
  ],
  [
    "1 m/s/s",
    "acceleration",
    '"m/s/s" divides twice; put the units below the line in brackets, as in "kJ/(kg K)"; an acceleration is expected, for example "9.81 m/s2"',
  ],
  ["1 800 K", "temperatureDifference", '"1 800 K" has a gap in its number; write the digits without blanks'],
  ["15 C", "temperature", '"15 C" is an electric charge; a temperature is expected, for example "15 degC"'],
  ["-300 degC", "temperature", '"-300 degC" is below absolute zero'],
  ["15 degC ± 1 %", "temperature", 'a per cent of a temperature has no meaning; write the half-width, as in "15 degC ± 2 K"'],
  ["84 % ± 2 %", "dimensionless", '"84 % ± 2 %" can mean per cent of the value or points; write a plain number, such as "0.84 ± 0.02"'],
  ["0 m ± 2 %", "length", "a per cent of zero is no interval; write the half-width with its unit"],
  ["1 m ± 0 m", "length", '"± 0 m" must be more than zero; leave it out where the value is exact'],
  ["1 m ± -1 %", "length", '"± -1 %" must be more than zero; leave it out where the value is exact'],
  ["1 m ± 1 s", "length", '"1 s" is a time; a length is expected, for example "1.15 m"'],
  ["1 ± 1 ± 1 m", "length", '"1 ± 1 ± 1 m" has more than one ±'],
  ["normal(1 m, 2 m)", "length", '"normal" is no distribution known here; uniform(a, b) and triangular(a, b, c) are'],
  ["uniform(0,1 m, 0,2 m)", "length", "uniform takes 2 values, 4 were read; a decimal comma is not read, write a decimal point"],
  ["uniform(2 m, 1 m)", "length", "the values of uniform must rise from the smallest to the largest"],
  ["0.84 kg", "dimensionless", '"kg" is a unit; a number without unit is expected, for example "0.84"'],
  ["1e999 m", "length", '"1e999 m" is too large for a number'],
  ["fast", "speed", '"fast" does not begin with a number'],
  ["", "speed", 'nothing is written; a speed is expected, for example "52 km/h"'],
  ["5 /", "speed", '"/" ends after its "/"; a speed is expected, for example "52 km/h"'],
] as const)("%s is refused as a %s with its cure", (text, kind, message) => {
  expect(parseQuantity(text, kind)).toEqual({ kind: "problem", message });
});
