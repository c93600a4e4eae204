import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FiniteWing, wingCoefficients } from "./index.ts";

const degree = Math.PI / 180;

/** The invented wing of the demo: aspect ratio 8.15. */
const wing: FiniteWing = {
  area: 0.42,
  span: 1.85,
  liftSlope: 4.7,
  cd0: 0.018,
  spanEfficiency: 0.8,
  stallAngle: 18.5 * degree,
  stallSharpness: 60,
  flatPlateCoefficient: 1.2,
};

describe("a wing", () => {
  it("well below stall has C_L = a α and C_D = C_D0 + C_L²/(π A e)", () => {
    for (const alpha of [-6, 0, 3, 8].map((angle) => angle * degree)) {
      const { lift, drag } = wingCoefficients(wing, alpha);
      expect(lift).toBeCloseTo(4.7 * alpha, 4);
      // π · 8.1488 · 0.8 = 20.480
      expect(drag).toBeCloseTo(0.018 + (4.7 * alpha) ** 2 / 20.48, 4);
    }
  });

  it("across the stream is a flat plate: no lift, C_D 1.2 and the profile drag", () => {
    for (const alpha of [90, -90]) {
      const { lift, drag } = wingCoefficients(wing, alpha * degree);
      expect(lift).toBeCloseTo(0, 12);
      expect(drag).toBeCloseTo(1.218, 12);
    }
  });

  it("backwards lifts like a plate and drags as little as at zero angle", () => {
    expect(wingCoefficients(wing, Math.PI).lift).toBeCloseTo(0, 12);
    expect(wingCoefficients(wing, Math.PI).drag).toBeCloseTo(0.018, 12);
    expect(wingCoefficients(wing, Math.PI + 0.1).lift).toBeCloseTo(1.2 * Math.sin(0.1) * Math.cos(0.1), 9);
  });

  it("is half stalled at its stall angle", () => {
    const alpha = wing.stallAngle;
    const plate = 1.2 * Math.sin(alpha) * Math.cos(alpha);
    expect(wingCoefficients(wing, alpha).lift).toBeCloseTo((4.7 * alpha + plate) / 2, 12);
  });

  it("mirrors: at the opposite angle the lift is opposite and the drag the same", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: Math.PI, noNaN: true }), (alpha) => {
        const up = wingCoefficients(wing, alpha);
        const down = wingCoefficients(wing, -alpha);
        expect(down.lift).toBeCloseTo(-up.lift, 12);
        expect(down.drag).toBeCloseTo(up.drag, 12);
      }),
      { seed: 31 },
    );
  });

  it("never has less drag than its profile drag, and never jumps", () => {
    let before = wingCoefficients(wing, -Math.PI);
    for (let alpha = -Math.PI; alpha <= Math.PI; alpha += 0.001) {
      const here = wingCoefficients(wing, alpha);
      expect(here.drag).toBeGreaterThanOrEqual(0.018);
      expect(Math.abs(here.lift - before.lift)).toBeLessThan(0.03);
      expect(Math.abs(here.drag - before.drag)).toBeLessThan(0.03);
      before = here;
    }
  });

  it("stalls: the lift falls beyond the stall angle", () => {
    expect(wingCoefficients(wing, 25 * degree).lift).toBeLessThan(wingCoefficients(wing, 16 * degree).lift * 0.5);
  });
});
