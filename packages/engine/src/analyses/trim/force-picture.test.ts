import { describe, expect, it } from "vitest";
import type { AircraftDefinition } from "../../aircraft/index.ts";
import { forcePicture } from "./force-picture.ts";

/** Only what the picture reads of an aircraft. */
const aircraft = {
  rotors: [],
  propellers: [],
  surfaces: [],
  bodies: [{ id: "body", place: { x: 0.3, y: 0, z: 0 }, dragArea: 0.04, sideDragArea: 0, verticalDragArea: 0, hulls: [] }],
  emptyCentre: { x: 0, y: 0, z: 0 },
} as unknown as AircraftDefinition;
const state = { mass: 20, centre: { x: 0.1, y: 0, z: 0.05 }, pitch: 0.1, roll: -0.2, airspeed: 20, sideslip: 0.3, climbRate: 1.5 };
const nothing = { x: 0, y: 0, z: 0 };

/** Body axes to level ones, written out on its own. */
function level([x, y, z]: readonly [number, number, number]): readonly number[] {
  const { pitch, roll } = state;
  const down = Math.sin(roll) * y + Math.cos(roll) * z;
  return [
    Math.cos(pitch) * x + Math.sin(pitch) * down,
    Math.cos(roll) * y - Math.sin(roll) * z,
    Math.cos(pitch) * down - Math.sin(pitch) * x,
  ];
}

describe("the picture of forces", () => {
  it("draws a weight that points straight down once the body is turned to the horizon", () => {
    const [weight] = forcePicture(aircraft, state, []).arrows ?? [];
    expect(level(weight?.vector ?? [0, 0, 0])).toEqual([expect.closeTo(0), expect.closeTo(0), expect.closeTo(20 * 9.80665)]);
  });
  it("lets the air come from the right for positive sideslip, and climbs with the path", () => {
    const velocity = forcePicture(aircraft, state, []).attitude?.velocity ?? [0, 0, 0];
    expect(level(velocity)).toEqual([expect.closeTo(20 * Math.cos(0.3)), expect.closeTo(20 * Math.sin(0.3)), expect.closeTo(-1.5)]);
  });
  it("shows a force where the part is, and of its moment only what the force at that place does not explain", () => {
    // Arm from the centre of gravity (0.2, 0, -0.05) across force (-12, 0, 1): moment about y of -0.05 (-12) - 0.2 (1) = 0.4.
    const force = { x: -12, y: 0, z: 1 };
    const picture = (moment: typeof nothing) => forcePicture(aircraft, state, [{ id: "body", force, moment }]).arrows ?? [];
    expect(picture({ x: 0, y: 0.4, z: 0 }).map(({ name, kind }) => `${name} ${kind}`)).toEqual(["weight force", "body force"]);
    const [, drawn, own] = picture({ x: 0, y: 1.4, z: 0 });
    expect(drawn).toMatchObject({ at: [0.3, 0, 0], vector: [-12, 0, 1], meaning: "body" });
    expect(own?.vector).toEqual([expect.closeTo(0), expect.closeTo(1), expect.closeTo(0)]);
  });
  it("names what bends the path of a turn: the force that is missing to balance", () => {
    const parts = [{ id: "body", force: { x: 1, y: 2, z: -210 }, moment: nothing }];
    const { arrows = [] } = forcePicture(aircraft, { ...state, turns: true }, parts);
    const sum = arrows
      .filter(({ kind }) => kind === "force")
      .reduce((total, { vector }) => total.map((value, axis) => value + (vector[axis] as number)), [0, 0, 0]);
    expect(arrows.at(-1)?.name).toBe("inertia in the turn");
    expect(sum.map((value) => Math.abs(value) < 1e-9)).toEqual([true, true, true]);
  });
});
