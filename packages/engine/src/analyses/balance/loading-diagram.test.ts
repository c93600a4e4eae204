import { describe, expect, it } from "vitest";
import { loadingDiagram } from "./loading-diagram.ts";

const points = [
  { blocks: 10, payload: "camera", mass: 18.4, centre: 0.012 },
  { blocks: 7, payload: "none", mass: 14.7, centre: 0.03 },
  { blocks: 10, payload: "none", mass: 16.8, centre: 0.01 },
];
const limits = [
  { name: "forward limit", side: "forward", masses: [12, 24], centres: [0.05, 0.04] },
  { name: "aft limit", side: "aft", masses: [12, 24], centres: [-0.02, -0.01] },
] as const;

describe("the loading diagram", () => {
  const figure = loadingDiagram(points, limits, 24);
  it("has a line for every pack, fewest blocks first, each from light to heavy", () => {
    expect(figure.series.map(({ name, y }) => [name, y])).toEqual([
      ["7 blocks", [14.7]],
      ["10 blocks", [16.8, 18.4]],
    ]);
  });
  it("names every loading", () => {
    expect(figure.notable?.map((point) => point.name)).toEqual(["camera", "none", "none"]);
  });
  it("forbids what lies beyond the limits, seen by one who walks to larger mass", () => {
    expect(figure.borders?.map(({ name, forbidden }) => [name, forbidden])).toEqual([
      ["forward limit", "right"],
      ["aft limit", "left"],
    ]);
  });
});
