import { describe, expect, it } from "vitest";
import { speedProfile } from "./speed-profile.ts";

describe("a change of speed", () => {
  it.each([
    [0, 20, 1],
    [22, 3, 2],
    [18, 18.4, 1],
  ])("from %d to %d m/s with %d m/s² begins and ends without acceleration and never exceeds it", (from, to, most) => {
    const moments = speedProfile(from, to, most, 0.5);
    expect(moments[0]).toMatchObject({ airspeed: from, acceleration: 0 });
    expect(moments.at(-1)).toMatchObject({ airspeed: to, acceleration: 0 });
    expect(Math.max(...moments.map(({ acceleration }) => Math.abs(acceleration)))).toBeLessThanOrEqual(most + 1e-12);
  });

  it("gains the speed that its acceleration adds up to", () => {
    const moments = speedProfile(2, 17, 1.3, 0.001);
    let speed = 2;
    for (let i = 1; i < moments.length; i++) {
      const [a, b] = [moments[i - 1], moments[i]];
      if (!a || !b) throw new Error("moments are dense");
      speed += ((a.acceleration + b.acceleration) / 2) * (b.time - a.time);
      expect(Math.abs(speed - b.airspeed)).toBeLessThan(1e-5);
    }
  });
});
