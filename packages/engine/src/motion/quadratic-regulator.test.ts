import { describe, expect, it } from "vitest";
import { quadraticRegulator } from "./quadratic-regulator.ts";

describe("the regulator of least sum of squares", () => {
  it("of a double integrator has, in short steps, the gains 1 and √3 of the continuous one", () => {
    // By hand: A = [0 1; 0 0], B = [0; 1], Q = diag(1, 1), R = 1 gives K = [1, √3].
    const gain = quadraticRegulator({
      matrix: Float64Array.of(0, 1, 0, 0),
      controls: Float64Array.of(0, 1),
      stateScale: [1, 1],
      controlScale: [1],
      step: 1e-4,
    });
    expect(gain?.[0]).toBeCloseTo(1, 3);
    expect(gain?.[1]).toBeCloseTo(Math.sqrt(3), 3);
  });

  it("solves the Riccati equation of a scalar motion that grows", () => {
    // x₊ = φ x + γ u with φ = e^(a h): P = 1 + φ² P − (φ γ P)²/(1 + γ² P), K = φ γ P/(1 + γ² P).
    const [a, step] = [2, 0.1];
    const phi = Math.exp(a * step);
    const gamma = (phi - 1) / a;
    let p = 1;
    for (let k = 0; k < 2000; k++) p = 1 + phi * phi * p - (phi * gamma * p) ** 2 / (1 + gamma * gamma * p);
    const gain = quadraticRegulator({ matrix: Float64Array.of(a), controls: Float64Array.of(1), stateScale: [1], controlScale: [1], step });
    expect(gain?.[0]).toBeCloseTo((phi * gamma * p) / (1 + gamma * gamma * p), 9);
  });

  it("leaves a control alone that stays where it is, and says so when nothing can hold the motion", () => {
    const growing = { matrix: Float64Array.of(0.5, 0, 0, -1), stateScale: [1, 1], step: 0.01 };
    const held = quadraticRegulator({ ...growing, controls: Float64Array.of(1, 1, 0, 0), controlScale: [1, 0] });
    expect(held?.[0]).toBeGreaterThan(0.5);
    expect(held?.[2]).toBe(0);
    expect(quadraticRegulator({ ...growing, controls: Float64Array.of(0, 1), controlScale: [1] })).toBeUndefined();
  });
});
