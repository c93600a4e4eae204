// The plain recomputation itself against sums by hand.
import { describe, expect, it } from "vitest";
import { plainMass } from "./plain-mass.ts";
import { inducedBy, type PropellerPart, plainPropeller, thrustAxis } from "./plain-propeller.ts";
import { plainSix, weightOf } from "./plain-six.ts";
import { plainBodyForces, plainSideForce, plainSurface, type SurfacePart } from "./plain-surfaces.ts";
import { dot, tilted, upright, type Vector } from "./plain-vectors.ts";
import { triedAircraft } from "./tried-aircraft.ts";

const air = { density: 1.2, speedOfSound: 340, dynamicViscosity: 1.79e-5 };
const bare = { blocks: 0, payloadMass: 0, payloadDragArea: 0 };
const close = (found: Vector, hand: Vector, digits = 9) => {
  for (const axis of [0, 1, 2] as const) expect(found[axis]).toBeCloseTo(hand[axis], digits);
};

const fin: SurfacePart = {
  id: "fin",
  place: { x: -1, y: 0, z: -0.2 },
  dihedral: Math.PI / 2,
  tipDihedral: 0,
  area: 0.06,
  span: 0.3,
  incidence: 0,
  liftSlope: 2.5,
  zeroLiftAngle: 0,
  maximumLiftCoefficient: 0.9,
  trimLiftFraction: 1,
  momentCoefficient: 0,
  cd0: 0,
  spanEfficiency: 0.9,
  stall: { angle: 0.35, sharpness: 60, flatPlateCoefficient: 1.2 },
  movables: [],
};

const propeller: PropellerPart = {
  id: "right-propeller",
  place: { x: 0.1, y: 0.8, z: -0.1 },
  axis: { up: 0, right: 0 },
  turns: "clockwise",
  diameter: 0.48,
  inducedFactor: 1.2,
  profileEfficiency: 0.8,
  reverseFigureOfMerit: 0.38,
  thrustCoefficient: 0.095,
  zeroThrustAdvanceRatio: 1.05,
  reverseThrustCoefficient: 0.06,
  thrustRate: 40,
  reversalTime: 0.25,
  inertia: 0.0011,
  stoppedDragArea: 0,
};

describe("axes", () => {
  it("tilted back and to the right send the normal there", () => {
    close(tilted(upright, 0.1, 0).up, [-Math.sin(0.1), 0, -Math.cos(0.1)]);
    close(tilted(upright, 0, 0.1).up, [0, Math.sin(0.1), -Math.cos(0.1)]);
  });

  it("of a propeller turned up by 90 degrees point up", () => {
    close(thrustAxis({ axis: { up: Math.PI / 2, right: 0 } }), [0, 0, -1]);
    close(thrustAxis({ axis: { up: 0, right: Math.PI / 2 } }), [0, 1, 0]);
  });
});

describe("weight", () => {
  it("pulls back with the nose up and to the right with the right side down", () => {
    const [back, right, down] = weightOf(2, 0.2, 0.1);
    expect(back).toBeCloseTo(-2 * 9.80665 * Math.sin(0.2), 12);
    expect(right).toBeCloseTo(2 * 9.80665 * Math.cos(0.2) * Math.sin(0.1), 12);
    expect(Math.hypot(back, right, down)).toBeCloseTo(2 * 9.80665, 12);
  });
});

describe("mass", () => {
  it("of two lumps a meter apart has its centre and inertia by hand", () => {
    const aircraft = {
      ...triedAircraft(),
      emptyMass: 3,
      emptyCentre: { x: 0, y: 0, z: 0 },
      emptyInertia: { x: 0, y: 0, z: 0 },
      payloadBay: { x: 1, y: 0, z: 0 },
    };
    const { battery } = aircraft;
    const light = { ...aircraft, battery: { ...battery, fixedMass: 0 } };
    const { mass, centre, momentum } = plainMass(light, { ...bare, payloadMass: 1 });
    expect(mass).toBe(4);
    close(centre, [0.25, 0, 0]);
    // 3 × 0.25² + 1 × 0.75²
    close(momentum([0, 1, 0]), [0, 0.75, 0]);
    close(momentum([1, 0, 0]), [0, 0, 0]);
  });
});

describe("a surface", () => {
  it("as a fin behind the centre turns the nose into wind from the right", () => {
    const { force, moment } = plainSurface(fin, 1.2, [-1, 0, 0], () => [20, 2, 0], 0);
    const angle = Math.atan2(2, 20);
    const lift = 0.6 * 404 * 0.06 * 2.5 * angle;
    const drag = (0.6 * 404 * 0.06 * (2.5 * angle) ** 2) / (Math.PI * 1.5 * 0.9);
    close(force, [lift * Math.sin(angle) - drag * Math.cos(angle), -lift * Math.cos(angle) - drag * Math.sin(angle), 0], 3);
    expect(moment[2]).toBeGreaterThan(0);
    // Turned nose left, it pushes its place to the left and the nose of the aircraft right.
    expect(plainSurface(fin, 1.2, [-1, 0, 0], () => [20, 0, 0], 0.1).force[1]).toBeLessThan(0);
  });

  it("as a wing lifts at an angle of attack and damps rolling", () => {
    const wing = { ...fin, dihedral: 0, area: 0.4, span: 2 };
    const { force } = plainSurface(wing, 1.2, [0, 0, 0], () => [20, 0, 1], 0);
    expect(force[2]).toBeCloseTo(-0.6 * 401 * 0.4 * 2.5 * Math.atan2(1, 20), 0);
    const rolling = plainSurface(wing, 1.2, [0, 0, 0], (place) => [20, 0, 0.5 * place[1]], 0);
    // Strips at y meet the flow at p y/V: −½ρV a p S b²/12 about the forward axis.
    expect(rolling.moment[0]).toBeCloseTo((-0.6 * 20 * 2.5 * 0.5 * 0.4 * 2 ** 2) / 12, 2);
  });

  it("with raised tips is rolled away from wind on the right, and its right aileron down rolls it left", () => {
    const wing = { ...fin, dihedral: 0, tipDihedral: 0.1, area: 0.4, span: 2 };
    expect(plainSurface(wing, 1.2, [0, 0, 0], () => [20, 2, 1], 0).moment[0]).toBeLessThan(0);
    const edge = {
      id: "right",
      side: "right" as const,
      inner: 0.5,
      outer: 1,
      liftPerDeflection: 2,
      momentPerDeflection: -0.3,
      dragPerDeflectionSquared: 0,
    };
    const flat = { ...fin, dihedral: 0, area: 0.4, span: 2, movables: [edge] };
    const { force, moment } = plainSurface(flat, 1.2, [0, 0, 0], () => [20, 0, 0], 0, { right: 0.1 });
    const lift = 0.6 * 400 * 0.1 * 0.2;
    close(force, [0, 0, -lift]);
    close(moment, [-0.75 * lift, 0.6 * 400 * 0.1 * 0.2 * -0.03, 0]);
  });
});

describe("a body", () => {
  it("has drag along its path, sideways, and from the air that is blown on it", () => {
    const [first] = triedAircraft().bodies;
    if (first === undefined) throw new Error("the tried aircraft has a body");
    const body = { ...first, dragArea: 0.05, sideDragArea: 0.1, verticalDragArea: 0.06 };
    const { along, above } = plainBodyForces(body, 1.2, [3, 4, 0], 5);
    close(along, [-0.6 * 5 * 0.05 * 3, -0.6 * 5 * 0.05 * 4, 0]);
    close(plainSideForce(body, 1.2, [3, 4, 0]), [0, -0.6 * 16 * 0.1, 0]);
    // Blown on from above it is pushed down; by the share of it that lies there.
    close(above, [0, 0, 0.6 * 25 * 0.06]);
    close(plainBodyForces(body, 1.2, [3, 4, 0], 5, 0.4).above, [0, 0, 0.4 * 0.6 * 25 * 0.06]);
  });
});

describe("a propeller", () => {
  const still = { back: 0, right: 0 };

  it("at rest needs the power of momentum theory times its factors, and turns the airframe against its sense", () => {
    const { force, moment, shaftPower, rotationRate } = plainPropeller(propeller, 1.2, 10, [0, 0, 0], [0, 0, 0], still);
    const area = (Math.PI * 0.48 ** 2) / 4;
    expect(shaftPower).toBeCloseTo(((10 * Math.sqrt(10 / (2 * 1.2 * area))) / 0.8) * (1.2 + 0), 9);
    close(force, [10, 0, 0]);
    expect(rotationRate).toBeCloseTo(2 * Math.PI * Math.sqrt(10 / (0.095 * 1.2 * 0.48 ** 4)), 9);
    close(moment, [-shaftPower / rotationRate, 0, 0]);
  });

  it("run backwards turns the airframe the other way", () => {
    const { moment } = plainPropeller(propeller, 1.2, -10, [0, 0, 0], [0, 0, 0], still);
    expect(moment[0]).toBeGreaterThan(0);
  });

  it("that lifts needs less in a flow across it, as momentum theory with the whole speed says", () => {
    const area = 0.18;
    const v = inducedBy(10, 1.2, area, 0, 12);
    expect(2 * 1.2 * area * v * Math.hypot(12, v)).toBeCloseTo(10, 9);
    const lifter: PropellerPart = { ...propeller, axis: { up: Math.PI / 2, right: 0 } };
    const hover = plainPropeller(lifter, 1.2, 10, [0, 0, 0], [0, 0, 0], still);
    const flying = plainPropeller(lifter, 1.2, 10, [8, 0, 0], [0, 0, 0], still);
    expect(flying.shaftPower).toBeLessThan(hover.shaftPower);
    // Blade drag in the disc holds it back.
    expect(flying.force[0]).toBeLessThan(0);
    // A clockwise lifter seen from below turns the nose right when driven… its reaction about the up axis is against it.
    expect(Math.sign(hover.moment[2])).toBe(1);
  });

  it("resists being turned like a gyroscope", () => {
    const { moment, rotationRate } = plainPropeller(propeller, 1.2, 10, [0, 0, 0], [0, 0.5, 0], still);
    // Spin about the forward axis, nose up: the nose goes … by −ω × h = +q h about the down axis.
    expect(moment[2]).toBeCloseTo(0.5 * 0.0011 * rotationRate, 12);
  });
});

describe("a whole aircraft", () => {
  const state = {
    velocity: [20, 0, 1] as Vector,
    rate: [0, 0, 0] as Vector,
    pitch: 0.05,
    roll: 0,
    controls: { collective: 0.1, back: 0, right: 0, pull: 12 },
    rotors: { rotor: { tipSpeed: 75, inducedRatio: 0.02, back: 0.03, right: 0.01, coning: 0.03 } },
  };

  it("is the sum of its parts, weight, and what turning needs", () => {
    const aircraft = triedAircraft();
    const at = plainSix(aircraft, bare, air, state);
    const total = (key: "force" | "moment", axis: 0 | 1 | 2) => Object.values(at.parts).reduce((sum, part) => sum + part[key][axis], 0);
    const weight = weightOf(at.mass.mass, 0.05, 0);
    for (const axis of [0, 1, 2] as const) expect(at.force[axis]).toBeCloseTo(total("force", axis) + weight[axis], 9);
    for (const axis of [0, 1, 2] as const) expect(at.moment[axis]).toBeCloseTo(total("moment", axis), 9);
  });

  it("in a level turn needs weight times the tangent of its bank toward the middle", () => {
    const aircraft = { ...triedAircraft(), rotors: [], propellers: [], surfaces: [], bodies: [], controls: [] };
    const turn = 0.4;
    const bank = Math.atan((turn * 20) / 9.80665);
    // Rates of a body with level nose that is banked by `bank`.
    const rate: Vector = [0, turn * Math.sin(bank), turn * Math.cos(bank)];
    const { force, mass } = plainSix(aircraft, bare, air, {
      ...state,
      velocity: [20, 0, 0],
      rate,
      pitch: 0,
      roll: bank,
      rotors: {},
      controls: {},
    });
    const lift = (mass.mass * 9.80665) / Math.cos(bank);
    close(force, [0, 0, lift], 9);
    expect(dot(force, [0, 0, 1])).toBeGreaterThan(0);
  });

  it("with its thrust below the centre of gravity is turned nose up by it, with a lift ahead of it too", () => {
    const aircraft = triedAircraft();
    const at = plainSix(aircraft, bare, air, state);
    const below = {
      ...aircraft,
      propellers: aircraft.propellers.map((one) => ({ ...one, place: { ...one.place, z: one.place.z + 0.3 } })),
    };
    const pulled = plainSix(below, bare, air, state);
    expect(pulled.moment[1] - at.moment[1]).toBeCloseTo(12 * 0.3, 6);
  });

  it("feels the rotor's air on its wing", () => {
    const aircraft = triedAircraft();
    const on = plainSix(aircraft, bare, air, state).parts.wing?.force[2] as number;
    const quiet = { ...aircraft, interference: aircraft.interference.map((one) => ({ ...one, active: false })) };
    const off = plainSix(quiet, bare, air, state).parts.wing?.force[2] as number;
    // Lift points against the down axis; the downwash takes some off.
    expect(on).toBeGreaterThan(off + 1);
  });
});
