import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atmosphereAt } from "../../environment/atmosphere/index.ts";
import { type AnnularLoads, type AnnularPoint, annularLoads } from "./annular-point.ts";
import type { RotorModel } from "./rotor-model.ts";
import { createRotorWorkspace } from "./rotor-workspace.ts";

const model: RotorModel = {
  radius: 1.2,
  bladeCount: 2,
  rootCutout: 0.15,
  stations: [
    { radiusFraction: 0, chord: 0.11, twist: 0.04 },
    { radiusFraction: 1, chord: 0.08, twist: -0.03, section: { kind: "built-in", name: "naca-0012", dragIncrement: 0 } },
  ],
  precone: 0,
  articulation: { kind: "teetering" },
  section: { kind: "built-in", name: "naca-0015", dragIncrement: 0.002 },
  tipLoss: { kind: "prandtl" },
  inducedPowerFactor: 1,
  inflow: "drees",
  inflowBalance: "annular",
  rootLoss: true,
  swirl: true,
  radialFlow: "off",
  azimuths: 16,
  radialElements: 12,
};
const air = atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 });
const workspace = createRotorWorkspace(model);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPoint: fc.Arbitrary<AnnularPoint> = fc.record({
  airspeed: fc.oneof(fc.constant(0), between(0, 60)),
  discAngle: fc.oneof(fc.constant(-Math.PI / 2), fc.constant(Math.PI / 2), between(-Math.PI / 2, Math.PI / 2)),
  rotationRate: fc.oneof(fc.constant(0), between(-90, 90)),
  collective: between(-0.4, 1.5),
  air: fc.constant(air),
});

/** A model with other settings, solved with rigid blades. */
function loadsOf(settings: Partial<RotorModel>, point: AnnularPoint): AnnularLoads {
  const loads = annularLoads(createRotorWorkspace({ ...model, ...settings }), point);
  if (loads.kind !== "solved") throw new Error(loads.reason);
  return loads;
}

const turning: AnnularPoint = { airspeed: 0, discAngle: -Math.PI / 2, rotationRate: 70, collective: 0.15, air };
const lossless = { tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 1 }, rootLoss: false } as const;
const { radius } = model;

describe("annular inflow", () => {
  it("answers for every state of a rotor: climb, hover, descent, oblique, stopped, backwards", () => {
    fc.assert(
      fc.property(anyPoint, (point) => {
        const loads = annularLoads(workspace, point);
        if (loads.kind !== "solved") throw new Error(loads.reason);
        for (const value of [loads.thrust, loads.torque, loads.aftForce, loads.pitchMoment, loads.inducedPower]) {
          expect(Number.isFinite(value)).toBe(true);
        }
      }),
      { numRuns: 400, seed: 11 },
    );
  });

  it.each([0, 2, 8])("balances momentum and angular momentum of every ring at %s m/s of climb", (airspeed) => {
    const dragless = { kind: "generic", liftSlope: 5.7, cd0: 0, cd1: 0, cd2: 0, stallAngle: 1.2 } as const;
    const settings = { ...lossless, section: dragless, stations: model.stations.map(({ section: _, ...station }) => station) };
    const { rings, thrust, torque } = loadsOf(settings, { ...turning, airspeed, collective: 0.15 + airspeed / 60 });
    for (const ring of rings) {
      const area = 2 * Math.PI * ring.radiusFraction * ring.width * radius ** 2;
      const mass = air.density * area * (airspeed + ring.inducedVelocity);
      expect(ring.thrust / (2 * mass * ring.inducedVelocity)).toBeCloseTo(1, 6);
      expect(ring.torque / (2 * mass * ring.swirlVelocity * ring.radiusFraction * radius)).toBeCloseTo(1, 6);
    }
    expect(rings.reduce((sum, ring) => sum + ring.thrust, 0)).toBeCloseTo(thrust, 9);
    expect(rings.reduce((sum, ring) => sum + ring.torque, 0)).toBeCloseTo(torque, 9);
  });

  it("swirls by drag where air flows through, and hardly where none does", () => {
    const torque = (settings: Partial<RotorModel>, point: AnnularPoint) => loadsOf({ ...lossless, ...settings }, point).torque;
    const idle = { ...turning, collective: 0.0035 };
    expect(torque({ swirl: true }, idle) / torque({ swirl: false }, idle)).toBeGreaterThan(0.97);
    const climb = { ...turning, airspeed: 12, collective: 0.4 };
    for (const ring of loadsOf(lossless, climb).rings.filter(({ radiusFraction }) => radiusFraction > 0.4)) {
      const mass = air.density * 2 * Math.PI * ring.radiusFraction * ring.width * radius ** 2 * (12 + ring.inducedVelocity);
      const share = (2 * mass * ring.swirlVelocity * ring.radiusFraction * radius) / ring.torque;
      expect(share).toBeGreaterThan(0.98);
      expect(share).toBeLessThan(1);
    }
  });

  it("in the stream along the disc gives every ring the induced velocity of a wing of its loading", () => {
    const rate = 70;
    const point = { ...turning, airspeed: 0.25 * rate * radius, discAngle: 0, collective: 0.05 };
    for (const ring of loadsOf({ ...lossless, swirl: false, inflow: "uniform" }, point).rings) {
      const loading = ring.thrust / (2 * Math.PI * ring.radiusFraction * ring.width * radius ** 2);
      const hover = Math.sqrt(Math.abs(loading) / (2 * air.density));
      const ratio = point.airspeed / hover;
      // Induced velocity over that in hover at zero disc tilt, closed form.
      const closed = Math.sqrt(-0.5 * ratio ** 2 + Math.sqrt(0.25 * ratio ** 4 + 1));
      expect(Math.abs(ring.inducedVelocity) / hover).toBeCloseTo(closed, 6);
    }
  });

  it("takes more power with tip loss, root loss and swirl than without, for the same thrust", () => {
    const powerFor = (settings: Partial<RotorModel>): number => {
      const at = (collective: number) => loadsOf(settings, { ...turning, collective });
      let [low, high] = [0, 0.3];
      for (let step = 0; step < 40; step++) {
        const middle = (low + high) / 2;
        if (at(middle).thrust < 120) low = middle;
        else high = middle;
      }
      return at(low).torque;
    };
    const ideal = powerFor({ ...lossless, swirl: false });
    const tip = powerFor({ rootLoss: false, swirl: false });
    const root = powerFor({ swirl: false });
    const all = powerFor({});
    expect(tip).toBeGreaterThan(1.01 * ideal);
    expect(root).toBeGreaterThan(tip);
    expect(all).toBeGreaterThan(root);
    expect(all).toBeLessThan(1.1 * ideal);
  });

  it("stands as pure drag when stopped, and between driven and driving turns freely", () => {
    const stream = { ...turning, airspeed: 12, discAngle: -Math.PI / 2 };
    const flat = loadsOf({}, { ...stream, rotationRate: 0, collective: 0 });
    // A plate across the stream: about the drag coefficient of the section at 90° on the blade area.
    const bladeArea = model.bladeCount * 0.0945 * radius * (1 - model.rootCutout);
    expect(-flat.thrust / (0.5 * air.density * 12 ** 2 * bladeArea)).toBeGreaterThan(1.2);
    expect(-flat.thrust / (0.5 * air.density * 12 ** 2 * bladeArea)).toBeLessThan(2);
    const feathered = loadsOf({}, { ...stream, rotationRate: 0, collective: Math.PI / 2 });
    expect(-feathered.thrust).toBeLessThan(-flat.thrust / 20);
    const torqueAt = (rotationRate: number) => loadsOf({}, { ...stream, rotationRate, collective: 0.5 }).torque;
    expect(torqueAt(5)).toBeLessThan(0);
    expect(torqueAt(60)).toBeGreaterThan(0);
  });

  it("does not depend on what was solved before", () => {
    const fresh = annularLoads(createRotorWorkspace(model), turning);
    annularLoads(workspace, { ...turning, airspeed: 30, discAngle: 0.7 });
    expect(annularLoads(workspace, turning)).toEqual(fresh);
  });
});
