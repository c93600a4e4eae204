import { describe, expect, it } from "vitest";
import { type Control, control, controlRange } from "./control.ts";

const schedule = [
  { airspeed: 10, value: 84 },
  { airspeed: 25, value: 68 },
  { airspeed: 30, value: 60 },
];

const limits = { minimum: 55, maximum: 100 };

/** What a schedule asks for at an airspeed. */
const scheduledValue = (points: typeof schedule, airspeed: number) =>
  controlRange({ kind: "scheduled", schedule: points, ...limits }, airspeed, "schedule").minimum;

describe("a schedule over airspeed", () => {
  it("passes through its points, runs straight between them and is held beyond them", () => {
    expect([0, 10, 17.5, 25, 27.5, 30, 50].map((airspeed) => scheduledValue(schedule, airspeed))).toEqual([84, 84, 76, 68, 64, 60, 60]);
  });

  it("of one point is that value everywhere", () => {
    expect([0, 5, 60].map((airspeed) => scheduledValue([{ airspeed: 5, value: 3 }], airspeed))).toEqual([3, 3, 3]);
  });

  it("with two points at one airspeed steps there, and gives no number that is not one", () => {
    const step = [
      { airspeed: 0, value: 1 },
      { airspeed: 10, value: 1 },
      { airspeed: 10, value: 2 },
      { airspeed: 20, value: 2 },
    ];
    expect([9.999, 10.001].map((airspeed) => scheduledValue(step, airspeed))).toEqual([1, 2]);
    expect(scheduledValue(step, 10)).toBe(1);
  });

  it("without points is refused", () => {
    expect(() => scheduledValue([], 3)).toThrow(RangeError);
  });
});

describe("the range that trim may use", () => {
  const scheduled: Control = { kind: "scheduled", schedule, ...limits };

  it("of a scheduled control is the schedule's value on schedule, and everything within its limits at the optimum", () => {
    expect(controlRange(scheduled, 17.5, "schedule")).toEqual({ minimum: 76, maximum: 76 });
    expect(controlRange(scheduled, 17.5, "optimum")).toEqual(limits);
  });

  it("of a free control is everything within its limits either way", () => {
    for (const use of ["schedule", "optimum"] as const) expect(controlRange({ kind: "free", ...limits }, 3, use)).toEqual(limits);
  });

  it.each([
    { kind: "fixed", value: 8 },
    { kind: "ground-set", value: 8, minimum: 4, maximum: 10 },
  ] as const)("of a $kind control is its one value, at the optimum too", (setting) => {
    for (const use of ["schedule", "optimum"] as const) expect(controlRange(setting, 20, use)).toEqual({ minimum: 8, maximum: 8 });
  });

  it("is read from a file only as one of the four kinds, complete", () => {
    const read = control("speed", "Tip speed.");
    expect(read.safeParse(scheduled).success).toBe(true);
    expect(read.safeParse({ kind: "scheduled", schedule: [], ...limits }).success).toBe(false);
    expect(read.safeParse({ kind: "free", minimum: 1 }).success).toBe(false);
    expect(read.safeParse({ kind: "loose", minimum: 1, maximum: 2 }).success).toBe(false);
  });
});
