import { describe, expect, it } from "vitest";
import type { FullConditions, FullTrimmed } from "../equilibrium/index.ts";
import { brokenAirLimit, furtherLimits } from "./envelope-limits.ts";

const cell = {
  capacity: 10_000,
  openCircuitVoltage: [
    { stateOfCharge: 0, value: 3 },
    { stateOfCharge: 1, value: 4 },
  ],
  resistance: 0.04,
  resistanceFactor: [{ stateOfCharge: 0, value: 1 }],
  resistanceActivation: 1800,
  capacityFactor: [{ temperature: 298.15, value: 1 }],
  cutoffVoltage: 3,
  temperatureMinimum: 263.15,
  temperatureMaximum: 333.15,
};
const motor = { resistance: 0.05, noLoadCurrent: 1, thermalResistance: 0.5, temperatureMaximum: 393.15 };
const aircraft = {
  rotors: [{ id: "main" }],
  driveLines: [{ id: "main-drive", motors: [{ motor }] }],
  battery: { cell, seriesCells: 10, parallelCells: 1, wiringResistance: 0, bayTemperatureRise: 5, thermalResistance: 1.6 },
  limits: { altitudeMaximum: 2500, airTemperatureMinimum: 263.15, airTemperatureMaximum: 313.15 },
};
const conditions = (temperature: number, density = 1.225) =>
  ({ aircraft, loading: { blocks: 4 }, air: { temperature, density, speedOfSound: 340 } }) as unknown as FullConditions;
const flight = (electricPower: number, tipSpeed = 90) =>
  ({
    evaluation: {
      airspeed: 30,
      rotorStates: Float64Array.of(tipSpeed, 0, 0, 0, 0),
      loads: { electricPower, drives: [{ motor: { current: 20, voltage: 40, electricPower: 800 } }] },
    },
  }) as unknown as FullTrimmed;
const rules = { tipMachMaximum: 0.8, stateOfCharge: 0.5, cellResistanceFactor: 1 };
const share = (name: string, trimmed: FullTrimmed, at: FullConditions, more = rules) =>
  furtherLimits(trimmed, at, more).find((limit) => limit.name === name)?.share ?? Number.NaN;

describe("limits of a flight beside those of its trim", () => {
  it("are used up by the voltage of the cells at the power that brings them to their cut-off", () => {
    // Bay at 25 °C: 4 blocks of 10 cells, 35 V at rest, 0.1 Ω, 30 V at least: 50 A, 1500 W.
    expect(share("cell voltage", flight(1500), conditions(293.15))).toBeCloseTo(1, 9);
    expect(share("cell voltage", flight(1500), conditions(268.15))).toBeGreaterThan(1.5);
    expect(share("cell voltage", flight(1500), conditions(293.15), { ...rules, stateOfCharge: 1 })).toBeCloseTo(0.5, 9);
    expect(share("cell voltage", flight(1500), conditions(293.15), { ...rules, stateOfCharge: 0 })).toBe(1000);
  });

  it("warm cells by their own loss at the resistance of that warmth", () => {
    const used = share("cell heat", flight(1500), conditions(293.15));
    const rise = used * (333.15 - 298.15);
    const warm = 0.4 * Math.exp(1800 * (1 / (298.15 + rise) - 1 / 298.15));
    expect(rise).toBeCloseTo(1.6 * 12.5 ** 2 * warm, 1);
  });

  it("heat a motor more in thin air, and count the advancing tip against the speed of sound", () => {
    expect(share("main drive motor heat", flight(800), conditions(288.15, 0.9))).toBeGreaterThan(
      share("main drive motor heat", flight(800), conditions(288.15)),
    );
    expect(share("tip Mach number", flight(800, 242), conditions(288.15))).toBeCloseTo(1, 12);
  });
});

describe("limits of the air itself", () => {
  it("forbid by name what is too high, too cold or too warm for aircraft, cells or payload", () => {
    const broken = (temperature: number, altitude = 0, more = {}) =>
      brokenAirLimit(conditions(temperature), altitude, { ...rules, ...more })?.name;
    expect(broken(288.15)).toBeUndefined();
    expect(broken(288.15, 2501)).toBe("altitude limit");
    expect(broken(263)).toBe("coldest permitted air");
    expect(broken(314)).toBe("hottest permitted air");
    expect(broken(270, 0, { payloadTemperatureMinimum: 273.15 })).toBe("coldest air for the payload");
    expect(broken(312, 0, { payloadTemperatureMaximum: 310 })).toBe("hottest air for the payload");
  });
});
