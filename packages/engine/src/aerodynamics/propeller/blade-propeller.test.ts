import { describe, expect, it } from "vitest";
import { annularLoads, createRotorWorkspace } from "../rotor/index.ts";
import {
  bladePropeller,
  helicalPitchAngle,
  type PropellerBlades,
  type PropellerCondition,
  type PropellerLoads,
  propellerCoefficients,
  propellerPowerPerRotor,
  propellerRotor,
  propellerThrustPerRotor,
  rotationRateFor,
} from "./index.ts";

const air = { density: 1.225, speedOfSound: 340, dynamicViscosity: 1.79e-5 };
const diameter = 0.3;
const places = Array.from({ length: 18 }, (_, i) => 0.15 + 0.05 * i);
const pitch = 0.2;
const straight = { kind: "generic", liftSlope: 6, cd0: 0.01, cd1: 0, cd2: 0, stallAngle: 0.3 } as const;
const usual: PropellerBlades = {
  diameter,
  bladeCount: 2,
  rootCutout: 0.15,
  stations: places.map((radiusFraction) => ({
    radiusFraction,
    chord: 0.024,
    pitchAngle: helicalPitchAngle(pitch, diameter, radiusFraction),
  })),
  section: { kind: "cambered", thickness: 0.09, camber: 0.04, dragIncrement: 0 },
  pitchChange: 0,
  stallDelay: true,
  swirl: true,
  rootLoss: false,
  radialElements: 20,
  azimuths: 16,
};

function solved(blades: PropellerBlades, more: Partial<PropellerCondition>): PropellerLoads {
  const loads = bladePropeller(blades).loadsAt({ rotationRate: 600, airspeed: 0, inflowAngle: 0, air, ...more });
  if (loads.kind !== "solved") throw new Error(loads.reason);
  return loads;
}

function coefficients(blades: PropellerBlades, more: Partial<PropellerCondition>) {
  const at = { rotationRate: 600, airspeed: 0, inflowAngle: 0, air, ...more };
  const { thrust, torque } = solved(blades, more);
  const { rotationRate, airspeed, inflowAngle } = at;
  return propellerCoefficients({
    thrust,
    power: torque * rotationRate,
    rotationRate,
    airspeed,
    inflowAngle,
    diameter: blades.diameter,
    density: at.air.density,
  });
}

describe("a propeller by its blades", () => {
  it("has the coefficients of the same blades as a rotor, times π³/4 and π⁴/4", () => {
    const rotor = annularLoads(createRotorWorkspace(propellerRotor(usual)), {
      airspeed: 5,
      discAngle: -Math.PI / 2,
      rotationRate: 600,
      collective: helicalPitchAngle(pitch, diameter, 0.75),
      air,
    });
    if (rotor.kind !== "solved") throw new Error(rotor.reason);
    const radius = diameter / 2;
    const scale = air.density * Math.PI * radius ** 2 * (600 * radius) ** 2;
    const { ct, cp } = coefficients(usual, { airspeed: 5 });
    expect((ct ?? 0) / (rotor.thrust / scale)).toBeCloseTo(propellerThrustPerRotor, 9);
    expect((cp ?? 0) / (rotor.torque / (scale * radius))).toBeCloseTo(propellerPowerPerRotor, 9);
  });

  const frictionless: PropellerBlades = { ...usual, section: { ...straight, cd0: 1e-9, stallAngle: 0.9 }, stallDelay: false };

  it("spends its power on thrust, on the slipstream with its rotation, and on drag: nothing else", () => {
    for (const airspeed of [0, 6, 12]) {
      const { thrust, torque, inducedPower } = solved(frictionless, { airspeed });
      expect((thrust * airspeed + (inducedPower ?? 0)) / (torque * 600)).toBeCloseTo(1, 5);
      const real = solved(usual, { airspeed });
      expect(real.torque * 600).toBeGreaterThan(real.thrust * airspeed + (real.inducedPower ?? 0));
    }
  });

  it("gives the air of every ring the momentum and the angular momentum that it takes: T = 2 v ṁ, Q = 2 w r ṁ away from the tip", () => {
    for (const airspeed of [0, 8]) {
      // Without drag: only lift sets the air in rotation.
      const { rings } = solved(frictionless, { airspeed });
      for (const ring of rings.filter(({ radiusFraction }) => radiusFraction > 0.3 && radiusFraction < 0.6)) {
        const radius = (ring.radiusFraction * diameter) / 2;
        const flow = air.density * 2 * Math.PI * radius * ((ring.width * diameter) / 2) * (airspeed + ring.inducedVelocity);
        // Prandtl's function is above 0.93 there.
        expect(ring.thrust / (2 * flow * ring.inducedVelocity)).toBeGreaterThan(0.93);
        expect(ring.thrust / (2 * flow * ring.inducedVelocity)).toBeLessThan(1);
        expect(ring.torque / (2 * flow * ring.swirlVelocity * radius) / (ring.thrust / (2 * flow * ring.inducedVelocity))).toBeCloseTo(
          1,
          6,
        );
      }
    }
  });

  it("makes no thrust where it screws itself through the air: advance ratio near pitch over diameter, later with camber", () => {
    const zeroThrust = (blades: PropellerBlades): number => {
      let [low, high] = [0.2, 2];
      while (high - low > 1e-6) {
        const middle = (low + high) / 2;
        if ((coefficients(blades, { airspeed: (middle * 600 * diameter) / (2 * Math.PI) }).ct ?? 0) > 0) low = middle;
        else high = middle;
      }
      return low;
    };
    expect(zeroThrust({ ...usual, section: { ...straight, cd0: 1e-4 } }) / (pitch / diameter)).toBeCloseTo(1, 2);
    expect(zeroThrust({ ...usual, section: straight })).toBeLessThan(pitch / diameter);
    expect(zeroThrust(usual)).toBeGreaterThan(1.08 * (pitch / diameter));
  });

  it("turned backwards with mirrored blades does the same", () => {
    const mirrored: PropellerBlades = {
      ...usual,
      section: straight,
      stations: usual.stations.map((one) => ({ ...one, pitchAngle: Math.PI - one.pitchAngle })),
    };
    for (const airspeed of [0, 7]) {
      const forwards = solved({ ...usual, section: straight }, { airspeed });
      const backwards = solved(mirrored, { airspeed, rotationRate: -600 });
      expect(backwards.thrust / forwards.thrust).toBeCloseTo(1, 7);
      expect(backwards.torque / forwards.torque).toBeCloseTo(-1, 7);
    }
  });

  it("is the same at twice the size, half the rate and twice the viscosity: scale enters by Reynolds and Mach number alone", () => {
    const twice: PropellerBlades = {
      ...usual,
      diameter: 2 * diameter,
      stations: usual.stations.map((one) => ({ ...one, chord: 2 * one.chord })),
    };
    const small = coefficients(usual, { airspeed: 6 });
    const large = coefficients(twice, { airspeed: 6, rotationRate: 300, air: { ...air, dynamicViscosity: 2 * air.dynamicViscosity } });
    expect((large.ct ?? 0) / (small.ct ?? 1)).toBeCloseTo(1, 9);
    expect((large.cp ?? 0) / (small.cp ?? 1)).toBeCloseTo(1, 9);
  });

  it("changes by less than 1 % in thrust and power from 20 to 40 elements", () => {
    for (const airspeed of [0, 10]) {
      const coarse = coefficients(usual, { airspeed });
      const fine = coefficients({ ...usual, radialElements: 40 }, { airspeed });
      expect(Math.abs((coarse.ct ?? 0) / (fine.ct ?? 1) - 1)).toBeLessThan(0.01);
      expect(Math.abs((coarse.cp ?? 0) / (fine.cp ?? 1) - 1)).toBeLessThan(0.01);
    }
  });

  it("in an oblique stream is pushed along it, from whichever side it comes", () => {
    const one = solved(usual, { airspeed: 8, inflowAngle: 1.3 });
    expect(one.normalForce).toBeGreaterThan(0);
    expect(solved(usual, { airspeed: 8, inflowAngle: -1.3 })).toEqual(one);
  });

  it("meets oblique flow without a jump", () => {
    const along = solved(usual, { airspeed: 8, inflowAngle: 0 });
    const nearly = solved(usual, { airspeed: 8, inflowAngle: 1e-4 });
    expect(nearly.thrust / along.thrust).toBeCloseTo(1, 4);
    expect(nearly.torque / along.torque).toBeCloseTo(1, 4);
  });

  it("held still is a brake", () => {
    const { thrust, torque } = solved(usual, { airspeed: 15, rotationRate: 0 });
    expect(thrust).toBeLessThan(0);
    // The air would turn it forwards.
    expect(torque).toBeLessThan(0);
  });
});

describe("the rate at which a propeller", () => {
  const source = bladePropeller(usual);
  const surroundings = { inflowAngle: 0, air };
  const rate = (target: Parameters<typeof rotationRateFor>[3], airspeed: number) =>
    rotationRateFor(source, { kind: "airspeed", airspeed }, surroundings, target);

  it("makes a thrust or takes a power is the one at which it does", () => {
    for (const airspeed of [0, 5, 15]) {
      const thrust = rate({ kind: "thrust", value: 6 }, airspeed);
      const power = rate({ kind: "power", value: 80 }, airspeed);
      if (thrust.kind !== "found" || power.kind !== "found") throw new Error("no rate");
      expect(thrust.loads.thrust).toBeCloseTo(6, 6);
      expect(power.loads.torque * power.condition.rotationRate).toBeCloseTo(80, 5);
    }
  });

  it("turns free needs no torque, brakes, and lies above the one at which thrust vanishes", () => {
    const free = rate({ kind: "torque", value: 0 }, 15);
    const thrustless = rate({ kind: "thrust", value: 0 }, 15);
    if (free.kind !== "found" || thrustless.kind !== "found") throw new Error("no rate");
    expect(Math.abs(free.loads.torque)).toBeLessThan(1e-8);
    expect(free.loads.thrust).toBeLessThan(0);
    expect(free.condition.rotationRate).toBeLessThan(thrustless.condition.rotationRate);
  });

  it("cannot make what is out of reach says so with the largest", () => {
    const out = rate({ kind: "thrust", value: 1e4 }, 0);
    expect(out.kind === "none" && out.reason).toMatch(/the largest thrust up to tip Mach number 0.9 is \d/u);
  });

  it("holds an advance ratio and a thrust holds both", () => {
    const found = rotationRateFor(source, { kind: "advanceRatio", advanceRatio: 0.4 }, surroundings, { kind: "thrust", value: 5 });
    if (found.kind !== "found") throw new Error(found.reason);
    const { rotationRate, airspeed } = found.condition;
    expect((2 * Math.PI * airspeed) / (rotationRate * diameter)).toBeCloseTo(0.4, 12);
    expect(found.loads.thrust).toBeCloseTo(5, 6);
  });
});
