/**
 * Weights of the four nodes around a cell for a once continuously differentiable cubic through the middle two.
 *
 * @param t place in the cell, 0 to 1 [1]
 * @derivation cubic with the slopes of central differences
 */
export function cubicWeights(t: number): readonly [number, number, number, number] {
  const t2 = t * t;
  const t3 = t2 * t;
  return [(-t3 + 2 * t2 - t) / 2, (3 * t3 - 5 * t2 + 2) / 2, (-3 * t3 + 4 * t2 + t) / 2, (t3 - t2) / 2];
}
