// What must hold of six-component trims whatever the numbers are: mirrors, moving air, trends of balance and stability.
import type { AircraftDefinition } from "@wingseed/engine";
import { beforeAll, describe, expect, test } from "vitest";
import { massProperties } from "../../packages/engine/src/aircraft/index.ts";
import {
  type FullPoint,
  type FullTrimmed,
  type FullTrimmer,
  fullObjective,
  runningLines,
} from "../../packages/engine/src/equilibrium/full/index.ts";
import { bodyState, movingFlight } from "../../packages/engine/src/motion/index.ts";
import { demoDefinition } from "./demo-flight.ts";
import { trimmerOf } from "./six-trim.ts";

const degree = Math.PI / 180;
let baseline: AircraftDefinition;
beforeAll(async () => {
  baseline = await demoDefinition("baseline");
});

const flight = (change: Partial<FullPoint>): FullPoint => ({ mode: "clutch-closed", airspeed: 0, climbRate: 0, sideslip: 0, ...change });

function trimmed(trimmer: FullTrimmer, point: FullPoint): FullTrimmed {
  const outcome = trimmer.trim(point);
  if (outcome.kind !== "trimmed") throw new Error(`${JSON.stringify(point)}: ${outcome.kind}`);
  return outcome;
}

const place = <Part extends { readonly place: { readonly x: number; readonly y: number; readonly z: number } }>(part: Part): Part => ({
  ...part,
  place: { ...part.place, y: -part.place.y },
});

/** The aircraft in a mirror that stands along its plane of symmetry. */
function mirrored(aircraft: AircraftDefinition): AircraftDefinition {
  return {
    ...aircraft,
    rotors: aircraft.rotors.map((rotor) => ({
      ...rotor,
      hub: { ...rotor.hub, y: -rotor.hub.y },
      shaftTilt: { ...rotor.shaftTilt, right: -rotor.shaftTilt.right },
      turns: rotor.turns === "clockwise" ? "counter-clockwise" : "clockwise",
    })),
    propellers: aircraft.propellers.map((propeller) => ({
      ...place(propeller),
      axis: { ...propeller.axis, right: -propeller.axis.right },
      turns: propeller.turns === "clockwise" ? "counter-clockwise" : "clockwise",
    })),
    surfaces: aircraft.surfaces.map(place),
    bodies: aircraft.bodies.map((body) => ({
      ...place(body),
      ...(body.sidePlace ? { sidePlace: { ...body.sidePlace, y: -body.sidePlace.y } } : {}),
    })),
    emptyCentre: { ...aircraft.emptyCentre, y: -aircraft.emptyCentre.y },
  };
}

/** Controls that change their sign in the mirror: the disc to the right, the fin's nose to the left. */
const sideways = new Set(["lateral-cyclic", "rudder"]);

describe("a mirrored aircraft", () => {
  test.each([
    { name: "hovering", point: flight({}) },
    { name: "flying ahead", point: flight({ airspeed: 16 }) },
    { name: "with the wind from the right", point: flight({ airspeed: 7, sideslip: 90 * degree }) },
    { name: "turning, climbing and slipping", point: flight({ airspeed: 14, sideslip: 5 * degree, turnRate: 0.15, climbRate: 0.5 }) },
    { name: "in autorotation", point: flight({ airspeed: 22, mode: "clutch-open" }) },
  ])("$name has the mirrored trim", ({ point }) => {
    const one = trimmed(trimmerOf(baseline), point);
    const image = trimmerOf(mirrored(baseline));
    const other = trimmed(image, { ...point, sideslip: -(point.sideslip ?? 0), turnRate: -(point.turnRate ?? 0) });
    expect(fullObjective(other) / fullObjective(one)).toBeCloseTo(1, 5);
    const [a, b] = [one.evaluation, other.evaluation];
    expect(b.pitch).toBeCloseTo(a.pitch, 3);
    expect(b.roll).toBeCloseTo(-a.roll, 3);
    image.airframe.controls.forEach(({ id, what }, i) => {
      const sign = sideways.has(id) ? -1 : 1;
      expect(b.controls[i], id).toBeCloseTo(sign * (a.controls[i] as number), what === "thrust" ? 1 : 3);
    });
  });
});

/** Rates of change of the body's motion at a trim in a steady wind [m/s], and how fast it goes over the ground: north, east, down. */
function inWind(trimmer: FullTrimmer, at: FullTrimmed, wind: readonly [number, number, number]) {
  const { dynamics, state } = movingFlight(trimmer.airframe, at, 1e-10);
  dynamics.wind = () => wind;
  // The air carries the aircraft along: what it flies through stays, what it flies over does not. North is ahead, level.
  const [sp, cp, sr, cr] = [
    Math.sin(at.evaluation.pitch),
    Math.cos(at.evaluation.pitch),
    Math.sin(at.evaluation.roll),
    Math.cos(at.evaluation.roll),
  ];
  const [n, e, d] = wind;
  state[bodyState.u] = (state[bodyState.u] as number) + cp * n - sp * d;
  state[bodyState.u + 1] = (state[bodyState.u + 1] as number) + sr * sp * n + cr * e + sr * cp * d;
  state[bodyState.u + 2] = (state[bodyState.u + 2] as number) + cr * sp * n - sr * e + cr * cp * d;
  const rate = new Float64Array(dynamics.size);
  dynamics.rates(0, state, rate);
  return { motion: rate.slice(0, 6), track: rate.slice(bodyState.north, bodyState.north + 3) };
}

describe("moving air", () => {
  test("that is steady and everywhere the same leaves a trim in balance, and shifts its track over the ground", () => {
    const trimmer = trimmerOf(baseline);
    for (const point of [
      flight({ airspeed: 14 }),
      flight({ airspeed: 7, sideslip: 60 * degree }),
      flight({ airspeed: 20, mode: "clutch-open" }),
    ]) {
      const at = trimmed(trimmer, point);
      const calm = inWind(trimmer, at, [0, 0, 0]);
      const wind = [-6, 9, 0.5] as const;
      const windy = inWind(trimmer, at, wind);
      // A trim is an equilibrium of the equations of motion, which are another hand's.
      for (const value of calm.motion) expect(Math.abs(value)).toBeLessThan(1e-4);
      for (const value of windy.motion) expect(Math.abs(value)).toBeLessThan(1e-4);
      for (const axis of [0, 1, 2] as const)
        expect((windy.track[axis] as number) - (calm.track[axis] as number)).toBeCloseTo(wind[axis], 9);
    }
  });
});

/** Without a driven rotor and with everything in the plane of symmetry: free rotors of either sense cancel nothing, so none is left. */
function withoutTorque(aircraft: AircraftDefinition): AircraftDefinition {
  return {
    ...aircraft,
    rotors: [],
    driveLines: aircraft.driveLines.filter(({ drives }) => drives !== "main"),
    controls: aircraft.controls.filter(({ part }) => part !== "main"),
    interference: aircraft.interference.filter(({ from }) => from !== "main"),
    surfaces: aircraft.surfaces.map((surface) => (surface.id === "wing" ? { ...surface, area: 1.2, span: 3 } : surface)),
  };
}

describe("a symmetric aircraft without rotor torque", () => {
  test("has no lateral trim", () => {
    const trimmer = trimmerOf(withoutTorque(baseline));
    for (const airspeed of [18, 24]) {
      const { evaluation } = trimmed(trimmer, flight({ airspeed }));
      expect(Math.abs(evaluation.roll)).toBeLessThan(1e-4);
      const at = (id: string) => evaluation.controls[trimmer.airframe.controls.findIndex((control) => control.id === id)] as number;
      expect(Math.abs(at("rudder"))).toBeLessThan(1e-4);
      expect(at("left-thrust")).toBeCloseTo(at("right-thrust"), 2);
    }
  });
});

/** Pitching moment of the air about the centre of gravity when the flight or the controls differ from a trim, rotors held in theirs [N m]. */
function pitchingAt(
  { airframe }: FullTrimmer,
  { evaluation, point }: FullTrimmed,
  change: { readonly down?: number; readonly controls?: Readonly<Record<string, number>> },
): number {
  const { velocity, rates } = evaluation.flight;
  const controls = evaluation.controls.map((value, i) => value + (change.controls?.[airframe.controls[i]?.id ?? ""] ?? 0));
  const moved = { velocity: [velocity[0], velocity[1], velocity[2] + (change.down ?? 0)] as const, rates };
  return airframe.evaluate(moved, controls, evaluation.rotorStates, runningLines(airframe, point)).moment[1];
}

const movedCentre = (aircraft: AircraftDefinition, aft: number): AircraftDefinition => ({
  ...aircraft,
  emptyCentre: { ...aircraft.emptyCentre, x: aircraft.emptyCentre.x - aft },
});

/** Nose-down moment per radian of incidence at a trim, controls and discs held [N m/rad]; positive is stable. */
function stiffness(aircraft: AircraftDefinition): number {
  const trimmer = trimmerOf(aircraft);
  const at = trimmed(trimmer, flight({ airspeed: 24 }));
  const h = 1e-3;
  const turned = (angle: number) => pitchingAt(trimmer, at, { down: angle * 24 });
  return -(turned(h) - turned(-h)) / (2 * h);
}

describe("balance and stability", () => {
  test("a centre of gravity further aft destabilises", () => {
    const stiff = [0, 0.02, 0.04].map((aft) => stiffness(movedCentre(withoutTorque(baseline), aft)));
    expect(stiff[1]).toBeLessThan(stiff[0] as number);
    expect(stiff[2]).toBeLessThan(stiff[1] as number);
  });

  test("a larger tail stabilises", () => {
    const stiff = [0.08, 0.1, 0.14].map((area) => {
      const aircraft = withoutTorque(baseline);
      return stiffness({
        ...aircraft,
        surfaces: aircraft.surfaces.map((one) => (one.id === "tailplane" ? { ...one, area, span: 0.6 * Math.sqrt(area / 0.1) } : one)),
      });
    });
    expect(stiff[1]).toBeGreaterThan(stiff[0] as number);
    expect(stiff[2]).toBeGreaterThan(stiff[1] as number);
  });

  test("a line of thrust raised above the centre of gravity turns the nose down with thrust", () => {
    const raised = (height: number): AircraftDefinition => ({
      ...baseline,
      propellers: baseline.propellers.map((one) => ({ ...one, place: { ...one.place, z: -height } })),
    });
    const moments = [0.1, 0.3].map((height) => {
      const trimmer = trimmerOf(raised(height));
      const at = trimmed(trimmer, flight({ airspeed: 24, mode: "clutch-open" }));
      const pulled = pitchingAt(trimmer, at, { controls: { "left-thrust": 1, "right-thrust": 1 } });
      return {
        moment: pulled - pitchingAt(trimmer, at, {}),
        depth: massProperties(baseline, trimmer.conditions.loading).centre.z + height,
      };
    });
    // Two newtons on an arm from the centre of gravity to the line of thrust, nose down.
    for (const { moment, depth } of moments) expect(moment).toBeCloseTo(-2 * depth, 2);
    expect(moments[1]?.moment).toBeLessThan((moments[0]?.moment ?? 0) - 0.3);
  });
});
