import { type LinearMotion, type Mode, modesOf } from "../../motion/index.ts";
import type { ModeOutput, StabilityCondition } from "./output-schema.ts";

/** Modes of motions that do not couple, fastest first, as outputs; undefined when a motion is not finite. */
export function modeOutputs(motions: readonly LinearMotion[]): ModeOutput[] | undefined {
  const modes: ModeOutput[] = [];
  for (const motion of motions) {
    const found = modesOf(motion);
    if (!found) return undefined;
    modes.push(...found.map((mode) => modeOutputOf(mode, motion)));
  }
  return modes.sort((a, b) => b.naturalFrequency - a.naturalFrequency);
}

function modeOutputOf({ participation, ...mode }: Mode, { states }: LinearMotion): ModeOutput {
  const shares = (participation ?? []).map((share, i) => ({ state: states[i]?.id ?? "", share }));
  return { ...mode, participation: shares.sort((a, b) => b.share - a.share) };
}

export function systemOf({ states, matrix }: LinearMotion): StabilityCondition["systems"][number] {
  const n = states.length;
  return { states: states.map(({ id }) => id), matrix: states.map((_, i) => [...matrix.subarray(i * n, (i + 1) * n)]) };
}

/** Derivatives of force down and pitching moment, per mass and per inertia, that margins follow from. */
export interface PitchDerivatives {
  readonly zu: number;
  readonly zw: number;
  readonly mu: number;
  readonly mw: number;
}

/**
 * Neutral points behind the centre of gravity [m]: of incidence, and of speed. Moving the centre aft by x and trimming again adds −x Z_w (mass over I_y) to M_w.
 *
 *     incidence: M_w/Z_w I_y/m        speed: (M_w − M_u Z_w/Z_u)/Z_w I_y/m
 *
 * @derivation where M_w, and where Z_u M_w − M_u Z_w, vanish
 */
export function neutralPoints(
  d: PitchDerivatives,
  pitchRadiusSquared: number | undefined,
): { readonly incidence: number | null; readonly speed: number | null } {
  const aft = (moment: number): number | null => {
    const behind = (moment / d.zw) * (pitchRadiusSquared ?? Number.NaN);
    return Number.isFinite(behind) ? behind : null;
  };
  return { incidence: aft(d.mw), speed: aft(d.mw - (d.mu * d.zw) / d.zu) };
}

/** What a condition without any steady flight has. */
export const noMotion = {
  modes: [],
  frozenModes: [],
  stable: null,
  incidenceMoment: null,
  speedMoment: null,
  incidenceMargin: null,
  speedMargin: null,
  rearmostCentre: null,
  thrustLineHeight: null,
  rotorRate: null,
  wingLiftShare: null,
  coupling: null,
  spread: null,
  systems: [],
} satisfies Partial<StabilityCondition>;
