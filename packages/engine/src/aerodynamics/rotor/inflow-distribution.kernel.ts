/** Below this total inflow the skew angle is rounded off, so that it stays smooth where the flow through the disc turns [1]. */
const roundedInflow = 0.003;
/** Width over which Drees' gradient bends to its floor of zero [1]. */
const floorWidth = 0.02;

/**
 * Fore-and-aft gradient k_x of the induced velocity: λ_i (1 + k_x x cos ψ + k_y x sin ψ) [1].
 *
 *     Drees         k_x = (4/3)(1 − cos χ − 1.8 μ²)/sin χ, not below 0
 *     Pitt, Peters  k_x = (15 π/32) tan(χ/2)
 *     with χ = atan(μ/|λ|)
 *
 * @param kind 0 uniform, 1 Drees, 2 Pitt and Peters
 * @param mu μ [1]
 * @param lambda λ, total mean flow through the disc, down positive [1]
 * @source leishman-2006, table of first-harmonic inflow models, unchecked
 */
export function foreAftGradient(kind: number, mu: number, lambda: number): number {
  if (kind === 0) return 0;
  const through = Math.sqrt(lambda * lambda + roundedInflow * roundedInflow);
  const total = Math.sqrt(mu * mu + through * through);
  const halfSkew = mu / (total + through);
  if (kind === 2) return ((15 * Math.PI) / 32) * halfSkew;
  // (1 − cos χ)/sin χ = tan(χ/2) and μ²/sin χ = μ √(μ² + λ²): no division by zero in hover.
  const gradient = (4 / 3) * (halfSkew - 1.8 * mu * total);
  if (gradient <= 0) return 0;
  return gradient < floorWidth ? (gradient * gradient * (2 * floorWidth - gradient)) / (floorWidth * floorWidth) : gradient;
}

/** Lateral gradient k_y: −2 μ for Drees, else 0 [1]. @source leishman-2006, table of first-harmonic inflow models, unchecked */
export function lateralGradient(kind: number, mu: number): number {
  return kind === 1 ? -2 * mu : 0;
}
