import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sectionLaw } from "../airfoil-section/index.ts";
import { finiteLiftSlope, LiftingLineWing, liftingLine, type WingFlap, type WingPlanform } from "./index.ts";
import { StripReader } from "./strip-reader.ts";
import { stripCoefficients } from "./wing-strip.ts";

const degree = Math.PI / 180;
const stream = { reynolds: 4e5, mach: 0.05 };
/** A thin section whose lift is 2π α as far as anybody looks. */
const thin = sectionLaw({ kind: "generic", liftSlope: 2 * Math.PI, cd0: 0.01, cd1: 0, cd2: 0, stallAngle: 0.6 });
const measured = sectionLaw({ kind: "built-in", name: "naca-0012", dragIncrement: 0 });
const planform = (more: Partial<WingPlanform> = {}): WingPlanform => ({
  kind: "trapezoidal",
  area: 1,
  span: Math.sqrt(8),
  taper: 1,
  sweep: 0,
  twist: 0,
  ...more,
});
const wingOf = (shape: WingPlanform, flaps: readonly WingFlap[] = [], count = 31, section = thin, shortWing = false) =>
  new LiftingLineWing(liftingLine(shape, section, flaps, { count, shortWing, ...stream }));
const flap = (more: Partial<WingFlap>): WingFlap => ({ from: 0.5, to: 0.9, chordFraction: 0.25, deflection: 0.2, side: "both", ...more });

describe("a lifting line", () => {
  it("of elliptic shape has C_Di = C_L²/(π A) and a = 2π/(1 + 2/A), whatever the number of stations", () => {
    fc.assert(
      fc.property(fc.double({ min: 3, max: 30, noNaN: true }), fc.integer({ min: 2, max: 25 }), (aspect, half) => {
        const wing = wingOf(planform({ kind: "elliptic", span: Math.sqrt(aspect) }), [], 2 * half + 1);
        const { lift, induced, stations } = wing.at({ angle: 4 * degree, ...stream, mach: 0 });
        expect(lift / (4 * degree)).toBeCloseTo((2 * Math.PI) / (1 + 2 / aspect), 6);
        expect((Math.PI * aspect * induced) / lift ** 2).toBeCloseTo(1, 9);
        const downwash = stations.map((station) => station.downwash);
        expect(Math.max(...downwash) - Math.min(...downwash)).toBeLessThan(1e-8);
      }),
      { seed: 7, numRuns: 40 },
    );
  });

  it("closes in with the square of the number of stations or faster", () => {
    const shape = planform({ taper: 0.4 });
    const finest = wingOf(shape, [], 121).at({ angle: 0.08, ...stream }).lift;
    const errors = [7, 15, 31].map((count) => Math.abs(wingOf(shape, [], count).at({ angle: 0.08, ...stream }).lift - finest));
    expect(errors[1]).toBeLessThan((errors[0] ?? 0) / 3.5);
    expect(errors[2]).toBeLessThan((errors[1] ?? 0) / 3.5);
    expect((errors[2] ?? 1) / finest).toBeLessThan(5e-4);
  });

  it("has no wing of one span and area with less induced drag than the elliptic one", () => {
    for (const taper of [0.1, 0.2, 0.3, 0.4, 0.6, 0.8, 1]) {
      const { lift, induced } = wingOf(planform({ taper })).at({ angle: 0.08, ...stream, mach: 0 });
      expect((Math.PI * 8 * induced) / lift ** 2).toBeGreaterThan(1);
    }
  });

  it("of elliptic shape lifts as Helmbold's formula says where the stream bends along the chord, and nearly so without on a long wing", () => {
    for (const aspect of [2, 4, 8, 16, 40]) {
      const shape = planform({ kind: "elliptic", span: Math.sqrt(aspect) });
      const slope = (shortWing: boolean) => wingOf(shape, [], 31, thin, shortWing).at({ angle: 0.02, ...stream, mach: 0 }).lift / 0.02;
      const helmbold = finiteLiftSlope(shape, 2 * Math.PI, 0);
      expect(slope(true) / helmbold).toBeCloseTo(1, 6);
      expect(slope(false) / helmbold - 1).toBeGreaterThan(0);
      expect(slope(false) / helmbold - 1).toBeLessThan(2 / aspect ** 2 + 0.002);
    }
  });

  it("mirrors: a flap on the left does what one on the right does, rolling and yawing the other way", () => {
    const at = { angle: 0.06, ...stream };
    const right = wingOf(planform({ sweep: 0.2, taper: 0.6 }), [flap({ side: "right" })], 31, measured).at(at);
    const left = wingOf(planform({ sweep: 0.2, taper: 0.6 }), [flap({ side: "left" })], 31, measured).at(at);
    expect(left.lift).toBeCloseTo(right.lift, 9);
    expect(left.induced).toBeCloseTo(right.induced, 9);
    expect(left.moment).toBeCloseTo(right.moment, 9);
    expect(left.rolling).toBeCloseTo(-right.rolling, 9);
    expect(left.yawing).toBeCloseTo(-right.yawing, 9);
    expect(right.rolling).toBeLessThan(-0.005);
    expect(right.yawing).toBeGreaterThan(0);
  });

  it("turned over has the opposite lift and moment and the same drag", () => {
    const up = wingOf(planform({ twist: -0.05 }), [flap({})], 31, measured);
    const down = wingOf(planform({ twist: 0.05 }), [flap({ deflection: -0.2 })], 31, measured);
    for (const angle of [-0.3, -0.1, 0, 0.1, 0.2, 0.4, 1.2, 2.5]) {
      const [a, b] = [up.at({ angle, ...stream }), down.at({ angle: -angle, ...stream })];
      expect(b.lift).toBeCloseTo(-a.lift, 6);
      expect(b.moment).toBeCloseTo(-a.moment, 6);
      expect(b.induced + b.profile).toBeCloseTo(a.induced + a.profile, 6);
    }
  });

  it("carries on beyond stall around the whole circle without a jump, the same for any number of stations", () => {
    const shape = planform({ taper: 0.6, twist: -0.035 });
    const [coarse, fine] = [wingOf(shape, [], 21, measured, true), wingOf(shape, [], 41, measured, true)];
    let before = coarse.at({ angle: -Math.PI, ...stream }).lift;
    for (let angle = -Math.PI; angle <= Math.PI; angle += degree) {
      const { lift, induced, profile, moment } = coarse.at({ angle, ...stream });
      for (const value of [lift, induced, profile, moment]) expect(Number.isFinite(value)).toBe(true);
      expect(Math.abs(lift - before)).toBeLessThan(0.25);
      expect(Math.abs(lift - fine.at({ angle, ...stream }).lift)).toBeLessThan(0.02);
      expect(profile).toBeGreaterThan(0.004);
      before = lift;
    }
  });

  it("stalls first where it works hardest: a tapered wing far out, one with washout further in", () => {
    const hardest = (twist: number): number => {
      const { stations } = wingOf(planform({ taper: 0.3, twist })).at({ angle: 0.15, ...stream });
      return Math.abs(stations.reduce((most, station) => (station.lift > most.lift ? station : most)).place);
    };
    expect(hardest(0)).toBeGreaterThan(0.6);
    expect(hardest(-0.1)).toBeLessThan(hardest(0) - 0.2);
  });

  it("lifts less by the cosine when swept, its aft tips pitching it down", () => {
    const swept = (sweep: number) => wingOf(planform({ sweep, taper: 0.5 })).at({ angle: 0.08, ...stream, mach: 0 });
    const ratio = swept(0.4).lift / swept(0).lift;
    expect(ratio).toBeLessThan(1);
    expect(ratio).toBeGreaterThan(Math.cos(0.4));
    expect(Math.abs(swept(0).moment)).toBeLessThan(1e-9);
  });
});

describe("a strip", () => {
  it("read fast is a strip read plainly", () => {
    for (const section of [thin, measured]) {
      const line = liftingLine(planform({ sweep: 0.3, taper: 0.5 }), section, [flap({ side: "opposite" })], {
        count: 15,
        shortWing: true,
        ...stream,
      });
      const reader = new StripReader(line, stream);
      for (let v = 0; v < line.count; v++) {
        const strip = line.strips[v];
        if (!strip) throw new Error("no strip");
        const reading = { mach: stream.mach, reynolds: stream.reynolds * (line.relativeChord[v] ?? 1) };
        for (const angle of [-3.3, -1, -0.2, 0, 0.15, 0.5, 1.7, 3.1])
          expect(reader.lift(v, angle)).toBeCloseTo(stripCoefficients(strip, angle, reading).lift, 12);
      }
    }
  });
});
