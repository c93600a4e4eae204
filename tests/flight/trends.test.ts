// What must hold whatever the numbers are: how power answers to mass, air, speed and settings.
import { beforeAll, describe, expect, test } from "vitest";
import type { ReducedAircraft } from "../../packages/engine/src/aircraft/index.ts";
import { atmosphereAt } from "../../packages/engine/src/environment/atmosphere/index.ts";
import { createTrimRotor, type FlightConditions, trimFrom } from "../../packages/engine/src/equilibrium/index.ts";
import {
  cheapestFlight,
  type LinePoint,
  poweredModes,
  type ReducedPoint,
  reducedFlyer,
} from "../../packages/engine/src/performance/index.ts";
import { demoAircraft, flownLine, standardConditions } from "./demo-flight.ts";

let baseline: ReducedAircraft;
let revised: ReducedAircraft;
beforeAll(async () => {
  baseline = await demoAircraft("baseline");
  revised = await demoAircraft("revised");
});

/** Moves of a solver's vector that reach other ways of flying: angles in degrees, tip speed and thrusts in tens. */
const reach = [4, 1.5, 3, 5, 1.5, 1, 1.5, 0.3, 0.3, 0.5];

/** Vectors strewn evenly within reach of a given one. */
function strewing(seed: number) {
  let state = seed;
  return (x: Float64Array): Float64Array =>
    x.map((value, i) => {
      state = (state * 1_103_515_245 + 12_345) % 2 ** 31;
      return value + (reach[i] as number) * ((2 * state) / 2 ** 31 - 1);
    });
}

const powerOf = ({ outcome }: LinePoint): number => (outcome.kind === "trimmed" ? outcome.evaluation.power.electric : Number.NaN);

function hover(conditions: FlightConditions) {
  const flight = cheapestFlight(reducedFlyer(conditions, createTrimRotor(conditions.aircraft, conditions.air)), { forward: 0, climb: 0 });
  if (flight.kind !== "flies") throw new Error(`no hover: ${flight.limit}`);
  return flight.trimmed.evaluation;
}

const withPayload = (aircraft: ReducedAircraft, payloadMass: number, change: Partial<FlightConditions> = {}) =>
  standardConditions(aircraft, { loading: { blocks: 13, payloadMass, payloadPower: 0, payloadDragArea: 0 }, ...change });

describe("hover", () => {
  test("costs more the heavier, near the power of one and a half: shaft power within 6 % of m^1.5", () => {
    for (const aircraft of [baseline, revised]) {
      const loads = [0, 1.13, 2.5, 4].map((payloadMass) => hover(withPayload(aircraft, payloadMass)));
      const masses = loads.map((load) => load.balance.weight / 9.80665);
      const shaft = loads.map((load) => load.power.rotorShaft);
      for (let i = 1; i < loads.length; i++) {
        expect(loads[i]?.power.electric).toBeGreaterThan(loads[i - 1]?.power.electric as number);
        const expected = ((masses[i] as number) / (masses[0] as number)) ** 1.5;
        expect(Math.abs((shaft[i] as number) / (shaft[0] as number) / expected - 1)).toBeLessThan(0.06);
      }
    }
  });

  test("costs more in thinner air, by the root of density within 6 %, when the blades are loaded alike", () => {
    const dense = hover(withPayload(baseline, 0));
    for (const altitude of [800, 1600]) {
      const air = atmosphereAt({ altitude, temperatureOffset: 0, relativeHumidity: 0 });
      const thin = hover(withPayload(baseline, 0, { air }));
      const expected = Math.sqrt(atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 }).density / air.density);
      expect(thin.power.rotorShaft).toBeGreaterThan(dense.power.rotorShaft);
      expect(Math.abs(thin.power.rotorShaft / dense.power.rotorShaft / expected - 1)).toBeLessThan(0.06);
    }
  });

  test("on a hot day costs what thinner air costs: pressure altitude and heat that give one density give one power within 1 %", () => {
    const high = atmosphereAt({ altitude: 1000, temperatureOffset: 0, relativeHumidity: 0 });
    // Density falls as 1/T at one pressure.
    const seaTemperature = 288.15;
    const hot = atmosphereAt({
      altitude: 0,
      temperatureOffset: (seaTemperature * 1.225) / high.density - seaTemperature,
      relativeHumidity: 0,
    });
    expect(hot.density).toBeCloseTo(high.density, 4);
    const powers = [high, hot].map((air) => hover(withPayload(baseline, 0, { air })).power.electric) as [number, number];
    expect(Math.abs(powers[1] / powers[0] - 1)).toBeLessThan(0.01);
  });

  test("grows by the payload's own power through the converter, and by nothing else", () => {
    const conditions = withPayload(baseline, 1.13);
    const bare = hover(conditions).power;
    const powered = hover({ ...conditions, loading: { ...conditions.loading, payloadPower: 18 } }).power;
    expect(powered.electric - bare.electric).toBeCloseTo(18 * 1.08, 2);
    const lit = hover({ ...conditions, lightsOn: true }).power;
    expect(lit.electric - bare.electric).toBeCloseTo(3 * 1.08, 2);
  });
});

describe("power over speed", () => {
  const speeds = Array.from({ length: 36 }, (_, i) => i);

  // Points above their neighbours' mean would be trims that missed a better one. Where two ways of flying cost the same the
  // cheaper of both has a corner: of the revised aircraft near 6.2 m/s, by 78 W per m/s, which is up to 2.5 % at this step.
  test.each([
    { name: "baseline", corner: 0.01 },
    { name: "revised", corner: 0.025 },
  ] as const)("of the $name aircraft has no spike with the clutch closed", ({ name, corner }) => {
    const conditions = standardConditions(name === "baseline" ? baseline : revised);
    const powers = flownLine(conditions, "clutch-closed", speeds).map(powerOf);
    const uneven = powers.flatMap((power, i) => {
      if (i < 1 || i > 34) return [];
      const mean = ((powers[i - 1] as number) + (powers[i + 1] as number)) / 2;
      return Math.abs(power - mean) < corner * power ? [] : [`${i} m/s: ${power} W between ${powers[i - 1]} and ${powers[i + 1]}`];
    });
    expect(uneven).toEqual([]);
  });

  test("finds no cheaper flight from elsewhere: starts strewn around the answer lead to nothing better by 0.5 %", () => {
    const strewn = strewing(20_240_118);
    for (const aircraft of [baseline, revised]) {
      const conditions = standardConditions(aircraft);
      const rotor = createTrimRotor(aircraft, conditions.air);
      for (const mode of poweredModes) {
        for (const { airspeed, outcome } of flownLine(conditions, mode, speeds, rotor)) {
          if (outcome.kind !== "trimmed" || airspeed % 5 !== 2) continue;
          for (let i = 0; i < 3; i++) {
            const again = trimFrom(conditions, outcome.point, rotor, [{ x: strewn(outcome.start.x) }]);
            if (again.kind !== "trimmed") continue;
            const found = again.evaluation.power.electric;
            const known = outcome.evaluation.power.electric;
            expect(found / known, `${aircraft.name}, ${mode}, ${airspeed} m/s: ${known} W, elsewhere ${found} W`).toBeGreaterThan(0.995);
          }
        }
      }
    }
  });

  test("does not depend on which speeds are asked together, within 1 %", () => {
    for (const aircraft of [baseline, revised]) {
      const conditions = standardConditions(aircraft);
      const rotor = createTrimRotor(aircraft, conditions.air);
      for (const mode of poweredModes) {
        const whole = new Map(flownLine(conditions, mode, speeds, rotor).map((point) => [point.airspeed, powerOf(point)]));
        for (const some of [[0, 6, 10, 14, 18, 22, 26, 30, 34], [7], [12, 13], [20], [28]]) {
          for (const point of flownLine(conditions, mode, some, rotor)) {
            const known = whole.get(point.airspeed) as number;
            const where = `${aircraft.name}, ${mode}, ${point.airspeed} m/s of ${some.join(", ")}: ${powerOf(point)} W, in the whole line ${known} W`;
            if (Number.isNaN(known)) expect(powerOf(point), where).toBeNaN();
            else expect(Math.abs(powerOf(point) / known - 1), where).toBeLessThan(0.01);
          }
        }
      }
    }
  });

  test("is not carried along behind a stalled wing: light and high on schedule, a cold search finds nothing cheaper by 0.5 %", () => {
    const air = atmosphereAt({ altitude: 2500, temperatureOffset: 10, relativeHumidity: 0 });
    const loading = { blocks: 7, payloadMass: 0, payloadPower: 0, payloadDragArea: 0 };
    const conditions = standardConditions(revised, { air, loading, controls: "schedule" });
    const rotor = createTrimRotor(revised, air);
    for (const point of flownLine(conditions, "clutch-open", speeds, rotor)) {
      if (point.airspeed % 6 !== 1 || point.outcome.kind !== "trimmed") continue;
      const cold = cheapestFlight(reducedFlyer(conditions, rotor), { forward: point.airspeed, climb: 0 }, "clutch-open");
      if (cold.kind !== "flies") continue;
      const found = cold.trimmed.evaluation.power.electric;
      expect(found / powerOf(point), `${point.airspeed} m/s: ${powerOf(point)} W, cold ${found} W`).toBeGreaterThan(0.995);
    }
  });

  test("is the same bits whatever was asked of the rotor before", () => {
    const conditions = standardConditions(baseline);
    const used = createTrimRotor(baseline, conditions.air);
    flownLine(conditions, "clutch-open", [12, 16, 30], used);
    const fresh = flownLine(conditions, "clutch-closed", [0, 9, 18]).map(powerOf);
    expect(flownLine(conditions, "clutch-closed", [0, 9, 18], used).map(powerOf)).toEqual(fresh);
  });

  test("on schedule is never less than at the optimum where the schedule keeps the stall margin, but for 0.2 %", () => {
    for (const aircraft of [baseline, revised]) {
      const rotor = createTrimRotor(aircraft, standardConditions(aircraft).air);
      for (const mode of poweredModes) {
        const [free, scheduled] = (["optimum", "schedule"] as const).map((controls) =>
          flownLine(
            standardConditions(aircraft, { controls }),
            mode,
            speeds.filter((speed) => speed % 2 === 0),
            rotor,
          ),
        ) as [ReducedPoint[], ReducedPoint[]];
        scheduled.forEach((point, i) => {
          if (point.outcome.kind !== "trimmed" || point.outcome.stallMargin < aircraft.rotor.stallMarginFloor - 5e-4) return;
          const best = powerOf(free[i] as LinePoint);
          expect(
            powerOf(point) / best,
            `${aircraft.name}, ${mode}, ${point.airspeed} m/s: ${powerOf(point)} W, optimum ${best} W`,
          ).toBeGreaterThan(0.998);
        });
      }
    }
  });

  test("with two constant efficiencies is that of the shafts, counted by hand", () => {
    const conditions = standardConditions(baseline, { losses: "constant" });
    for (const { outcome } of flownLine(conditions, "clutch-closed", [0, 12, 24])) {
      if (outcome.kind !== "trimmed") throw new Error("no flight");
      const { power } = outcome.evaluation;
      expect(power.electric).toBeCloseTo((power.rotorShaft + 25) / 0.84 + power.propellerShaft / 0.87 + 25, 6);
    }
  });
});

describe("a refusal", () => {
  test("that names a control's range stands at an end of this aircraft's range", () => {
    const named = new Map<string, number>();
    for (const aircraft of [baseline, revised]) {
      const { clutchOpen } = aircraft.rotorControls;
      const collective = clutchOpen.collective as { readonly minimum: number; readonly maximum: number };
      const ends: Record<string, readonly number[]> = {
        "highest rotor speed": [clutchOpen.tipSpeedMaximum / 10],
        "lowest rotor speed": [clutchOpen.tipSpeedMinimum / 10],
        "collective range": [collective.minimum, collective.maximum].map((angle) => (angle * 180) / Math.PI),
      };
      for (const { airspeed, outcome } of flownLine(standardConditions(aircraft), "clutch-open", [0, 2, 4, 6, 8, 40, 44])) {
        if (outcome.kind !== "no-equilibrium") throw new Error(`flies at ${airspeed} m/s`);
        const known = ends[outcome.limit];
        if (known === undefined) continue;
        named.set(outcome.limit, (named.get(outcome.limit) ?? 0) + 1);
        // The solver's vector: tip speed in tens of m/s second, collective in degrees third.
        const at = outcome.start.x[outcome.limit === "collective range" ? 2 : 1] as number;
        expect(Math.min(...known.map((end) => Math.abs(end - at))), `${aircraft.name}, ${airspeed} m/s: ${outcome.limit}`).toBeLessThan(
          2e-3,
        );
      }
    }
    expect(named.size, "no refusal names a range: nothing was tested").toBeGreaterThan(0);
  });
});
