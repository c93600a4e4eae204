import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BatteryPack, enduranceAt } from "../drivetrain/battery/index.ts";
import { geodesicSegment, positionFromDegrees } from "../environment/geodesy/index.ts";
import { evenGround, type Terrain } from "../environment/terrain/index.ts";
import type { Wind } from "../environment/wind/index.ts";
import type { ModeRule } from "../performance/index.ts";
import { missionDefinition } from "./definition.ts";
import { type FlownFlight, flyMission } from "./flight.ts";
import { flightPath, sampledLegs, sampledRoute } from "./flight-path.ts";
import { missionPlan } from "./plan.ts";
import type { PowerSource } from "./power-source.ts";
import { preparedFlight } from "./prepared-flight.ts";
import { readRoute } from "./route.ts";

/** Level power of the invented aircraft of these tests [W]. */
const levelPower = (airspeed: number) => 1500 - 70 * airspeed + 2.4 * airspeed ** 2;

const source: PowerSource = {
  limits: [{ name: "stall margin", family: "air" }],
  powerFrom: (request) => source.power(request),
  power({ forward, climb, mode, altitude }) {
    if (mode === "clutch-open" && forward < 15) return { kind: "no-equilibrium", limit: { name: "propeller thrust", family: "power" } };
    if (forward > 35) return { kind: "no-equilibrium", limit: { name: "drive motor power", family: "power" } };
    const airspeed = Math.hypot(forward, climb);
    const electricPower = levelPower(airspeed) * (1 + altitude / 50_000) + 190 * climb + (mode === "clutch-open" ? 30 : 0);
    return { kind: "flies", electricPower, rotorShaftPower: 900, stallMargin: 1.3, shares: [0.9] };
  },
};

const pack: BatteryPack = {
  capacity: 44.2 * 3600,
  blocks: 13,
  cutoffVoltage: 42,
  openCircuitVoltage: (stateOfCharge) => 41 + 17 * stateOfCharge,
  resistance: () => 0.05,
};

const calm: Wind = { speed: 0, fromDirection: 0, profile: { kind: "uniform" } };

interface Given {
  readonly to?: readonly (readonly [number, number])[];
  readonly mission?: Record<string, unknown>;
  readonly terrain?: Terrain;
  readonly wind?: Wind;
  readonly step?: number;
  readonly power?: PowerSource;
  readonly modes?: ModeRule;
  readonly altitudeMaximum?: number;
}

/** Flies a line from 31° W, 41° N northward unless told otherwise. */
function flown(given: Given = {}): FlownFlight {
  const coordinates = [[-31, 41], ...(given.to ?? [[-31, 41.2]])];
  const document = {
    type: "FeatureCollection",
    features: [
      { type: "Feature", properties: { name: "line" }, geometry: { type: "LineString", coordinates } },
      { type: "Feature", properties: { name: "store" }, geometry: { type: "Point", coordinates: [-31, 41] } },
    ],
  };
  const mission = missionDefinition.parse({
    format: 1,
    title: "test",
    route: { file: "places/line.geojson", feature: "line" },
    evenGround: 0,
    loading: { blocks: 13, payload: "parts" },
    weather: { wind: { speed: 0, from: 0 } },
    cruise: { airspeed: 22, height: 100, heightDatum: "above-ground" },
    ...given.mission,
  });
  const reading = readRoute(document, "places/line.geojson", "line");
  if (reading.kind === "refused") throw new Error(reading.message);
  const planning = missionPlan(mission, reading.route, { kind: "record", name: "parts" });
  if (planning.kind === "refused") throw new Error(planning.slips[0]?.message);
  const { plan } = planning;
  const airspeeds = plan.legs.map(({ speed }) => (speed.kind === "airspeed" ? speed.airspeed : 20));
  const sampled = sampledRoute(reading.route, given.terrain ?? evenGround(0));
  if (sampled.kind === "no-ground") throw new Error("no ground");
  const wind = given.wind ?? calm;
  const limits = { acceleration: 0.5, climbRate: 3, descentRate: 2 };
  const path = flightPath({ route: reading.route, plan, legs: sampledLegs(plan, sampled.samples, airspeeds), wind, limits });
  const modes = given.modes ?? "cheaper";
  const prepared = preparedFlight({
    path,
    wind,
    limits,
    modes,
    step: given.step ?? 1,
    source: given.power ?? source,
    altitudeMaximum: given.altitudeMaximum ?? 2500,
    progress: () => {},
  });
  return flyMission({
    path,
    ...prepared,
    modes,
    pack,
    stateOfCharge: 1,
    groundPower: () => 25,
  });
}

const part = (flight: FlownFlight, kind: string) => {
  const rows = flight.rows.filter((row) => row.phase === kind && row.step !== undefined);
  const duration = rows.reduce((sum, row) => sum + (row.step?.duration ?? 0), 0);
  const energy = rows.reduce((sum, row) => sum + (row.step ? row.step.power * row.step.duration : 0), 0);
  const distance = rows.reduce((sum, row) => sum + row.state.groundSpeed * (row.step?.duration ?? 0), 0);
  return { rows, duration, energy, distance };
};

const northward = geodesicSegment(positionFromDegrees([-31, 41]), positionFromDegrees([-31, 41.2])).length;

describe("a mission flown", () => {
  it("in still air over even ground costs what the speed law says, second by second", () => {
    const cruise = part(flown(), "cruise");
    expect(cruise.energy / cruise.duration / (levelPower(22) * (1 + 100 / 50_000)) - 1).toBeCloseTo(0, 9);
    expect(cruise.distance / cruise.duration).toBeCloseTo(22, 9);
  });

  it("by hand: 10 m/s head wind costs 22/12 of the energy per distance; ground speed 12 m/s", () => {
    const cruise = part(flown({ wind: { ...calm, speed: 10 } }), "cruise");
    expect(cruise.distance / cruise.duration).toBeCloseTo(12, 9);
    expect(cruise.energy / cruise.distance).toBeCloseTo((levelPower(22) * (1 + 100 / 50_000)) / 12, 6);
  });

  it("covers the route: distance and last position are those of the geodesic", () => {
    const { rows, stop } = flown();
    expect(stop).toBeUndefined();
    const end = rows.at(-1)?.state;
    expect(end?.distance).toBeCloseTo(northward, 4);
    expect((end?.latitude as number) / (Math.PI / 180)).toBeCloseTo(41.2, 9);
    expect(end?.height).toBeCloseTo(0, 9);
  });

  it("goes through the phases in order", () => {
    const kinds = flown({ mission: { tasks: [{ at: 2, hover: 60, height: 30, heightDatum: "above-ground" }] } }).rows.map(
      (row) => row.phase,
    );
    const order = kinds.filter((kind, index) => kind !== kinds[index - 1]);
    expect(order).toEqual(["take-off", "accelerate", "cruise", "decelerate", "descent", "hover", "landing"]);
  });

  it("a hover lasts from full to the reserve what the pack's endurance says at that power", () => {
    const endurance = enduranceAt(pack, levelPower(0) * (1 + 100 / 50_000), 0.2);
    const { rows } = flown({ mission: { tasks: [{ at: 1, hover: 3 * 3600, height: 100, heightDatum: "above-ground" }] }, step: 1 });
    const hover = rows.filter((row) => row.phase === "hover");
    const first = hover[0];
    const below = hover.findIndex((row) => row.stateOfCharge < 0.2);
    const before = hover[below - 1];
    const after = hover[below];
    if (!first || !before || !after) throw new Error("crosses the reserve");
    const share = (before.stateOfCharge - 0.2) / (before.stateOfCharge - after.stateOfCharge);
    const lasted = before.state.time + share * (after.state.time - before.state.time) - first.state.time;
    // The climb to the hover was paid from the same charge: what it took is given back at hover power.
    const climb = enduranceAt(pack, levelPower(0) * (1 + 100 / 50_000), first.stateOfCharge).duration;
    expect(Math.abs((lasted + climb) / endurance.duration - 1)).toBeLessThan(1e-6);
  });

  it("keeps its books: energy is the sum of power times duration, and charge falls with it", () => {
    const { rows, energyUsed } = flown();
    const sum = rows.reduce((total, row) => total + (row.step ? row.step.power * row.step.duration : 0), 0);
    expect(energyUsed).toBeCloseTo(sum, 6);
    for (let index = 1; index < rows.length; index++) {
      expect(rows[index]?.stateOfCharge).toBeLessThan(rows[index - 1]?.stateOfCharge as number);
    }
  });

  it("halving the step quarters the error: second order where nothing changes abruptly", () => {
    const landing = (step: number) => flown({ step, to: [[-31, 41.03]] }).rows.at(-1)?.stateOfCharge as number;
    const exact = landing(0.05);
    const errors = [8, 4, 2].map((step) => Math.abs(landing(step) - exact));
    expect(Math.log2((errors[0] as number) / (errors[2] as number)) / 2).toBeGreaterThan(1.8);
  });

  it("over rolling ground a step of 1 s is within a hundred-thousandth of the charge", () => {
    const hills: Terrain = { elevationAt: ({ latitude }) => ({ kind: "elevation", value: 40 + 40 * Math.sin(latitude * 40_000) }) };
    const landing = (step: number) => flown({ terrain: hills, step, to: [[-31, 41.06]] }).rows.at(-1)?.stateOfCharge as number;
    expect(Math.abs(landing(1) - landing(0.1))).toBeLessThan(1e-5);
  });

  it("the payload that is delivered no longer counts on the way back", () => {
    const asked: number[] = [];
    const watching: PowerSource = {
      limits: source.limits,
      powerFrom: (request) => source.power(request),
      power: (request) => {
        asked.push(request.loading);
        return source.power(request);
      },
    };
    const mission = { tasks: [{ at: 2, land: 120, deliver: "parts" }] };
    const { rows } = flown({
      to: [
        [-31, 41.05],
        [-31, 41],
      ],
      mission,
      power: watching,
    });
    expect(new Set(asked)).toEqual(new Set([0, 1]));
    const ground = rows.filter((row) => row.phase === "on-ground");
    expect(ground).toHaveLength(120);
    expect(ground[0]?.step).toMatchObject({ mode: "on-ground", power: 25 });
    expect(ground[0]?.state.height).toBe(0);
  });
});

describe("what stops a mission", () => {
  it("a cross wind above the airspeed", () => {
    const { stop, rows } = flown({ wind: { speed: 30, fromDirection: Math.PI / 2, profile: { kind: "uniform" } } });
    expect(stop?.limit.name).toBe("cannot hold the track");
    expect(rows.length).toBeGreaterThan(1);
  });

  it("a speed without equilibrium, by the name of the limit that forbids it", () => {
    expect(flown({ mission: { cruise: { airspeed: 37, height: 100 } } }).stop?.limit).toEqual({
      name: "drive motor power",
      family: "power",
    });
  });

  it("a rotor mode that the rule asks for and the speed does not allow", () => {
    const slow = { cruise: { airspeed: 12, height: 100 } };
    expect(flown({ mission: slow, modes: "clutch-open" }).stop?.limit.name).toBe("propeller thrust");
    expect(flown({ mission: slow, modes: "clutch-closed" }).stop).toBeUndefined();
  });

  it("ground higher than the height above sea that is flown", () => {
    const wall: Terrain = { elevationAt: ({ latitude }) => ({ kind: "elevation", value: latitude > (41.1 * Math.PI) / 180 ? 140 : 0 }) };
    const { stop } = flown({ terrain: wall, mission: { cruise: { airspeed: 22, height: 100 } } });
    expect(stop?.limit.name).toBe("ground contact");
    expect(stop?.message).toMatch(/the ground rises to 1[0-4]\d m above sea where 100 m are flown/);
  });

  it("the permitted altitude", () => {
    expect(flown({ altitudeMaximum: 80 }).stop?.limit.name).toBe("altitude");
  });

  it("a pack that cannot give the power any more, with the power it could give", () => {
    const { stop } = flown({ mission: { tasks: [{ at: 2, hover: 5 * 3600 }] } });
    expect(stop?.limit.name).toBe("power not deliverable");
    expect(stop?.message).toMatch(/the pack gives at most \d+ W/);
  });
});

describe("whatever is asked of a mission", () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const profile = fc.oneof(
    fc.constant({ kind: "uniform" } as const),
    between(0, 1).map((exponent) => ({ kind: "power-law", exponent }) as const),
    between(1e-4, 5).map((roughnessLength) => ({ kind: "logarithmic", roughnessLength }) as const),
  );
  const asked = fc.record({
    wind: fc.record({ speed: fc.oneof(fc.constant(0), between(0, 60)), fromDirection: between(0, 2 * Math.PI), profile }),
    airspeed: fc.oneof(between(2, 60), fc.constantFrom(10, 22)),
    height: fc.oneof(between(1, 400), between(1, 6000)),
    datum: fc.constantFrom("above-ground", "mean-sea-level"),
    hover: between(0, 4000),
    relief: between(0, 600),
    north: between(1e-5, 0.04),
    step: fc.constantFrom(0.5, 1, 7),
    modes: fc.constantFrom<ModeRule>("cheaper", "clutch-closed", "clutch-open"),
  });

  it("rows stay finite, time runs forward, the books are kept and a stop has a name", () => {
    fc.assert(
      fc.property(asked, ({ wind, airspeed, height, datum, hover, relief, north, step, modes }) => {
        const terrain: Terrain = { elevationAt: ({ latitude }) => ({ kind: "elevation", value: relief * Math.sin(latitude * 9000) ** 2 }) };
        const flight = flown({
          to: [
            [-30.99, 41 + north],
            [-31, 41 + 2 * north],
          ],
          wind,
          terrain,
          step,
          modes,
          mission: { cruise: { airspeed, height, heightDatum: datum }, tasks: [{ at: 2, hover }] },
        });
        let energy = 0;
        flight.rows.forEach(({ state, step: taken, stateOfCharge }, index) => {
          const before = flight.rows[index - 1]?.state.time ?? -1;
          const sound = Number.isFinite(stateOfCharge) && Object.values(state).every(Number.isFinite) && state.time > before;
          if (!sound) expect.fail(`row ${index} of ${JSON.stringify(state)}`);
          if (taken) energy += taken.power * taken.duration;
        });
        expect(flight.energyUsed).toBeCloseTo(energy, 3);
        if (flight.stop) expect(flight.stop.message).not.toMatch(/NaN|undefined|Infinity/u);
        else expect(flight.rows.at(-1)?.state.height).toBeCloseTo(flight.rows.at(-1)?.state.ground as number, 6);
      }),
      { numRuns: 200 },
    );
  });
});
