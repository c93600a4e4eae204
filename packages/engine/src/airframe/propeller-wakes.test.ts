import { describe, expect, test } from "vitest";
import type { AircraftDefinition } from "../aircraft/index.ts";
import { PropellerWakes } from "./propeller-wakes.ts";
import { propellerLoads } from "./thrust-propeller.ts";

const lifting = (id: string, x: number, y: number): AircraftDefinition["propellers"][number] => ({
  id,
  place: { x, y, z: 0 },
  axis: { up: Math.PI / 2, right: 0 },
  turns: "clockwise",
  diameter: 0.33,
  inducedFactor: 1.15,
  profileEfficiency: 0.8,
  reverseFigureOfMerit: 0.4,
  thrustCoefficient: 0.12,
  zeroThrustAdvanceRatio: 0.7,
  reverseThrustCoefficient: 0.07,
  thrustRate: 100,
  reversalTime: 0.2,
  inertia: 2e-4,
  stoppedDragArea: 0,
});
const four = [
  lifting("front-right", 0.23, 0.23),
  lifting("rear-right", -0.23, 0.23),
  lifting("rear-left", -0.23, -0.23),
  lifting("front-left", 0.23, -0.23),
];
const all = four.flatMap((from) =>
  four
    .filter((on) => on !== from)
    .map((on) => ({ from: from.id, on: on.id, kind: "propeller-wake" as const, factor: 1, share: 1, active: true })),
);
const aircraft = (interference: AircraftDefinition["interference"]) =>
  ({ propellers: four, interference }) as unknown as AircraftDefinition;

/** Shaft powers of all four at a velocity through the air [m/s], 9 N each. */
function powers(interference: AircraftDefinition["interference"], velocity: readonly [number, number, number]): number[] {
  const wakes = new PropellerWakes(aircraft(interference));
  return wakes
    .settled((i, wash) => {
      const part = four[i] as (typeof four)[number];
      return { loads: propellerLoads(part, 1.2, [0, 0, -1], velocity, 9, wash) };
    })
    .map(({ loads }) => loads.shaftPower);
}

describe("wakes among four lifting propellers", () => {
  test("cost the rear pair in forward flight and spare the front pair, alike on both sides", () => {
    const alone = powers([], [10, 0, 0]);
    const [frontRight, rearRight, rearLeft, frontLeft] = powers(all, [10, 0, 0]) as [number, number, number, number];
    expect(rearRight).toBeGreaterThan((alone[1] as number) * 1.08);
    expect(frontRight).toBeLessThan(alone[0] as number);
    expect(frontLeft).toBeCloseTo(frontRight, 9);
    expect(rearLeft).toBeCloseTo(rearRight, 9);
  });

  test("follow the wind: from the right it is the left pair that pays", () => {
    const ahead = powers(all, [10, 0, 0]) as [number, number, number, number];
    const fromRight = powers(all, [0, 10, 0]) as [number, number, number, number];
    // Turned by a quarter: what front right was for wind from ahead, front right and rear right are now.
    expect(fromRight[0]).toBeCloseTo(ahead[0], 6);
    expect(fromRight[3]).toBeCloseTo(ahead[1], 6);
  });

  test("hardly matter in hover", () => {
    const alone = powers([], [0, 0, 0]);
    powers(all, [0, 0, 0]).forEach((power, i) => {
      expect(Math.abs(power / (alone[i] as number) - 1)).toBeLessThan(0.02);
    });
  });

  test("answer the same whatever was asked before", () => {
    const wakes = new PropellerWakes(aircraft(all));
    const ask = (speed: number) =>
      wakes
        .settled((i, wash) => ({ loads: propellerLoads(four[i] as (typeof four)[number], 1.2, [0, 0, -1], [speed, 0, 0], 9, wash) }))
        .map(({ loads }) => loads.shaftPower);
    const first = ask(7);
    ask(13);
    expect(ask(7)).toEqual(first);
  });
});
