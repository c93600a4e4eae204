import type { FullPoint } from "../equilibrium/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import type { EnvelopePoint } from "./envelope-line.ts";
import { type EnvelopeTrimmer, levelAt, type Stop, stopOf, type Verdict } from "./envelope-trimmer.ts";

/** One end of the tip speeds that a flight may have. */
export interface RotorSpeedBorder extends Stop {
  /** [m/s] */
  readonly tipSpeed: number;
}

/** Tip speeds at which level flight is possible at one speed. */
export interface RotorSpeedLimits {
  readonly airspeed: number;
  readonly lowest: RotorSpeedBorder;
  readonly highest: RotorSpeedBorder;
}

const halvings = 6;
/** The first refusals are asked from every way of flying. */
const thoroughHalvings = 2;

/**
 * Lowest and highest tip speed of level flight at a speed at which it is known, for an aircraft of one rotor: towards slow rotors until
 * blade loading, flapping or the file's range stops it, towards fast ones until drive, tip Mach number or the file's range does.
 *
 * @param range the file's [m/s]
 * @derivation halving from the tip speed of least power
 */
export function rotorSpeedLimits(
  trimmer: EnvelopeTrimmer,
  mode: PoweredMode,
  { airspeed, verdict }: EnvelopePoint,
  range: { readonly minimum: number; readonly maximum: number },
): RotorSpeedLimits | undefined {
  if (verdict.kind !== "flies") return undefined;
  const best = verdict.trimmed.evaluation.rotorStates[0] as number;
  const at = (tipSpeed: number): FullPoint => ({ ...levelAt(mode, airspeed), tipSpeed });
  const end = (bound: number, name: string): RotorSpeedBorder => {
    let near: Verdict & { readonly kind: "flies" } = verdict;
    let flown = best;
    let refused = bound;
    let stop: Stop = { limit: name, family: "strength" };
    const attempt = (tipSpeed: number, isThorough: boolean): boolean => {
      const warm = trimmer.verdict(trimmer.warm(at(tipSpeed), near.trimmed.start));
      const found = warm.kind === "flies" || !isThorough ? warm : trimmer.verdict(trimmer.cold(at(tipSpeed)));
      if (found.kind === "flies") near = found;
      else stop = stopOf(found, near);
      return found.kind === "flies";
    };
    if (Math.abs(bound - best) < 1e-6 || attempt(bound, true)) return { tipSpeed: bound, limit: name, family: "strength" };
    for (let i = 0; i < halvings; i++) {
      const middle = (flown + refused) / 2;
      if (attempt(middle, i < thoroughHalvings)) flown = middle;
      else refused = middle;
    }
    return { tipSpeed: flown, ...stop };
  };
  return { airspeed, lowest: end(range.minimum, "lowest rotor speed"), highest: end(range.maximum, "highest rotor speed") };
}
