import type { RotorWorkspace } from "./rotor-workspace.ts";

/** Prandtl's exponent above which his function is 1 to all digits that count [1]. */
const noLoss = 30;

/**
 * Prandtl's function of a ring: the mean flow of the ring over the flow at the blades [1].
 *
 *     F = (2/π) acos(exp(−f))      f_tip = (N/2)(1 − x)/(x |sin φ|)      f_root = (N/2)(x − x₀)/(x₀ |sin φ|)
 *
 * 1 for a rotor without it.
 *
 * @param x radius of the ring over R [1]
 * @param along u_T, mean over the turn; @param through u_P, mean; over the same speed [1]
 * @source leishman-2006, tip loss, unchecked
 */
export function prandtlFactor(ws: RotorWorkspace, x: number, along: number, through: number): number {
  const { model } = ws;
  if (!ws.prandtl) return 1;
  const sine = Math.abs(through) / Math.sqrt(along * along + through * through);
  const tip = loss(((model.bladeCount / 2) * (1 - x)) / (x * sine));
  const { rootCutout } = model;
  if (model.rootLoss !== true || rootCutout <= 0) return tip;
  return tip * loss(((model.bladeCount / 2) * (x - rootCutout)) / (rootCutout * sine));
}

function loss(exponent: number): number {
  return exponent < noLoss ? (2 / Math.PI) * Math.acos(Math.exp(-exponent)) : 1;
}
