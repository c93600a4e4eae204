import { describe, expect, it } from "vitest";
import { type Route, readRoute, waypointNamed } from "./route.ts";

const line = (name: string, coordinates: readonly (readonly number[])[]) => ({
  type: "Feature",
  properties: { name },
  geometry: { type: "LineString", coordinates },
});
const point = (name: string, coordinates: readonly number[]) => ({
  type: "Feature",
  properties: { name },
  geometry: { type: "Point", coordinates },
});
const collection = (...features: unknown[]) => ({ type: "FeatureCollection", features });

const store = [-31, 41] as const;
const platform = [-30.9, 41.05] as const;
const both = collection(line("there and back", [store, platform, store]), point("store", store), point("platform", platform));

function route(document: unknown, name = "there and back"): Route {
  const reading = readRoute(document, "places/line.geojson", name);
  if (reading.kind === "refused") throw new Error(reading.message);
  return reading.route;
}

describe("route from GeoJSON", () => {
  it("takes corners in order and their names from points that lie on them", () => {
    expect(route(both).waypoints.map(({ number, name }) => `${number} ${name}`)).toEqual(["1 store", "2 platform", "3 store"]);
  });

  it("finds the line by its id as well", () => {
    const { properties: _, ...withId } = { ...line("", [store, platform]), id: "leg-7", properties: null };
    expect(route(collection(withId), "leg-7").waypoints).toHaveLength(2);
  });

  it("reads a single feature, and says when the file gives heights", () => {
    const single = route(line("there and back", [[...store, 10], platform]));
    expect(single.waypoints).toHaveLength(2);
    expect(single.hasHeights).toBe(true);
  });

  it("drops a corner that is drawn twice", () => {
    expect(route(collection(line("there and back", [store, store, platform]))).waypoints).toHaveLength(2);
  });

  it("says what it has when the feature is missing", () => {
    expect(readRoute(both, "places/line.geojson", "there")).toMatchObject({ kind: "refused", because: "feature-missing" });
    const reading = readRoute(both, "places/line.geojson", "there");
    expect(reading.kind === "refused" && reading.message).toContain("there and back");
  });

  it("refuses points, garbage and lines without length", () => {
    expect(readRoute(both, "f", "store")).toMatchObject({ because: "not-a-line" });
    expect(readRoute({ type: "Topology" }, "f", "x")).toMatchObject({ because: "not-a-route-file" });
    expect(readRoute(undefined, "f", "x")).toMatchObject({ because: "not-a-route-file" });
    expect(readRoute(collection(line("x", [store, store])), "f", "x")).toMatchObject({ because: "too-short" });
  });
});

describe("waypoint of a task", () => {
  it("is found by number or by a name that fits once", () => {
    expect(waypointNamed(route(both), 3)).toEqual({ kind: "waypoint", index: 2 });
    expect(waypointNamed(route(both), "platform")).toEqual({ kind: "waypoint", index: 1 });
  });

  it("is refused when the name fits twice or not at all, with the cure", () => {
    const twice = waypointNamed(route(both), "store");
    expect(twice.kind === "refused" && twice.message).toContain("1 and 3");
    const none = waypointNamed(route(both), "lighthouse");
    expect(none.kind === "refused" && none.message).toContain("platform");
    expect(waypointNamed(route(both), 4)).toMatchObject({ kind: "refused" });
  });
});
