import { eigenSystem } from "../numerics/index.ts";
import type { LinearMotion, Mode } from "./linear-motion.ts";
import { modeGroup, modeNames } from "./mode-names.ts";

/** Below this share of the largest eigenvalue a growth rate is rounding: the mode is neutral. */
const neutral = 1e-11;

/**
 * The modes of a linear motion, fastest first, each with its name. Undefined when the matrix is not finite.
 * Participation of state i in mode k is |l_ki v_ik| of left and right eigenvectors, scaled to the sum 1.
 *
 * @source perez-arriaga-1982, definition of participation factors, from memory
 */
export function modesOf({ states, matrix }: LinearMotion): readonly Mode[] | undefined {
  const n = states.length;
  const system = eigenSystem(matrix, n);
  if (!system) return undefined;
  const largest = Math.max(...system.real.map((real, k) => Math.hypot(real, system.imaginary[k] as number)));
  const found: Omit<Mode, "name" | "group">[] = [];
  for (let k = 0; k < n; k++) {
    const imaginary = system.imaginary[k] as number;
    if (imaginary < 0) continue;
    const real = system.real[k] as number;
    const growth = Math.abs(real) <= neutral * largest ? 0 : real;
    const naturalFrequency = Math.hypot(growth, imaginary);
    found.push({
      real: growth,
      imaginary,
      timeToHalf: growth < 0 ? Math.LN2 / -growth : null,
      timeToDouble: growth > 0 ? Math.LN2 / growth : null,
      period: imaginary > 0 ? (2 * Math.PI) / imaginary : null,
      damping: imaginary > 0 ? -growth / naturalFrequency : null,
      naturalFrequency,
      participation: participationOf(system.vectors, system.inverse, k, n, imaginary > 0),
    });
  }
  found.sort((a, b) => b.naturalFrequency - a.naturalFrequency || a.real - b.real);
  const names = modeNames(found, states);
  return found.map((mode, k) => ({ ...mode, name: names[k] as string, group: modeGroup(mode, states) }));
}

function participationOf(
  vectors: Float64Array,
  inverse: Float64Array | undefined,
  k: number,
  n: number,
  pair: boolean,
): readonly number[] | null {
  if (!inverse) return null;
  const raw = Array.from({ length: n }, (_, i) => {
    const right = pair
      ? Math.hypot(vectors[i * n + k] as number, vectors[i * n + k + 1] as number)
      : Math.abs(vectors[i * n + k] as number);
    const left = pair
      ? Math.hypot(inverse[k * n + i] as number, inverse[(k + 1) * n + i] as number)
      : Math.abs(inverse[k * n + i] as number);
    return right * left;
  });
  const sum = raw.reduce((total, share) => total + share, 0);
  return sum > 0 ? raw.map((share) => share / sum) : null;
}
