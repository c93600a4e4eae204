import { describe, expect, it } from "vitest";
import type { FullPoint } from "../equilibrium/index.ts";
import { ceiling } from "./envelope-ceiling.ts";
import { type EnvelopeTrimmer, levelAt, type Verdict } from "./envelope-trimmer.ts";

const point = levelAt("clutch-closed", 0);
const search = { lowest: 0, highest: 11_000, step: 2000, tolerance: 25 };

/** Flies as the rule says; every asking is counted. */
function flying(rule: (altitude: number, point: FullPoint) => boolean, points: readonly FullPoint[] = [point]) {
  const asked: number[] = [];
  const at = (altitude: number) => {
    asked.push(altitude);
    const verdict = (asking: unknown): Verdict =>
      rule(altitude, asking as FullPoint)
        ? { kind: "flies", trimmed: { start: { x: new Float64Array() } } as never, shares: [] }
        : { kind: "forbidden", limit: "stall margin", family: "air" };
    const trimmer = { cold: (asking: FullPoint) => asking, warm: (asking: FullPoint) => asking, verdict };
    return { trimmer: trimmer as unknown as EnvelopeTrimmer, points };
  };
  return { asked, at };
}

describe("a ceiling", () => {
  it.each([30, 1999, 2000, 4321, 9876])("is found to 25 m, from below, at %i m", (top) => {
    const found = ceiling(search, flying((altitude) => altitude <= top).at);
    expect(found.altitude).toBeLessThanOrEqual(top);
    expect(found.altitude).toBeGreaterThan(top - 25);
    expect(found.stop).toEqual({ limit: "stall margin", family: "air" });
  });

  it("is none where the lowest altitude is not flown, and no limit where the highest is", () => {
    expect(ceiling(search, flying(() => false).at)).toEqual({ altitude: null, stop: { limit: "stall margin", family: "air" } });
    expect(ceiling(search, flying(() => true).at)).toEqual({ altitude: 11_000 });
  });

  it("is searched on where only a search from nothing finds the way", () => {
    const { at } = flying((altitude) => altitude <= 3000);
    const blind = (altitude: number) => {
      const { trimmer, points } = at(altitude);
      const warm = (asking: FullPoint) => (altitude > 1000 ? { ...asking, mode: "glide" } : asking);
      const verdict = (asking: FullPoint): Verdict =>
        asking.mode === "glide" ? { kind: "forbidden", limit: "stall margin", family: "air" } : trimmer.verdict(asking as never);
      return { trimmer: { ...trimmer, warm, verdict } as unknown as EnvelopeTrimmer, points };
    };
    expect(ceiling(search, blind).altitude).toBeGreaterThan(2975);
  });

  it("is that of the better way of flying", () => {
    const other = levelAt("clutch-open", 20);
    const rule = (altitude: number, asking: FullPoint) => altitude <= (asking.mode === "clutch-open" ? 5000 : 1000);
    expect(ceiling(search, flying(rule, [point, other]).at).altitude).toBeGreaterThan(4975);
  });
});
