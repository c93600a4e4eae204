import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inducedInflow, momentumResidual } from "./induced-inflow.ts";

const hover = (ct: number, kappa: number) => Math.sqrt((kappa * ct) / 2);

describe("mean induced velocity", () => {
  it("goes to thrust over twice the stream at high forward speed", () => {
    expect(inducedInflow({ ct: 0.005, mu: 0.6, lambdaC: 0, kappa: 1.15 })).toBeCloseTo((1.15 * 0.005) / (2 * 0.6), 5);
  });

  it("is the hover value at rest, κ acting on the thrust", () => {
    expect(inducedInflow({ ct: 0.006, mu: 0, lambdaC: 0, kappa: 1.2 })).toBeCloseTo(hover(0.006, 1.2), 12);
  });

  it("reverses with the thrust and vanishes with it", () => {
    for (const lambdaC of [-0.1, -0.02, 0, 0.03]) {
      const up = inducedInflow({ ct: 0.004, mu: 0.05, lambdaC, kappa: 1.1 });
      expect(inducedInflow({ ct: -0.004, mu: 0.05, lambdaC: -lambdaC, kappa: 1.1 })).toBeCloseTo(-up, 14);
    }
    expect(inducedInflow({ ct: 0, mu: 0, lambdaC: -0.05, kappa: 1.1 })).toBe(0);
    expect(Math.abs(inducedInflow({ ct: 1e-12, mu: 0.1, lambdaC: -0.05, kappa: 1.1 }))).toBeLessThan(1e-10);
  });

  it("makes the momentum residual vanish", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.015, max: 0.015, noNaN: true }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        fc.double({ min: 1, max: 1.3, noNaN: true }),
        (ct, mu, lambdaC, kappa) => {
          const condition = { ct, mu, lambdaC, kappa };
          const value = inducedInflow(condition);
          expect(Number.isFinite(value)).toBe(true);
          expect(Math.abs(momentumResidual(condition, value))).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 2000, seed: 5 },
    );
  });

  it.each([0, 0.1, 0.4, 0.8, 1.2, 1.49, 2])(
    "is continuous with its slope from climb through hover and the ring state into the windmill, forward speed %s v_h",
    (forward) => {
      const ct = 0.006;
      const scale = hover(ct, 1);
      const at = (climb: number) => inducedInflow({ ct, mu: forward * scale, lambdaC: climb * scale, kappa: 1 }) / scale;
      const step = 1e-5;
      for (let climb = 2; climb > -3.5; climb -= 0.0013) {
        const before = (at(climb) - at(climb - step)) / step;
        const after = (at(climb + step) - at(climb)) / step;
        expect(Math.abs(before)).toBeLessThan(7);
        // The steepest bend, at the windmill edge, turns the slope by less than this over two steps.
        expect(Math.abs(after - before)).toBeLessThan(200 * step + 1e-6);
      }
    },
  );

  it("is continuous with its slope over forward speed at every rate of descent", () => {
    const ct = 0.006;
    const scale = hover(ct, 1);
    const step = 1e-5;
    for (const climb of [-0.2, -0.6, -1, -1.5, -1.9, -2, -2.3]) {
      const at = (forward: number) => inducedInflow({ ct, mu: forward * scale, lambdaC: climb * scale, kappa: 1 }) / scale;
      for (let forward = 0.002; forward < 2; forward += 0.0017) {
        const before = (at(forward) - at(forward - step)) / step;
        const after = (at(forward + step) - at(forward)) / step;
        expect(Math.abs(after - before)).toBeLessThan(60 * step + 1e-6);
      }
    }
  });
});
