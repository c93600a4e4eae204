import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { airspeedForGroundSpeed, windTriangle, windVelocityAt } from "./index.ts";

const degree = Math.PI / 180;
const uniform = (speed: number, fromDegrees: number) =>
  windVelocityAt({ speed, fromDirection: fromDegrees * degree, profile: { kind: "uniform" } }, 10);

describe("wind triangle", () => {
  it("a head wind is taken off and a tail wind added, without crab", () => {
    const head = windTriangle(0, 22, uniform(10, 0));
    expect(head).toMatchObject({ kind: "holds" });
    if (head.kind !== "holds") return;
    expect(head.groundSpeed).toBeCloseTo(12, 12);
    expect(head.headwind).toBeCloseTo(10, 12);
    const tail = windTriangle(0, 22, uniform(10, 180));
    expect(tail.kind === "holds" && tail.groundSpeed).toBeCloseTo(32, 12);
  });

  it("by hand, 3-4-5: airspeed 25 across a wind of 15 leaves 20 over ground, nose into the wind", () => {
    // Course north, wind from the west: crab to the left by asin(15/25).
    const result = windTriangle(0, 25, uniform(15, 270));
    if (result.kind !== "holds") throw new Error("holds");
    expect(result.groundSpeed).toBeCloseTo(20, 12);
    expect(result.crab / degree).toBeCloseTo(-36.8698976458, 8);
    expect(result.heading / degree).toBeCloseTo(323.1301023542, 8);
  });

  it("by hand: course 060°, airspeed 25, wind 10 from 330° (all across) leaves √(625 − 100)", () => {
    const result = windTriangle(60 * degree, 25, uniform(10, 330));
    expect(result.kind === "holds" && result.groundSpeed).toBeCloseTo(Math.sqrt(525), 12);
  });

  it("a cross wind above the airspeed cannot be held and says what would do", () => {
    expect(windTriangle(0, 9, uniform(10, 90))).toMatchObject({ kind: "cannot-hold-track", because: "cross-wind" });
    const head = windTriangle(0, 9, uniform(10, 0));
    expect(head).toMatchObject({ kind: "cannot-hold-track", because: "head-wind" });
    expect(head.kind === "cannot-hold-track" && head.airspeedNeeded).toBeCloseTo(10, 12);
  });

  it("air velocity plus wind velocity is ground velocity, for any course and wind", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (course, airspeed, speed, fromDegrees) => {
          const wind = uniform(speed, fromDegrees);
          const result = windTriangle(course, airspeed, wind);
          if (result.kind === "cannot-hold-track") {
            expect(airspeed).toBeLessThanOrEqual(result.airspeedNeeded + 1e-9);
            return;
          }
          const north = airspeed * Math.cos(result.heading) + wind.north;
          const east = airspeed * Math.sin(result.heading) + wind.east;
          expect(north).toBeCloseTo(result.groundSpeed * Math.cos(course), 8);
          expect(east).toBeCloseTo(result.groundSpeed * Math.sin(course), 8);
          expect(airspeedForGroundSpeed(course, result.groundSpeed, wind)).toBeCloseTo(airspeed, 8);
        },
      ),
    );
  });
});
