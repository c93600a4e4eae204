import { describe, expect, it } from "vitest";
import { loadingDiagram } from "./loading-diagram.ts";
import type { BalanceOutputs, BalanceRow } from "./output-schema.ts";

const row = (blocks: number, payload: string, mass: number, x: number, aft: { readonly x: number; readonly from: string }) =>
  ({
    blocks,
    payload,
    place: "payload bay",
    mass: { value: mass, halfWidth: 0.1 },
    centre: { x: { value: x, halfWidth: 0.001 } },
    fore: { side: "fore", x: 0.05, from: "aircraft file" },
    aft: { side: "aft", ...aft },
  }) as unknown as BalanceRow;

const file = { x: -0.02, from: "aircraft file" };
const outputs = {
  rows: [row(7, "camera", 16, 0.017, file), row(10, "camera", 18, 0.014, file)],
  paths: [
    {
      payload: "camera",
      place: "payload bay",
      points: [
        { blocks: 0, mass: 11, x: -0.01 },
        { blocks: 10, mass: 18, x: 0.014 },
      ],
    },
  ],
  largestMass: 24,
} as unknown as BalanceOutputs;

describe("the loading diagram", () => {
  it("names every loading at its mass and centre of gravity, with its interval across", () => {
    const figure = loadingDiagram(outputs);
    expect(figure.notable?.map(({ name, x, y }) => [name, x, y])).toEqual([
      ["7 + camera", 0.017, 16],
      ["10 + camera", 0.014, 18],
    ]);
    expect(figure.notable?.[0]?.halfWidth).toEqual({ x: 0.001, y: 0.1 });
  });
  it("forbids what lies beyond the limits, seen by one who walks to larger mass, up to the largest mass", () => {
    expect(loadingDiagram(outputs).borders?.map(({ name, forbidden, x, y }) => [name, forbidden, x[0], y[0], y.at(-1)])).toEqual([
      ["fore limit, aircraft file", "right", 0.05, 11, 24],
      ["aft limit, aircraft file", "left", -0.02, 11, 24],
    ]);
  });
  it("lets a limit move with the mass and parts limits of several sources", () => {
    const [first, second] = outputs.rows as [BalanceRow, BalanceRow];
    const computed = { ...second, aft: { ...second.aft, x: -0.01, from: "static margin" } };
    const { borders = [] } = loadingDiagram({ ...outputs, rows: [first, computed] });
    const aft = borders.filter(({ name }) => name.startsWith("aft"));
    expect(aft.map(({ name, family, x }) => [name, family, x[0]])).toEqual([
      ["aft limit, aircraft file", "rule", -0.02],
      ["aft limit, static margin", "control", -0.01],
    ]);
  });
});
