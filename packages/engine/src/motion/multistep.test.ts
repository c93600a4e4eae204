import { describe, expect, it } from "vitest";
import { MultistepIntegrator, type RateOfChange } from "./multistep.ts";

/** Error at the end after `count` steps over `duration`. */
function endError(rate: RateOfChange, start: readonly number[], exact: readonly number[], duration: number, count: number): number {
  const state = Float64Array.from(start);
  const integrator = new MultistepIntegrator(state.length, rate);
  const step = duration / count;
  for (let k = 0; k < count; k++) integrator.advance(k * step, state, step);
  return Math.max(...exact.map((value, i) => Math.abs(value - (state[i] as number))));
}

/** An oscillation with a decaying companion and a driving term: y'' = −4 y, z' = −z² + cos t of time. */
const rate: RateOfChange = (time, state, into) => {
  into[0] = state[1] as number;
  into[1] = -4 * (state[0] as number);
  into[2] = Math.cos(time) * (state[2] as number);
};
const duration = 3;
const exact = [Math.cos(2 * duration), -2 * Math.sin(2 * duration), Math.exp(Math.sin(duration))];

describe("the multistep integrator", () => {
  it("is of third order, measured by halving the step four times", () => {
    const errors = [60, 120, 240, 480, 960].map((count) => endError(rate, [1, 0, 1], exact, duration, count));
    for (let k = 1; k < errors.length; k++) {
      const order = Math.log2((errors[k - 1] as number) / (errors[k] as number));
      expect(order).toBeGreaterThan(2.85);
      expect(order).toBeLessThan(3.25);
    }
  });

  it("asks once per step, and four times in each of the two that start it", () => {
    const state = Float64Array.of(1, 0, 1);
    const integrator = new MultistepIntegrator(3, rate);
    for (let k = 0; k < 10; k++) integrator.advance(k * 0.1, state, 0.1);
    expect(integrator.evaluations).toBe(2 * 4 + 8);
    integrator.restart();
    for (let k = 10; k < 20; k++) integrator.advance(k * 0.1, state, 0.1);
    expect(integrator.evaluations).toBe(2 * (2 * 4 + 8));
  });

  it("keeps its order over a jump of the rate where it is restarted, and loses it where it is not", () => {
    const jumping: RateOfChange = (time, _state, into) => {
      into[0] = time < 1 - 1e-9 ? time * time * time : -2 * Math.exp(time);
    };
    const end = 0.25 - 2 * (Math.exp(2) - Math.exp(1));
    const error = (count: number, restarted: boolean): number => {
      const state = Float64Array.of(0);
      const integrator = new MultistepIntegrator(1, jumping);
      const step = 2 / count;
      for (let k = 0; k < count; k++) {
        if (restarted && 2 * k === count) integrator.restart();
        integrator.advance(k * step, state, step);
      }
      return Math.abs((state[0] as number) - end);
    };
    expect(Math.log2(error(100, false) / error(200, false))).toBeLessThan(1.6);
    // The last stage of the step before the jump already sees what comes after it: first order in one step, so it is not held here.
    expect(error(200, true)).toBeLessThan(error(200, false));
  });
});
