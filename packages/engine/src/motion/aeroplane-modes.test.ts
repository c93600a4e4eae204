import { describe, expect, it } from "vitest";
import { lateralMotion, longitudinalMotion } from "./aeroplane-derivatives.ts";
import type { LinearMotion, Mode } from "./linear-motion.ts";
import { linearResponse } from "./linear-response.ts";
import { modesOf } from "./modes.ts";

const flight = { airspeed: 50, pathAngle: 0, gravity: 9.80665 };
const light = { xu: -0.07, xw: 0.02, zu: -0.4, zw: -1.7, zq: 0, zwDot: 0, mu: 0, mw: -0.28, mq: -2.2, mwDot: -0.02 };
const across = {
  yv: -0.14,
  yp: 0,
  yr: 0,
  lv: -0.12,
  lp: -2.3,
  lr: 1.05,
  nv: 0.17,
  np: -1.7,
  nr: -1.03,
  productOverRoll: 0,
  productOverYaw: 0,
};

function modes(motion: LinearMotion): readonly Mode[] {
  const found = modesOf(motion);
  if (!found) throw new Error("no modes");
  return found;
}
const names = (motion: LinearMotion) => modes(motion).map(({ name }) => name);

describe("modes of an aeroplane", () => {
  it("have the names of the trade, shares of one, and times that belong to their roots", () => {
    expect(names(longitudinalMotion(light, flight))).toEqual(["short period", "phugoid"]);
    expect(names(lateralMotion(across, flight))).toEqual(["Dutch roll", "roll", "spiral"]);
    for (const mode of [...modes(longitudinalMotion(light, flight)), ...modes(lateralMotion(across, flight))]) {
      expect(mode.participation?.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      const time = mode.timeToHalf ?? mode.timeToDouble ?? 0;
      expect(Math.exp(Math.abs(mode.real) * time)).toBeCloseTo(2, 12);
    }
  });

  it("without drag and with pitch held by itself, the phugoid is Lanchester's", () => {
    // Weathercock without end: w = 0, so only speed and attitude are left; Z_u = −2 g / V.
    const ideal = { ...light, xu: 0, xw: 0, zu: (-2 * 9.80665) / 50, zw: -1, mw: -1e6, mq: -600, mwDot: 0 };
    const slow = modes(longitudinalMotion(ideal, flight)).at(-1);
    expect(slow?.name).toBe("phugoid");
    expect(slow?.period).toBeCloseTo((Math.SQRT2 * Math.PI * 50) / 9.80665, 1);
  });

  it("split into two real ones where the centre of gravity is too far aft, one of them growing", () => {
    const aft = modes(longitudinalMotion({ ...light, mw: 0.2 }, flight));
    expect(aft.some(({ timeToDouble }) => timeToDouble !== null)).toBe(true);
  });

  it("say neutral for what neither grows nor dies away", () => {
    const still = modes({
      states: [
        { id: "phi", kind: "roll" },
        { id: "p", kind: "roll-rate" },
      ],
      matrix: Float64Array.of(0, 1, 0, -2),
    });
    const neutral = still.find(({ real }) => real === 0);
    expect(neutral).toMatchObject({ timeToHalf: null, timeToDouble: null, name: "spiral" });
  });

  it("are moved by products of inertia, and keep their names", () => {
    const turned = modes(lateralMotion({ ...across, productOverRoll: 0.05, productOverYaw: 0.02 }, flight));
    const plain = modes(lateralMotion(across, flight));
    expect(turned[0]?.imaginary).not.toBeCloseTo(plain[0]?.imaginary ?? 0, 3);
    expect(turned.map(({ name }) => name)).toEqual(plain.map(({ name }) => name));
  });
});

describe("the response of a linear motion", () => {
  it("is the closed form of a damped oscillation, however long the step", () => {
    const [damping, frequency] = [0.3, 2];
    const motion: LinearMotion = {
      states: [
        { id: "theta", kind: "pitch" },
        { id: "q", kind: "pitch-rate" },
      ],
      matrix: Float64Array.of(0, 1, -(damping ** 2 + frequency ** 2), -2 * damping),
    };
    for (const steps of [3, 50]) {
      const { times, states } = linearResponse(motion, [1, -damping], 12, steps);
      times.forEach((time, k) => {
        expect(states[0]?.[k]).toBeCloseTo(Math.exp(-damping * time) * Math.cos(frequency * time), 11);
      });
    }
  });

  it("dies away where every mode does, at the rate of the slowest", () => {
    const motion = longitudinalMotion(light, flight);
    const slow = modes(motion).at(-1);
    const period = slow?.period ?? 0;
    const { states } = linearResponse(motion, [0, 1, 0, 0], 4 * period, 4);
    const [late, later] = [states[0]?.[3] ?? 0, states[0]?.[4] ?? 0];
    expect(later / late).toBeCloseTo(Math.exp((slow?.real ?? 0) * period), 6);
  });
});
