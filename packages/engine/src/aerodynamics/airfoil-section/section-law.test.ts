import { describe, expect, it } from "vitest";
import naca0015 from "./data/naca-0015.json" with { type: "json" };
import type { GenericSection } from "./section-definition.ts";
import { sectionCoefficients, sectionLaw } from "./section-law.ts";

const degree = Math.PI / 180;
const generic: GenericSection = { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: -0.005, cd2: 0.4, stallAngle: 12.5 * degree };
const smooth = { kind: "built-in", name: "naca-0015", dragIncrement: 0 } as const;

describe("a generic section", () => {
  const law = sectionLaw(generic);

  it("is its formula while attached, with Prandtl and Glauert's factor on lift alone", () => {
    for (const alpha of [-0.1, -0.02, 0, 0.05, 0.1]) {
      const { lift, drag } = sectionCoefficients(law, { angleOfAttack: alpha, mach: 0.5, reynolds: 0 });
      const blended = Math.abs(alpha) > 0.09 ? 2e-2 : 2e-3;
      expect(Math.abs(lift - (5.7 * alpha) / Math.sqrt(0.75))).toBeLessThan(blended);
      expect(Math.abs(drag - (0.0125 - 0.005 * alpha + 0.4 * alpha * alpha))).toBeLessThan(blended / 10);
    }
  });

  it("is a plate across the stream when separated, whatever the Mach number", () => {
    for (const alpha of [0.6, 1.2, Math.PI / 2, 2.5, -2]) {
      const { lift, drag } = sectionCoefficients(law, { angleOfAttack: alpha, mach: 0.5, reynolds: 0 });
      expect(lift).toBeCloseTo(2.2 * Math.sin(alpha) * Math.cos(alpha), 4);
      expect(drag).toBeCloseTo(0.0125 + 1.9 * Math.sin(alpha) ** 2, 4);
    }
  });

  it("reads the same after any number of turns", () => {
    const at = (angleOfAttack: number) => sectionCoefficients(law, { angleOfAttack, mach: 0, reynolds: 0 });
    for (const alpha of [0.1, 3, -3]) expect(at(alpha + 4 * Math.PI).lift).toBeCloseTo(at(alpha).lift, 8);
  });
});

describe("the built-in section naca-0015", () => {
  const law = sectionLaw(smooth);
  const at = (angle: number, reynolds: number) => sectionCoefficients(law, { angleOfAttack: angle * degree, mach: 0, reynolds });

  it("passes through the numbers of its source, and is symmetric", () => {
    for (const polar of naca0015.polars) {
      naca0015.angles.forEach((angle, i) => {
        expect(at(angle, polar.reynolds).lift).toBeCloseTo(polar.lift[i] ?? Number.NaN, 2);
        expect(at(angle, polar.reynolds).drag).toBeCloseTo(polar.drag[i] ?? Number.NaN, 2);
        expect(at(-angle, polar.reynolds).lift).toBeCloseTo(-(polar.lift[i] ?? Number.NaN), 2);
      });
    }
    naca0015.postStall.angles.forEach((angle, i) => {
      expect(at(angle, 5e5).lift).toBeCloseTo(naca0015.postStall.lift[i] ?? Number.NaN, 2);
    });
  });

  it("has the drag at zero lift of its source at every Reynolds number, within a fifth", () => {
    const known = [...naca0015.zeroLiftDrag, ...naca0015.polars.map(({ reynolds, drag }) => ({ reynolds, drag: drag[0] ?? Number.NaN }))];
    for (const { reynolds, drag } of known) expect(Math.abs(at(0, reynolds).drag / drag - 1)).toBeLessThan(0.01);
    expect(at(0, 6e5).drag).toBeGreaterThan(0.0074);
    expect(at(0, 6e5).drag).toBeLessThan(0.0091);
  });

  it("adds a drag increment at every angle", () => {
    const rough = sectionLaw({ ...smooth, dragIncrement: 0.004 });
    for (const angle of [0, 10, 60, 175]) {
      const rougher = sectionCoefficients(rough, { angleOfAttack: angle * degree, mach: 0, reynolds: 1e6 });
      expect(rougher.drag - at(angle, 1e6).drag).toBeCloseTo(0.004, 12);
    }
    expect(sectionCoefficients(sectionLaw(smooth), { angleOfAttack: 0, mach: 0, reynolds: 1e6 }).drag).toBeCloseTo(0.0074, 6);
  });
});
