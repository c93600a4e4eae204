import { describe, expect, it } from "vitest";
import { groundSpeeds, type SpeedPiece } from "./ground-speed.ts";

const limits = { acceleration: 0.5, climbRate: 3, descentRate: 2 };
const calm = { north: 0, east: 0 };

function straight(count: number, more: Partial<SpeedPiece> = {}): SpeedPiece[] {
  return Array.from({ length: count }, (_, index) => ({
    length: 10,
    course: 0,
    wind: calm,
    commanded: 20,
    airspeed: 20,
    startsLeg: index === 0,
    ...more,
  }));
}

const time = (pieces: readonly SpeedPiece[], speeds: ReturnType<typeof groundSpeeds>) =>
  pieces.reduce((sum, piece, at) => sum + (2 * piece.length) / ((speeds.start[at] as number) + (speeds.end[at] as number)), 0);

describe("ground speed along a run", () => {
  it("by hand: from rest to 20 m/s and back at 0.5 m/s² takes 400 m and 40 s each, the rest at 20 m/s", () => {
    const pieces = straight(200);
    const speeds = groundSpeeds(pieces, limits);
    expect(speeds.start[0]).toBe(0);
    expect(speeds.end[199]).toBe(0);
    expect(speeds.start[100]).toBe(20);
    expect(time(pieces, speeds)).toBeCloseTo(40 + 1200 / 20 + 40, 6);
    expect(speeds.kind[10]).toBe("accelerate");
    expect(speeds.kind[100]).toBe("cruise");
    expect(speeds.kind[190]).toBe("decelerate");
  });

  it("a leg too short for full speed peaks half way: v² = 2 a s/2", () => {
    const speeds = groundSpeeds(straight(40), limits);
    expect(speeds.end[19]).toBeCloseTo(Math.sqrt(2 * 0.5 * 200), 6);
    expect(speeds.end[39]).toBe(0);
  });

  it("keeps the airspeed around a corner in wind: head wind on one leg, tail wind on the next", () => {
    const wind = { north: -5, east: 0 };
    const pieces = [...straight(150, { wind }), ...straight(150, { wind, course: Math.PI })];
    const speeds = groundSpeeds(pieces, limits);
    expect(speeds.end[149]).toBeCloseTo(15, 9);
    expect(speeds.start[150]).toBeCloseTo(25, 9);
    expect(speeds.kind[150]).toBe("cruise");
  });

  it("a faster leg is accelerated into after the corner", () => {
    const fast = straight(150, { commanded: 25, airspeed: 25 });
    const speeds = groundSpeeds([...straight(150), ...fast], limits);
    expect(speeds.start[150]).toBeCloseTo(20, 9);
    expect(speeds.kind[150]).toBe("accelerate");
    expect(speeds.end[200]).toBe(25);
  });

  it("holds the acceleration to what the rate of descent allows: at 30 m/s, 0.5 m/s² would be 1.5 m/s", () => {
    const slow = { acceleration: 0.5, climbRate: 3, descentRate: 1 };
    const pieces = straight(400, { commanded: 30, airspeed: 30 });
    const speeds = groundSpeeds(pieces, slow);
    for (let at = 0; at < 400; at++) {
      const start = speeds.start[at] as number;
      const end = speeds.end[at] as number;
      const climb = ((end * end - start * start) / 20) * (Math.max(start, end) / 9.80665);
      expect(Math.abs(climb)).toBeLessThanOrEqual(1 + 1e-9);
    }
  });

  it("ends where the track cannot be held, and says why", () => {
    const lost = straight(5, { wind: { north: 0, east: 25 } });
    const speeds = groundSpeeds([...straight(150), ...lost], limits);
    expect(speeds.lost).toMatchObject({ piece: 150, because: "cross-wind" });
    expect(speeds.lost?.airspeedNeeded).toBeCloseTo(25, 9);
  });
});
