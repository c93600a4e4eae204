import { describe, expect, it } from "vitest";
import { missionDefinition } from "./definition.ts";

const least = {
  format: 1,
  title: "There and back",
  route: { file: "places/line.geojson", feature: "line" },
  evenGround: 0,
  loading: { blocks: 13, payload: "parts" },
  weather: { wind: { speed: 5, from: 1 } },
  cruise: { airspeed: 22, height: 100, heightDatum: "above-ground" },
};

function issues(change: Record<string, unknown>): readonly string[] {
  const read = missionDefinition.safeParse({ ...least, ...change });
  return read.success ? [] : read.error.issues.map((issue) => `${issue.path.join(".")}: ${issue.message}`);
}

describe("mission document", () => {
  it("needs little: route, ground, load, wind, speed and height", () => {
    expect(issues({})).toEqual([]);
  });

  it("refuses a temperature and an offset together, at the offset", () => {
    expect(issues({ weather: { ...least.weather, temperature: 280, temperatureOffset: 5 } })).toEqual([
      "weather.temperatureOffset: give temperature or temperatureOffset, not both",
    ]);
  });

  it("heights above the ellipsoid need the undulation, and the undulation needs them", () => {
    expect(issues({ cruise: { airspeed: 22, height: 150, heightDatum: "ellipsoid" } })[0]).toContain("cruise.heightDatum");
    expect(issues({ cruise: { airspeed: 22, height: 150, geoidUndulation: 20 } })[0]).toContain("cruise.geoidUndulation");
    expect(issues({ cruise: { airspeed: 22, height: 150, heightDatum: "ellipsoid", geoidUndulation: 20 } })).toEqual([]);
  });

  it("tells every contradiction at once", () => {
    const found = issues({
      terrain: "terrain/elevation.tif",
      loading: { blocks: 13, payload: "parts", payloadMass: 1 },
      cruise: { height: 100 },
      legs: [
        { leg: 1, airspeed: 20 },
        { leg: 1, speedRule: "best-range", airspeed: 20 },
      ],
      tasks: [{ at: 2 }, { at: 2, hover: 10, land: 10 }],
    });
    expect(found).toHaveLength(7);
  });

  it("refuses what it does not know", () => {
    expect(issues({ windspeed: 5 })[0]).toMatch(/windspeed/);
  });
});
