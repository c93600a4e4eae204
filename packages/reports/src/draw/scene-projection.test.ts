import { describe, expect, it } from "vitest";
import { sampleForces } from "./sample-places.ts";
import { levelled, projection } from "./scene-projection.ts";

const about = [0, 0, 0] as const;

describe("views of a scene", () => {
  it("show the nose left and the right side where someone there would see it", () => {
    const forward = [1, 0, 0] as const;
    const right = [0, 1, 0] as const;
    const place = (view: "left" | "ahead" | "behind" | "above", point: readonly [number, number, number]) =>
      projection(view, undefined)
        .place(point)
        .map((value) => value + 0);
    expect([place("left", forward), place("above", forward)]).toEqual([
      [-1, 0],
      [-1, 0],
    ]);
    expect([place("ahead", right), place("behind", right), place("above", right)]).toEqual([
      [-1, 0],
      [1, 0],
      [0, -1],
    ]);
  });
  it("turn a nose-up body so that its nose stands above the horizon, and a right side down below it", () => {
    const [, nose] = projection("left", { pitch: 0.1, roll: 0, about }).place([1, 0, 0]);
    expect(nose).toBeCloseTo(-Math.sin(0.1));
    const [, side] = projection("behind", { pitch: 0, roll: 0.1, about }).place([0, 1, 0]);
    expect(side).toBeCloseTo(Math.sin(0.1));
  });
  it("keep lengths whatever the attitude", () => {
    const { attitude } = sampleForces;
    const turned = levelled([1, 2, 3], attitude ?? { pitch: 0, roll: 0, about });
    expect(Math.hypot(...turned)).toBeCloseTo(Math.hypot(1, 2, 3));
  });
  it("leave the point about which it turns where it is", () => {
    const pivot = [0.3, 0.1, -0.2] as const;
    const [x, y] = projection("left", { pitch: 0.4, roll: -0.3, about: pivot }).place(pivot);
    expect([x, y]).toEqual([expect.closeTo(-0.3), expect.closeTo(-0.2)]);
  });
});
