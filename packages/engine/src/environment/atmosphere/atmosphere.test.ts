import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphereAt, densityAltitude, moistAir, standardPressure, standardTemperature } from "./index.ts";

const dry = { temperatureOffset: 0, relativeHumidity: 0 };

describe("the atmosphere", () => {
  it("is continuous where its layers meet", () => {
    expect(standardTemperature(11_000.001)).toBeCloseTo(standardTemperature(10_999.999), 4);
    expect(standardPressure(11_000.001)).toBeCloseTo(standardPressure(10_999.999), 1);
  });

  it("stands in hydrostatic balance", () => {
    for (const altitude of [-500, 3000, 9000, 15_000]) {
      const slope = (standardPressure(altitude + 1) - standardPressure(altitude - 1)) / 2;
      expect(slope / (-9.80665 * atmosphereAt({ altitude, ...dry }).density)).toBeCloseTo(1, 6);
    }
  });

  it("gives an altitude back from its density", () => {
    fc.assert(
      fc.property(fc.double({ min: -2000, max: 20_000, noNaN: true }), (altitude) => {
        expect(densityAltitude(atmosphereAt({ altitude, ...dry }).density)).toBeCloseTo(altitude, 4);
      }),
      { seed: 7 },
    );
  });

  it("is lighter and faster for sound when damp, by the share of water", () => {
    const hot = { pressure: 101_325, temperature: 303.15 };
    const air = moistAir({ ...hot, relativeHumidity: 0 });
    const damp = moistAir({ ...hot, relativeHumidity: 1 });
    // Saturated air at 30 °C holds 42.4 hPa of vapour: 0.378 of that share of the pressure is missing in the density.
    expect(damp.density / air.density).toBeCloseTo(1 - (0.378 * 4243) / 101_325, 3);
    expect(damp.speedOfSound).toBeGreaterThan(air.speedOfSound);
  });
});
