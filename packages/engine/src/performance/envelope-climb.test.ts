import { describe, expect, it } from "vitest";
import type { FullPoint } from "../equilibrium/index.ts";
import { bestClimb } from "./envelope-climb.ts";
import type { EnvelopePoint } from "./envelope-line.ts";
import type { EnvelopeTrimmer, Verdict } from "./envelope-trimmer.ts";

const flown = (): Verdict => ({ kind: "flies", trimmed: { start: { x: new Float64Array() } } as never, shares: [] });
const refused: Verdict = { kind: "forbidden", limit: "motor power", family: "power" };

/** Climbs at rates up to one from a neighbour, up to another from nothing. */
const trimmer = (warm: number, cold: number) =>
  ({
    warm: ({ climbRate }: FullPoint) => climbRate <= warm,
    cold: ({ climbRate }: FullPoint) => climbRate <= cold,
    verdict: (flies: boolean) => (flies ? flown() : refused),
  }) as unknown as EnvelopeTrimmer;

const level: EnvelopePoint = { airspeed: 20, verdict: flown() };
const climb = (warm: number, cold: number) => bestClimb(trimmer(warm, cold), "clutch-closed", level, 4);

describe("the fastest climb at a speed", () => {
  it("is the file's limit where that flies, and says so", () => {
    expect(climb(9, 9)).toMatchObject({ climbRate: 4, limit: "climb limit", family: "rule" });
  });

  it("is found from below to a hundredth of the limit, with what stops a faster one", () => {
    const found = climb(2.35, 2.35);
    expect(found?.climbRate).toBeLessThanOrEqual(2.35);
    expect(found?.climbRate).toBeGreaterThan(2.35 - 4 / 100);
    expect(found).toMatchObject({ limit: "motor power", family: "power" });
  });

  it("is found where only a search from nothing finds the way", () => {
    expect(climb(0.1, 9)?.climbRate).toBe(4);
    expect(climb(0.1, 3.2)?.climbRate).toBeGreaterThanOrEqual(3);
  });

  it("is none where level flight is forbidden", () => {
    expect(bestClimb(trimmer(9, 9), "clutch-closed", { airspeed: 20, verdict: refused }, 4)).toBeUndefined();
  });
});
