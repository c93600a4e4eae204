import { describe, expect, it } from "vitest";
import { missionDefinition } from "./definition.ts";
import { type MissionPlan, missionPlan } from "./plan.ts";
import { type Route, readRoute } from "./route.ts";

const places = [
  [-31, 41],
  [-30.95, 41.02],
  [-30.9, 41.05],
  [-31, 41],
] as const;
const document = {
  type: "FeatureCollection",
  features: [
    { type: "Feature", properties: { name: "line" }, geometry: { type: "LineString", coordinates: places } },
    { type: "Feature", properties: { name: "platform" }, geometry: { type: "Point", coordinates: places[2] } },
  ],
};

function planning(change: Record<string, unknown>) {
  const reading = readRoute(document, "f", "line");
  const mission = missionDefinition.parse({
    format: 1,
    title: "t",
    route: { file: "f", feature: "line" },
    evenGround: 0,
    loading: { blocks: 13, payload: "parts" },
    weather: { wind: { speed: 0, from: 0 } },
    cruise: { airspeed: 22, height: 100, heightDatum: "above-ground" },
    ...change,
  });
  return missionPlan(mission, (reading as { route: Route }).route, { kind: "record", name: "parts" });
}

function plan(change: Record<string, unknown> = {}): MissionPlan {
  const result = planning(change);
  if (result.kind === "refused") throw new Error(result.slips.map((slip) => slip.message).join("; "));
  return result.plan;
}

describe("mission set on its route", () => {
  it("legs take cruise settings unless they have their own, height with its datum and speed apart", () => {
    const { legs } = plan({
      legs: [
        { leg: 2, height: 180 },
        { leg: 3, speedRule: "best-range" },
      ],
    });
    expect(legs.map((leg) => leg.height)).toEqual([
      { kind: "above-ground", height: 100 },
      { kind: "above-sea", height: 180 },
      { kind: "above-ground", height: 100 },
    ]);
    expect(legs.map((leg) => leg.speed.kind)).toEqual(["airspeed", "airspeed", "rule"]);
  });

  it("heights above the ellipsoid lose the undulation", () => {
    const { legs } = plan({ cruise: { airspeed: 22, height: 150, heightDatum: "ellipsoid", geoidUndulation: 52 } });
    expect(legs[0]?.height).toEqual({ kind: "above-sea", height: 98 });
  });

  it("follows the payload: gone after delivery, another after pick-up, the same index when it comes back", () => {
    const tasks = [
      { at: 2, hover: 10, deliver: "parts" },
      { at: "platform", land: 60, pickUp: "parts" },
    ];
    const { legs, onBoard } = plan({ tasks });
    expect(onBoard).toEqual([{ kind: "record", name: "parts" }, { kind: "nothing" }]);
    expect(legs.map((leg) => leg.loading)).toEqual([0, 1, 0]);
  });

  it("refuses impossible deliveries, legs and places, all at once and with their place", () => {
    const result = planning({
      legs: [{ leg: 9, airspeed: 20 }],
      tasks: [
        { at: "lighthouse", hover: 10 },
        { at: 2, hover: 10, deliver: "camera" },
        { at: 3, hover: 10, pickUp: "parts", deliver: "parts" },
      ],
    });
    expect(result.kind === "refused" && result.slips.map((slip) => slip.pointer)).toEqual([
      "/legs/0/leg",
      "/tasks/0/at",
      "/tasks/1/deliver",
      "/tasks/2/deliver",
    ]);
  });
});
