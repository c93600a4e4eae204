// The program's sums of six components against the plain ones, in states strewn over all directions, rates and settings.
import { describe, expect, it } from "vitest";
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { massProperties } from "../../packages/engine/src/aircraft/index.ts";
import { Airframe, rotorStateWidth } from "../../packages/engine/src/airframe/index.ts";
import { atmosphereAt } from "../../packages/engine/src/environment/atmosphere/index.ts";
import type { PlainRotorState } from "./plain-blades.ts";
import { type PlainState, plainSix } from "./plain-six.ts";
import type { Vector } from "./plain-vectors.ts";
import { triedAircraft } from "./tried-aircraft.ts";

const air = atmosphereAt({ altitude: 500, temperatureOffset: 5, relativeHumidity: 0 });
const loading = { blocks: 7, payloadMass: 1.5, payloadPower: 0, payloadDragArea: 0.01 };

/** Numbers strewn evenly from −1 to 1, the same ones each time. */
function strewn(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_103_515_245 + 12_345) % 2 ** 31;
    return (2 * state) / 2 ** 31 - 1;
  };
}

function someState(aircraft: AircraftDefinition, next: () => number): PlainState {
  const controls: Record<string, number> = {};
  for (const control of aircraft.controls) {
    if (control.setting.kind !== "free") continue;
    const { minimum, maximum } = control.setting;
    controls[control.id] = (minimum + maximum) / 2 + ((maximum - minimum) / 2) * 0.8 * next();
  }
  const rotors: Record<string, PlainRotorState> = {};
  for (const rotor of aircraft.rotors) {
    rotors[rotor.id] = {
      tipSpeed: 78 + 18 * next(),
      inducedRatio: 0.04 + 0.03 * next(),
      back: 0.08 * next(),
      right: 0.08 * next(),
      coning: rotor.articulation.kind === "hinged" || rotor.articulation.kind === "hingeless" ? 0.05 + 0.03 * next() : rotor.precone,
    };
  }
  return {
    velocity: [12 + 14 * next(), 8 * next(), 2 * next()],
    rate: [0.4 * next(), 0.4 * next(), 0.4 * next()],
    pitch: 0.2 * next(),
    roll: 0.2 * next(),
    controls,
    rotors,
  };
}

const change = (aircraft: AircraftDefinition, rotor: Partial<AircraftDefinition["rotors"][number]>): AircraftDefinition => ({
  ...aircraft,
  rotors: aircraft.rotors.map((one) => ({ ...one, ...rotor })),
});

const plainest = triedAircraft();
const variants: readonly { readonly name: string; readonly aircraft: AircraftDefinition }[] = [
  { name: "teetering rotor", aircraft: plainest },
  { name: "clockwise rotor with a tilted shaft", aircraft: change(plainest, { turns: "clockwise", shaftTilt: { back: 0.1, right: 0 } }) },
  { name: "shaft tilted both ways", aircraft: change(plainest, { shaftTilt: { back: 0.06, right: -0.05 } }) },
  {
    name: "clockwise rotor on hinges with coupling",
    aircraft: change(plainest, {
      turns: "clockwise",
      blades: 4,
      articulation: { kind: "hinged", hingeOffset: 0, restFrequency: 0, pitchFlapCoupling: 0.3 },
    }),
  },
  {
    name: "hingeless rotor, uniform inflow, no radial flow",
    aircraft: change(plainest, {
      blades: 3,
      inflow: "uniform",
      radialFlow: "off",
      articulation: { kind: "hingeless", flapFrequency: 1.1, hingeOffset: 0, pitchFlapCoupling: 0 },
    }),
  },
  {
    name: "hinges off the shaft",
    aircraft: change(plainest, { articulation: { kind: "hinged", hingeOffset: 0.06, restFrequency: 0, pitchFlapCoupling: 0 } }),
  },
  {
    name: "stiff blades, resultant radial flow, Pitt and Peters",
    aircraft: change(plainest, { articulation: { kind: "rigid" }, inflow: "pitt-peters", radialFlow: "resultant" }),
  },
  {
    name: "built-in section, Prandtl's tip",
    aircraft: change(plainest, { section: { kind: "built-in", name: "naca-0015", dragIncrement: 0.004 }, tipLoss: { kind: "prandtl" } }),
  },
];

const tolerance = 1e-6;

describe.each(variants)("with a $name", ({ aircraft }) => {
  it("every part loads the aircraft as another hand's sums say", () => {
    const next = strewn(20_261_125);
    const mass = massProperties(aircraft, loading);
    const airframe = new Airframe({ aircraft, loading, air, losses: "component", hotelPower: 0, mass });
    const weight = mass.mass * 9.80665;
    const size = aircraft.rotors[0]?.radius ?? 1;
    for (let trial = 0; trial < 12; trial++) {
      const state = someState(aircraft, next);
      const plain = plainSix(aircraft, loading, air, { ...state, uncoupled: [] });
      const controls = Float64Array.from(airframe.controls, ({ id }) => state.controls[id] ?? 0);
      const rotorStates = new Float64Array(aircraft.rotors.length * rotorStateWidth);
      aircraft.rotors.forEach(({ id }, i) => {
        const { tipSpeed, inducedRatio, back, right, coning } = state.rotors[id] as PlainRotorState;
        rotorStates.set([tipSpeed, inducedRatio, back, right, coning], i * rotorStateWidth);
      });
      const loads = airframe.evaluate(
        { velocity: state.velocity, rates: state.rate },
        controls,
        rotorStates,
        airframe.lines.map(() => true),
      );
      const apart = (found: Vector, hand: Vector, scale: number, where: string) => {
        for (const axis of [0, 1, 2] as const) {
          expect(Math.abs(found[axis] - hand[axis]) / scale, `${where} ${axis}: ${found[axis]} against ${hand[axis]}`).toBeLessThan(
            tolerance,
          );
        }
      };
      for (const part of loads.parts) {
        const own = plain.parts[part.id];
        if (own === undefined) throw new Error(`no ${part.id}`);
        apart(part.force, own.force, weight, `${trial}: force of ${part.id}`);
        apart(part.moment, own.moment, weight * size, `${trial}: moment of ${part.id}`);
      }
      loads.rotors.forEach((rotor, i) => {
        const own = plain.rotors[aircraft.rotors[i]?.id ?? ""];
        expect(Math.abs(rotor.torque - (own?.torque ?? Number.NaN)) / (weight * size), `${trial}: torque`).toBeLessThan(tolerance);
        expect(Math.abs(rotor.thrust - (own?.thrust ?? Number.NaN)) / weight, `${trial}: thrust`).toBeLessThan(tolerance);
      });
      loads.propellers.forEach((propeller, i) => {
        const own = plain.propellers[aircraft.propellers[i]?.id ?? ""];
        expect(propeller.shaftPower / (own?.shaftPower ?? Number.NaN), `${trial}: shaft power`).toBeCloseTo(1, 9);
      });
    }
  });
});
