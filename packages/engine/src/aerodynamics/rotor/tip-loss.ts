import type { RotorWorkspace } from "./rotor-workspace.ts";

/** Prandtl's exponent above which his function is 1 to all digits that count [1]. */
const noLoss = 30;

/**
 * Prandtl's function of a ring: the mean flow of the ring over the flow at the blades [1].
 *
 *     F = (2/π) acos(exp(−f))      f_tip = (N/2)(1 − x)/(x |sin φ|)      f_root = (N/2)(x − x₀)/(x₀ |sin φ|)
 *
 * 1 for a rotor without it. Prandtl's sheets move on with the flow through the disc; where that stands still, in descent and
 * autorotation, they are taken to move on with no less than the induced velocity: else tip loss would vanish there.
 *
 * @param x radius of the ring over R [1]
 * @param along u_T, mean over the turn; @param through u_P, mean; @param induced λ_i; all over the same speed [1]
 * @source leishman-2006, tip loss, unchecked
 * @derivation the floor in descent
 */
export function prandtlFactor(ws: RotorWorkspace, x: number, along: number, through: number, induced: number): number {
  const { model } = ws;
  if (!ws.prandtl) return 1;
  const moving = Math.sqrt(through * through + floorShare(through, induced) * induced * induced);
  const sine = moving / Math.sqrt(along * along + moving * moving);
  const tip = loss(((model.bladeCount / 2) * (1 - x)) / (x * sine));
  const { rootCutout } = model;
  if (model.rootLoss !== true || rootCutout <= 0) return tip;
  return tip * loss(((model.bladeCount / 2) * (x - rootCutout)) / (rootCutout * sine));
}

function loss(exponent: number): number {
  return exponent < noLoss ? (2 / Math.PI) * Math.acos(Math.exp(-exponent)) : 1;
}

/** 0 in hover and climb, 1 where the flow through the disc stands still or runs against the induced velocity. */
function floorShare(through: number, induced: number): number {
  if (through * induced <= 0) return 1;
  const t = 1 - through / induced;
  return t > 0 ? t * t * (3 - 2 * t) : 0;
}
