import { describe, expect, it } from "vitest";
import type { FullOutcome, FullPoint } from "../equilibrium/index.ts";
import { envelopeLine } from "./envelope-line.ts";
import type { EnvelopeTrimmer, Verdict } from "./envelope-trimmer.ts";

const speeds = Array.from({ length: 46 }, (_, i) => i);

interface Way {
  readonly from: number;
  readonly to: number;
  readonly power: number;
}

/** An aircraft with some ways of flying: from a start only its own way is found, from nothing the cheapest. */
function aircraft(ways: readonly Way[]) {
  let colds = 0;
  const outcome = (point: FullPoint, way: number): FullOutcome => {
    const chosen = ways[way];
    if (!chosen || point.airspeed < chosen.from || point.airspeed > chosen.to)
      return { kind: "no-equilibrium", point, limit: "wall", family: "power", violation: 1, start: { x: Float64Array.of(way) } };
    const evaluation = { loads: { electricPower: chosen.power } };
    return { kind: "trimmed", point, evaluation, start: { x: Float64Array.of(way) } } as unknown as FullOutcome;
  };
  const trimmer = {
    cold: (point: FullPoint) => {
      colds += 1;
      const possible = ways.map((way, i) => ({ ...way, i })).filter(({ from, to }) => point.airspeed >= from && point.airspeed <= to);
      return outcome(point, possible.sort((a, b) => a.power - b.power)[0]?.i ?? 0);
    },
    warm: (point: FullPoint, start: { readonly x: Float64Array }) => outcome(point, start.x[0] as number),
    verdict: (found: FullOutcome): Verdict =>
      found.kind === "trimmed" ? { kind: "flies", trimmed: found, shares: [] } : { kind: "forbidden", limit: "wall", family: "power" },
  };
  return { trimmer: trimmer as unknown as EnvelopeTrimmer, colds: () => colds };
}

const drawn = (ways: readonly Way[], mode: "clutch-closed" | "clutch-open" = "clutch-closed") => {
  const line = envelopeLine(aircraft(ways).trimmer, mode, speeds);
  return { ...line, picture: line.points.map(({ verdict }) => (verdict.kind === "flies" ? "+" : "-")).join("") };
};

describe("level flight along speeds", () => {
  it("is entered where it flies, and its ends are found between the speeds with their names", () => {
    const { picture, edges } = drawn([{ from: 8.3, to: 33.9, power: 1 }], "clutch-open");
    expect(picture).toBe(`${"-".repeat(9)}${"+".repeat(25)}${"-".repeat(12)}`);
    expect(edges.map(({ side, limit }) => [side, limit])).toEqual([
      ["slowest", "wall"],
      ["fastest", "wall"],
    ]);
    expect(Math.abs((edges[0]?.airspeed ?? 0) - 8.3)).toBeLessThan(0.07);
    expect(Math.abs((edges[1]?.airspeed ?? 0) - 33.9)).toBeLessThan(0.07);
  });

  it("goes on in another way of flying where the first one ends", () => {
    expect(
      drawn([
        { from: 0, to: 20, power: 1 },
        { from: 15, to: 40, power: 2 },
      ]).picture,
    ).toBe(`${"+".repeat(41)}-----`);
  });

  it("keeps the cheaper of two ways that only the fast end shows", () => {
    const { points } = drawn([
      { from: 0, to: 40, power: 2 },
      { from: 30, to: 40, power: 1 },
    ]);
    const power = (i: number) => {
      const { verdict } = points[i] as (typeof points)[number];
      return verdict.kind === "flies" ? verdict.trimmed.evaluation.loads.electricPower : 0;
    };
    expect([29, 30, 35, 40].map(power)).toEqual([2, 1, 1, 1]);
  });

  it("finds a stretch beyond a gap when the fastest speed lies in it", () => {
    expect(
      drawn([
        { from: 0, to: 10, power: 1 },
        { from: 38, to: 45, power: 1 },
      ]).picture,
    ).toBe(`${"+".repeat(11)}${"-".repeat(27)}${"+".repeat(8)}`);
  });

  it("flies nowhere without asking at every speed", () => {
    const nowhere = aircraft([]);
    expect(envelopeLine(nowhere.trimmer, "clutch-closed", speeds).points.every(({ verdict }) => verdict.kind === "forbidden")).toBe(true);
    expect(nowhere.colds()).toBeLessThan(8);
  });

  it("looks for no free rotor in hover", () => {
    const { picture } = drawn([{ from: 0, to: 45, power: 1 }], "clutch-open");
    expect(picture.startsWith("+")).toBe(true);
    const idle = envelopeLine(aircraft([{ from: 0, to: 1, power: 1 }]).trimmer, "clutch-open", [0, 1]);
    expect(idle.points.every(({ verdict }) => verdict.kind === "forbidden")).toBe(true);
  });
});
