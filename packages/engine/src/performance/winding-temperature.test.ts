import { describe, expect, it } from "vitest";
import { windingTemperature } from "./winding-temperature.ts";

const motor = { resistance: 0.05, noLoadCurrent: 0, thermalResistance: 0.5 };
const seaLevel = { density: 1.225, temperature: 288.15 };
const state = { current: 20, voltage: 30, electricPower: 600 };

describe("the temperature of a winding in the long run", () => {
  it("is where its copper loss at that temperature is what leaves it", () => {
    const found = windingTemperature(motor, state, seaLevel) as number;
    const resistance = 0.05 * ((1 + 0.00393 * (found - 293.15)) / (1 + 0.00393 * (298.15 - 293.15)));
    expect(found - 288.15).toBeCloseTo(0.5 * 400 * resistance, 9);
    expect(found).toBeCloseTo(298.15, 9);
  });

  it("rises in thin air by the stated power of density", () => {
    const cold = { ...motor, resistance: 1e-9, noLoadCurrent: 1 };
    const rise = (density: number) => (windingTemperature(cold, state, { ...seaLevel, density }) as number) - 288.15;
    expect(rise(1.225 / 2) / rise(1.225)).toBeCloseTo(2 ** 0.618, 6);
  });

  it("follows the air's own temperature, and more than that with copper", () => {
    const at = (temperature: number) => windingTemperature(motor, state, { ...seaLevel, temperature }) as number;
    expect(at(298.15) - at(288.15)).toBeGreaterThan(10);
  });

  it("is none where the winding runs away", () => {
    expect(windingTemperature(motor, { ...state, current: 110 }, seaLevel)).toBeNull();
  });
});
