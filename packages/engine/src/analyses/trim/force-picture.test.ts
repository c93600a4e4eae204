import { describe, expect, it } from "vitest";
import type { AircraftDefinition } from "../../aircraft/index.ts";
import { forcePicture } from "./force-picture.ts";

/** Only what the picture reads of an aircraft. */
const aircraft = {
  rotors: [],
  propellers: [],
  surfaces: [],
  bodies: [{ id: "body", place: { x: 0, y: 0, z: 0 }, dragArea: 0.04, sideDragArea: 0, verticalDragArea: 0 }],
  emptyCentre: { x: 0, y: 0, z: 0 },
} as unknown as AircraftDefinition;
const state = { mass: 20, centre: { x: 0.1, y: 0, z: 0.05 }, pitch: 0.1, roll: -0.2, velocity: [20, 0, 2] };

describe("the picture of forces", () => {
  it("draws a weight that points straight down once the body is turned to the horizon", () => {
    const figure = forcePicture(aircraft, state, []);
    const [x, y, z] = figure.arrows?.[0]?.vector ?? [0, 0, 0];
    const { pitch, roll } = state;
    const down = Math.sin(roll) * y + Math.cos(roll) * z;
    expect(Math.cos(pitch) * x + Math.sin(pitch) * down).toBeCloseTo(0, 9);
    expect(Math.cos(roll) * y - Math.sin(roll) * z).toBeCloseTo(0, 9);
    expect(-Math.sin(pitch) * x + Math.cos(pitch) * down).toBeCloseTo(20 * 9.80665, 9);
  });
  it("shows a force and a moment of a part where it acts, and leaves out what is nothing", () => {
    const parts = [{ id: "body", place: { x: 0.3, y: 0, z: 0 }, force: Float64Array.of(-12, 0, 1), moment: Float64Array.of(0, 0, 0) }];
    const arrows = forcePicture(aircraft, state, parts).arrows ?? [];
    expect(arrows.map(({ name, kind }) => `${name} ${kind}`)).toEqual(["weight force", "body force"]);
    expect(arrows[1]).toMatchObject({ at: [0.3, 0, 0], vector: [-12, 0, 1], meaning: "body" });
  });
});
