import { describe, expect, it } from "vitest";
import { degreesOf, geodesicSegment, positionFromDegrees } from "./index.ts";

// WGS 84 defining constants: semi-major axis 6 378 137 m, inverse flattening 298.257223563 (from memory; NGA.STND.0036).
const semiMajorAxis = 6_378_137;

describe("geodesics on the WGS 84 ellipsoid", () => {
  it("one degree along the equator is a circle of the semi-major axis", () => {
    const segment = geodesicSegment(positionFromDegrees([10, 0]), positionFromDegrees([11, 0]));
    expect(segment.length).toBeCloseTo((semiMajorAxis * Math.PI) / 180, 6);
    expect(segment.at(0).course).toBeCloseTo(Math.PI / 2, 12);
  });

  it("the quarter meridian agrees with its series in the third flattening", () => {
    const flattening = 1 / 298.257223563;
    const n = flattening / (2 - flattening);
    // Rectifying radius: a/(1+n) (1 + n²/4 + n⁴/64 + …), quarter meridian = π/2 of it.
    const quarter = ((Math.PI / 2) * (semiMajorAxis / (1 + n)) * (1 + n ** 2 / 4 + n ** 4 / 64)) as number;
    const segment = geodesicSegment(positionFromDegrees([0, 0]), positionFromDegrees([0, 90]));
    expect(segment.length).toBeCloseTo(quarter, 5);
  });

  it("a place on the line lies where both parts add up to the whole", () => {
    const from = positionFromDegrees([-31.2, 41.1]);
    const to = positionFromDegrees([-30.8, 41.3]);
    const segment = geodesicSegment(from, to);
    const middle = segment.at(segment.length / 3);
    expect(geodesicSegment(from, middle).length + geodesicSegment(middle, to).length).toBeCloseTo(segment.length, 6);
    const end = segment.at(segment.length);
    expect(degreesOf(end)[0]).toBeCloseTo(-30.8, 11);
    expect(degreesOf(end)[1]).toBeCloseTo(41.3, 11);
  });

  it("runs on across the 180° meridian", () => {
    const segment = geodesicSegment(positionFromDegrees([179.9, 10]), positionFromDegrees([-179.9, 10]));
    expect(degreesOf(segment.at(segment.length))[0]).toBeCloseTo(180.1, 9);
  });

  it("courses are counted from 0 to one full turn, clockwise from north", () => {
    const west = geodesicSegment(positionFromDegrees([1, 0]), positionFromDegrees([0, 0]));
    expect(west.at(0).course).toBeCloseTo(1.5 * Math.PI, 12);
  });
});
