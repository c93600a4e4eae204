import { flowThroughDisc, type InducedInflowCondition } from "./induced-inflow.ts";

/** Height of the disc over rotor radius below which the image of one source says nothing any more [1]. */
const lowestHeight = 0.5;

export type GroundEffect =
  | {
      readonly kind: "in-range";
      /** Thrust near the ground over thrust far from it at the same induced power [1]. */
      readonly thrustRatio: number;
      /** Induced velocity near the ground over that far from it at the same thrust [1]. */
      readonly inducedRatio: number;
    }
  /** The formula ends above this height of the disc over rotor radius. */
  | { readonly kind: "too-low"; readonly lowestHeight: number };

/**
 * What the ground does to a rotor above it.
 *
 *     T/T_∞ = 1/(1 − (R/4z)²/(1 + (V/v_i)²))      at equal power
 *     v_i/v_i,∞ = (T/T_∞)^(−3/2)                  at equal thrust
 *
 * @param heightOverRadius z/R, of the disc above even ground [1]
 * @param forwardOverInduced V/v_i, speed along the ground over the induced velocity far from it; 0 in hover [1]
 * @source cheeseman-bennett-1955, from memory
 * @derivation the exponent: induced power goes with T^1.5 in hover
 */
export function groundEffect(heightOverRadius: number, forwardOverInduced: number): GroundEffect {
  if (!(heightOverRadius >= lowestHeight)) return { kind: "too-low", lowestHeight };
  const image = 1 / (4 * heightOverRadius);
  const thrustRatio = 1 / (1 - (image * image) / (1 + forwardOverInduced * forwardOverInduced));
  return { kind: "in-range", thrustRatio, inducedRatio: thrustRatio ** -1.5 };
}

/**
 * The induced power factor κ with which momentum theory gives `inducedRatio` times the induced velocity at the same thrust.
 *
 * @param condition of the rotor far from the ground, with its κ
 * @param lambdaI its λ_i, not 0 [1]
 * @derivation λ_i Λ(λ_i) = κ C_T/2 written twice
 */
export function factorNearGround(condition: InducedInflowCondition, lambdaI: number, inducedRatio: number): number {
  const near = inducedRatio * lambdaI;
  const flowNear = flowThroughDisc(condition, near);
  return (condition.kappa * near * flowNear) / (lambdaI * flowThroughDisc(condition, lambdaI));
}
