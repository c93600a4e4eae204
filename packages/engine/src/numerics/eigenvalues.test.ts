import { describe, expect, it } from "vitest";
import { type EigenSystem, eigenSystem } from "./eigenvalues.ts";

function solved(rows: readonly (readonly number[])[]): EigenSystem {
  const found = eigenSystem(Float64Array.from(rows.flat()), rows.length);
  if (!found) throw new Error("no eigenvalues");
  return found;
}

const sortedReal = (system: EigenSystem) => [...system.real].sort((a, b) => a - b);

/** Largest entry of A V − V Λ, pairs as two real columns. */
function residual(rows: readonly (readonly number[])[], { real, imaginary, vectors }: EigenSystem): number {
  const n = rows.length;
  let worst = 0;
  for (let k = 0; k < n; k++) {
    const b = imaginary[k] as number;
    const partner = b > 0 ? k + 1 : b < 0 ? k - 1 : k;
    for (let i = 0; i < n; i++) {
      const product = (rows[i] ?? []).reduce((sum, entry, j) => sum + entry * (vectors[j * n + k] as number), 0);
      // (a + ib)(x + iy): real part a x − b y, imaginary part a y + b x; of the lower one b is negative and so is its sign here.
      const other = partner === k ? 0 : b * (vectors[i * n + partner] as number);
      worst = Math.max(worst, Math.abs(product - (real[k] as number) * (vectors[i * n + k] as number) + other));
    }
  }
  return worst;
}

describe("eigenvalues", () => {
  it("are the roots of the polynomial of a companion matrix", () => {
    // (x - 1)(x - 2)(x - 3)(x - 4)
    const rows = [
      [10, -35, 50, -24],
      [1, 0, 0, 0],
      [0, 1, 0, 0],
      [0, 0, 1, 0],
    ];
    const system = solved(rows);
    sortedReal(system).forEach((root, i) => {
      expect(root).toBeCloseTo(i + 1, 10);
    });
    expect(residual(rows, system)).toBeLessThan(1e-11);
  });

  it("come in pairs for oscillations, the upper one first, with vectors that satisfy the equation", () => {
    // x^4 + 2 x^3 + 6 x^2 + 5 x + 5 and a rotation
    const rows = [
      [-2, -6, -5, -5],
      [1, 0, 0, 0],
      [0, 1, 0, 0],
      [0, 0, 1, 0],
    ];
    const system = solved(rows);
    expect(residual(rows, system)).toBeLessThan(1e-12);
    for (let k = 0; k < 4; k += 2) {
      expect(system.imaginary[k] as number).toBeGreaterThan(0);
      expect(system.imaginary[k + 1]).toBe(-(system.imaginary[k] as number));
    }
    const rotation = solved([
      [-0.1, -3],
      [3, -0.1],
    ]);
    expect([...rotation.real]).toEqual([-0.1, -0.1]);
    expect(rotation.imaginary[0]).toBeCloseTo(3, 14);
  });

  it("of a circulant of eight are the roots of one, all sums and differences of them kept", () => {
    const n = 8;
    const rows = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => ((i + 1) % n === j ? 1 : 0)));
    const system = solved(rows);
    const angles = [...system.imaginary].map((b, k) => Math.atan2(b, system.real[k] as number)).sort((a, b) => a - b);
    angles.forEach((angle, k) => {
      // −135° to 180° in steps of 45°; the one at 180° may come out at −180°.
      const steps = (angle / Math.PI) * 4;
      expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-12);
      if (k > 0) expect(angle - (angles[k - 1] as number)).toBeCloseTo(Math.PI / 4, 10);
    });
  });

  it("of a defective matrix are right to the root of the rounding, and it has no inverse of vectors", () => {
    const system = solved([
      [2, 1, 0],
      [0, 2, 1],
      [0, 0, 2],
    ]);
    for (const root of system.real) expect(root).toBeCloseTo(2, 4);
    expect(system.inverse).toBeUndefined();
  });

  it("do not suffer from units: a matrix in millimetres has the roots of that in metres", () => {
    const rows = [
      [-1, 2, 0.5],
      [-3, -1, 0.1],
      [0.2, 0.4, -4],
    ];
    const units = [1, 1e6, 1e-5];
    const scaled = rows.map((row, i) => row.map((entry, j) => (entry * (units[i] as number)) / (units[j] as number)));
    const [plain, other] = [solved(rows), solved(scaled)];
    sortedReal(plain).forEach((root, i) => {
      expect(sortedReal(other)[i]).toBeCloseTo(root, 12);
    });
  });

  it("have left vectors orthogonal to the other right ones, and trace and determinant of the matrix", () => {
    const rows = [
      [0.3, -2, 1.5, 0],
      [1, -0.2, 0.4, 3],
      [-0.7, 0.9, -1.1, 0.2],
      [0.5, 0.1, -0.6, -2],
    ];
    const { real, inverse, vectors } = solved(rows);
    if (!inverse) throw new Error("no inverse");
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 4; j++) {
        let sum = 0;
        for (let k = 0; k < 4; k++) sum += (inverse[i * 4 + k] as number) * (vectors[k * 4 + j] as number);
        expect(sum).toBeCloseTo(i === j ? 1 : 0, 11);
      }
    }
    expect(real.reduce((sum, root) => sum + root, 0)).toBeCloseTo(0.3 - 0.2 - 1.1 - 2, 12);
  });

  it("of what is not a number are none, and a wrong length is a mistake", () => {
    expect(eigenSystem(Float64Array.of(1, Number.NaN, 0, 1), 2)).toBeUndefined();
    expect(eigenSystem(Float64Array.of(1, Number.POSITIVE_INFINITY, 0, 1), 2)).toBeUndefined();
    expect(() => eigenSystem(Float64Array.of(1, 2, 3), 2)).toThrow("4 entries");
  });
});
