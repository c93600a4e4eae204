import { describe, expect, it } from "vitest";
import type { AircraftDefinition, PropellerPart, RotorPart, SurfacePart } from "../../aircraft/index.ts";
import { massProperties } from "../../aircraft/index.ts";
import { bodyOutlines, propellerOutlines, rotorOutlines, surfaceOutlines } from "../drawings/part-outlines.ts";
import { arrangement } from "./arrangement.ts";

type Line = ReturnType<typeof surfaceOutlines>[number];
const extent = (line: Line | undefined, axis: 0 | 1 | 2) => {
  const values = (line?.points ?? []).map((point) => point[axis]);
  return Math.max(...values) - Math.min(...values);
};
const place = { x: 0, y: 0, z: 0 };
const surface = {
  id: "wing",
  place,
  dihedral: 0,
  tipDihedral: 0,
  incidence: 0,
  area: 0.4,
  span: 2,
  movables: [],
} as unknown as SurfacePart;
const rotor = {
  id: "main",
  hub: place,
  shaftTilt: { back: 0, right: 0 },
  radius: 1.1,
  blades: 2,
  precone: 0,
  rootCutout: 0.1,
  stations: [{ radiusFraction: 0, chord: 0.08, twist: 0 }],
} as unknown as RotorPart;

describe("outlines of parts", () => {
  it("have the span and chord of the file, the quarter chord at its place", () => {
    const [wing] = surfaceOutlines(surface);
    expect([extent(wing, 0), extent(wing, 1), extent(wing, 2)]).toEqual([expect.closeTo(0.2), expect.closeTo(2), expect.closeTo(0)]);
    expect(Math.max(...(wing?.points ?? []).map(([x]) => x))).toBeCloseTo(0.05);
  });
  it("stand a fin upright and raise both tips by dihedral", () => {
    const [fin] = surfaceOutlines({ ...surface, dihedral: Math.PI / 2 });
    expect([extent(fin, 1), extent(fin, 2)]).toEqual([expect.closeTo(0), expect.closeTo(2)]);
    const [raised] = surfaceOutlines({ ...surface, tipDihedral: 0.1 });
    const tips = (raised?.points ?? []).filter(([, y]) => Math.abs(y) > 0.5);
    expect(tips).toHaveLength(4);
    for (const [, , z] of tips) expect(z).toBeCloseTo(-Math.sin(0.1));
  });
  it("raise the leading edge with incidence", () => {
    const [wing] = surfaceOutlines({ ...surface, incidence: 0.2 });
    const [front] = (wing?.points ?? []).toSorted((a, b) => b[0] - a[0]);
    expect(front?.[2]).toBeLessThan(0);
  });
  it("tilt a rotor disc with its shaft: back means the front goes up, right the right side down", () => {
    const [level] = rotorOutlines(rotor);
    expect([extent(level, 0), extent(level, 2)]).toEqual([expect.closeTo(2.2), expect.closeTo(0)]);
    const [back] = rotorOutlines({ ...rotor, shaftTilt: { back: 0.3, right: 0 } });
    const front = (back?.points ?? []).toSorted((a, b) => b[0] - a[0])[0];
    expect(front?.[2]).toBeCloseTo(-1.1 * Math.sin(0.3));
    const [right] = rotorOutlines({ ...rotor, shaftTilt: { back: 0, right: 0.3 } });
    const side = (right?.points ?? []).toSorted((a, b) => b[1] - a[1])[0];
    expect(side?.[2]).toBeCloseTo(1.1 * Math.sin(0.3));
  });
  it("set a propeller square to its thrust", () => {
    const propeller = { id: "lift", place, axis: { up: Math.PI / 2, right: 0 }, diameter: 0.5 } as unknown as PropellerPart;
    const [lifting] = propellerOutlines(propeller);
    expect([extent(lifting, 0), extent(lifting, 2)]).toEqual([expect.closeTo(0.5), expect.closeTo(0)]);
    const [pulling] = propellerOutlines({ ...propeller, axis: { up: 0, right: 0 } });
    expect([extent(pulling, 0), extent(pulling, 2)]).toEqual([expect.closeTo(0), expect.closeTo(0.5)]);
  });
  it("draw a body without a hull as a plate of its drag area, and say so", () => {
    const [plate] = bodyOutlines({ id: "boom", place, dragArea: 0.04, sideDragArea: 0, verticalDragArea: 0, hulls: [] });
    expect(extent(plate, 1) * extent(plate, 2)).toBeCloseTo(0.04);
    expect(plate?.name).toContain("plate of its drag area");
  });
});

describe("the general arrangement", () => {
  const aircraft = {
    rotors: [rotor],
    propellers: [],
    surfaces: [surface],
    bodies: [],
    landingGear: [],
    emptyMass: 9,
    emptyCentre: { x: -0.03, y: 0, z: 0 },
    emptyInertia: { x: 1, y: 1, z: 1 },
    payloadBay: { x: 0.05, y: 0, z: 0.1 },
    battery: {
      blockMass: 0.7,
      fixedMass: 0.7,
      fixedPlace: place,
      bay: { front: 0.2, back: -0.1, z: 0.06, places: 4 },
      blockSize: { x: 0.05, y: 0.2, z: 0.07 },
    },
    limits: { centreOfGravityForward: 0.05, centreOfGravityAft: -0.02 },
  } as unknown as AircraftDefinition;
  const loading = { blocks: 3, payloadMass: 1, payloadPower: 0, payloadDragArea: 0 };

  it("marks the centre of gravity of the loading between the limits of the file, or those that are given", () => {
    const figure = arrangement(aircraft, loading);
    const { x, y, z } = massProperties(aircraft, loading).centre;
    expect(figure.marks?.[0]).toMatchObject({ shape: "centre", at: [x, y, z] });
    expect(figure.bounds?.map(({ value, forbidden }) => [value, forbidden])).toEqual([
      [0.05, "above"],
      [-0.02, "below"],
    ]);
    expect(arrangement(aircraft, loading, { forward: 0.04, aft: 0 }).bounds?.map((each) => each.value)).toEqual([0.04, 0]);
  });
  it("tells filled places of the bay from empty ones", () => {
    const names = arrangement(aircraft, loading)
      .lines.filter((line) => line.views?.includes("left"))
      .map((line) => line.name);
    expect(names.filter((name) => name === "battery blocks")).toHaveLength(3);
    expect(names.filter((name) => name === "empty battery places")).toHaveLength(1);
  });
  it("measures rotor and wing by the file", () => {
    const lengths = (arrangement(aircraft, loading).dimensions ?? []).map(({ name, from, to }) => [
      name,
      Math.hypot(...from.map((value, axis) => value - (to[axis] as number))),
    ]);
    expect(lengths).toContainEqual(["main rotor diameter", expect.closeTo(2.2)]);
    expect(lengths).toContainEqual(["wing span", expect.closeTo(2)]);
  });
  it("draws the payload by its size where that is known, else as a point", () => {
    expect(arrangement(aircraft, loading).marks?.map((mark) => mark.name)).toContain("payload");
    const sized = arrangement(aircraft, { ...loading, payloadSize: { x: 0.1, y: 0.1, z: 0.1 } });
    expect(sized.marks?.map((mark) => mark.name)).not.toContain("payload");
    expect(sized.lines.map((line) => line.name)).toContain("payload");
  });
});
