import { solveLinearInPlace } from "../numerics/index.ts";
import type { LinearMotion, LinearState, StateKind } from "./linear-motion.ts";

/** The motion with some states held still: their rows and columns are left out. */
export function withHeld({ states, matrix }: LinearMotion, held: (state: LinearState) => boolean): LinearMotion {
  const kept = states.flatMap((state, i) => (held(state) ? [] : [i]));
  return {
    states: kept.map((i) => states[i] as LinearState),
    matrix: Float64Array.from(kept.flatMap((i) => kept.map((j) => matrix[i * states.length + j] as number))),
  };
}

/**
 * The motion with some states that follow at once: their rates are zero. Undefined when they would not settle on one value.
 *
 * @derivation A₁₁ − A₁₂ A₂₂⁻¹ A₂₁
 */
export function withFollowing({ states, matrix }: LinearMotion, follows: (state: LinearState) => boolean): LinearMotion | undefined {
  const n = states.length;
  const fast = states.flatMap((state, i) => (follows(state) ? [i] : []));
  const kept = states.flatMap((state, i) => (follows(state) ? [] : [i]));
  const block = Float64Array.from(fast.flatMap((i) => fast.map((j) => matrix[i * n + j] as number)));
  const settled = kept.map((j) => {
    const column = Float64Array.from(fast, (i) => matrix[i * n + j] as number);
    return solveLinearInPlace(Float64Array.from(block), column, fast.length) ? column : undefined;
  });
  if (settled.some((column) => column === undefined)) return undefined;
  const reduced = kept.flatMap((i) =>
    kept.map((j, at) =>
      fast.reduce((sum, k, m) => sum - (matrix[i * n + k] as number) * (settled[at]?.[m] ?? 0), matrix[i * n + j] as number),
    ),
  );
  return { states: kept.map((i) => states[i] as LinearState), matrix: Float64Array.from(reduced) };
}

const lateral: readonly StateKind[] = ["sideslip", "roll-rate", "yaw-rate", "roll"];

/** Sizes at which states of a kind count alike [SI]. */
const sizes: Readonly<Record<StateKind, number>> = {
  speed: 1,
  heave: 1,
  sideslip: 1,
  "pitch-rate": 0.1,
  "roll-rate": 0.1,
  "yaw-rate": 0.1,
  pitch: 0.1,
  roll: 0.1,
  "rotor-speed": 1,
  inflow: 0.3,
};

/** A motion in the plane of symmetry and one out of it, and how much they feel of one another. */
export interface SplitMotion {
  readonly longitudinal: LinearMotion;
  readonly lateral: LinearMotion;
  /** Largest coupling over the largest entry of the matrix, states measured at like sizes [1]. */
  readonly coupling: number;
}

/** Takes a motion apart; rotors go with the plane of symmetry. It is a fair picture only where `coupling` is small. */
export function splitMotion(motion: LinearMotion): SplitMotion {
  const { states, matrix } = motion;
  const across = (state: LinearState) => lateral.includes(state.kind);
  let most = 0;
  let coupling = 0;
  states.forEach((row, i) => {
    states.forEach((column, j) => {
      const entry = Math.abs(((matrix[i * states.length + j] as number) * sizes[column.kind]) / sizes[row.kind]);
      most = Math.max(most, entry);
      if (across(row) !== across(column)) coupling = Math.max(coupling, entry);
    });
  });
  return {
    longitudinal: withHeld(motion, across),
    lateral: withHeld(motion, (state) => !across(state)),
    coupling: most > 0 ? coupling / most : 0,
  };
}
