import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { camberDragFactor, scalingReynoldsNumbers, smoothZeroLiftDrag, symmetricLargestLift } from "./reynolds-scaling.ts";
import type { CamberedSection } from "./section-definition.ts";
import { sectionCoefficients, sectionLaw } from "./section-law.ts";
import { plateMoment, separatedFlow } from "./separated-flow.ts";

const degree = Math.PI / 180;
const section = (more: Partial<CamberedSection>): CamberedSection => ({
  kind: "cambered",
  thickness: 0.08,
  camber: 0.04,
  dragIncrement: 0,
  ...more,
});

describe("a section by thickness and camber", () => {
  it("has positive drag, finite coefficients and no jump on the whole circle, whatever its shape and Reynolds number", () => {
    const shapes = fc.record({
      thickness: fc.double({ min: 0.01, max: 0.25, noNaN: true }),
      camber: fc.double({ min: 0, max: 0.12, noNaN: true }),
      reynolds: fc.double({ min: 1e4, max: 2e6, noNaN: true }),
    });
    fc.assert(
      fc.property(shapes, ({ reynolds, ...shape }) => {
        const law = sectionLaw(section(shape));
        let before = sectionCoefficients(law, { angleOfAttack: -Math.PI, mach: 0, reynolds });
        const friction = smoothZeroLiftDrag(reynolds, shape.thickness);
        for (let i = 1; i <= 1440; i++) {
          const at = sectionCoefficients(law, { angleOfAttack: -Math.PI + (i * Math.PI) / 720, mach: 0, reynolds });
          expect(at.drag).toBeGreaterThan(0.5 * friction);
          expect(Math.abs(at.lift - before.lift)).toBeLessThan(0.1);
          expect(Math.abs(at.drag - before.drag)).toBeLessThan(0.04);
          expect(Math.abs(at.moment - before.moment)).toBeLessThan(0.04);
          before = at;
        }
      }),
      { seed: 20_240_117, numRuns: 12 },
    );
  });

  it("reaches the largest lift it is made for at every tabulated Reynolds number", () => {
    for (const thickness of [0.05, 0.12, 0.18]) {
      const law = sectionLaw(section({ thickness, camber: 0 }));
      for (const reynolds of scalingReynoldsNumbers) {
        const lifts = Array.from(
          { length: 250 },
          (_, i) => sectionCoefficients(law, { angleOfAttack: i * 0.1 * degree, mach: 0, reynolds }).lift,
        );
        const first = lifts.find((lift, i) => i > 20 && lift > (lifts[i + 1] ?? 0)) ?? 0;
        expect(first / Math.max(symmetricLargestLift(reynolds, thickness), 0.3)).toBeCloseTo(1, 1);
      }
    }
  });

  it("takes angle without lift, design lift, moment and largest lift as given", () => {
    const given = section({ zeroLiftAngle: -3 * degree, designLift: 0.4, momentCoefficient: -0.07, largestLift: 1.3 });
    const law = sectionLaw(given);
    const at = (angle: number) => sectionCoefficients(law, { angleOfAttack: angle * degree, mach: 0, reynolds: 1.6e5 });
    expect(at(-3).lift).toBeCloseTo(0, 2);
    expect(at(0).moment).toBeCloseTo(-0.07, 3);
    const around = Array.from({ length: 120 }, (_, i) => at(-3 + i * 0.15));
    expect(Math.max(...around.map(({ lift }) => lift))).toBeCloseTo(1.35, 1);
    const cheapest = around.reduce((best, one) => (one.drag < best.drag ? one : best));
    expect(cheapest.lift).toBeCloseTo(0.4, 1);
  });
});

describe("scaling with the Reynolds number", () => {
  it("follows the exponents of the source, and thick sections have more drag than thin ones", () => {
    const exponent = (low: number, high: number) =>
      -Math.log(smoothZeroLiftDrag(high, 0.15) / smoothZeroLiftDrag(low, 0.15)) / Math.log(high / low);
    expect(exponent(1e4, 4e4)).toBeCloseTo(0.44, 2);
    expect(exponent(4e4, 1.6e5)).toBeCloseTo(0.38, 2);
    expect(exponent(1.6e5, 1e6)).toBeCloseTo(0.25, 2);
    expect(exponent(1e6, 2e6)).toBeLessThan(0.12);
    expect(smoothZeroLiftDrag(1e5, 0.18)).toBeGreaterThan(smoothZeroLiftDrag(1e5, 0.06));
  });

  it("makes camber dear at low Reynolds numbers and nearly free at high ones", () => {
    expect(camberDragFactor(1e5, 0.05)).toBeCloseTo(1.3, 6);
    expect(camberDragFactor(1e6, 0.05)).toBeCloseTo(1.06, 6);
    expect(camberDragFactor(4e4, 0.05)).toBeGreaterThan(camberDragFactor(1e5, 0.05));
    expect(camberDragFactor(2e4, 0)).toBe(1);
  });
});

describe("separated flow", () => {
  it("is that of a plate across the stream, symmetric, and has its pressure at half the chord there", () => {
    const across = separatedFlow(Math.PI / 2);
    expect(across.drag).toBeCloseTo(1.8, 3);
    expect(across.moment).toBeCloseTo(-1.8 / 4, 2);
    for (const angle of [5, 30, 90, 170]) {
      const [up, down] = [separatedFlow(angle * degree), separatedFlow(-angle * degree)];
      expect(down.lift).toBeCloseTo(-up.lift, 12);
      expect(down.drag).toBeCloseTo(up.drag, 12);
      expect(down.moment).toBeCloseTo(-up.moment, 12);
    }
  });

  it("has no moment along the stream, and half the normal force times the chord against it", () => {
    expect(plateMoment(0, 1, 0.1)).toBeCloseTo(0, 12);
    expect(plateMoment(Math.PI, -0.5, 0.1)).toBeCloseTo(-0.25, 12);
  });
});
