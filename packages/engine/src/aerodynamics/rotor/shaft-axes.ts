import { flapAngles } from "./articulation.ts";
import type { SolvedRotor } from "./inflow-and-flap.ts";

/** Cyclic pitch relative to the plane normal to the shaft: pitch = collective + cosine cos ψ + sine sin ψ [rad]. */
export interface CyclicPitch {
  readonly cosine: number;
  readonly sine: number;
}

/** A solved rotor seen from its shaft. Coefficients on ρ π R² (ΩR)². */
export interface ShaftCoefficients {
  /** Along the shaft, up. */
  readonly ct: number;
  /** Across it, aft. */
  readonly ch: number;
  /** Across it, towards the advancing side. */
  readonly cy: number;
  /** a₁: tip-path plane behind the plane normal to the shaft [rad]. */
  readonly flapLongitudinal: number;
  /** b₁: tip-path plane down on the advancing side [rad]. */
  readonly flapLateral: number;
}

/**
 * Forces turned from axes of the tip-path plane to axes of the shaft.
 *
 * with flapping from `flapAngles`. The disc is tilted back by a₁, then down on the advancing side by b₁.
 *
 * @param coupling tan δ₃ of the rotor's articulation [1]
 * @derivation rotation of axes
 */
export function shaftCoefficients(rotor: SolvedRotor, cyclic: CyclicPitch, coupling = 0): ShaftCoefficients {
  const { longitudinal: flapLongitudinal, lateral: flapLateral } = flapAngles(rotor, cyclic, coupling);
  const sineBack = Math.sin(flapLongitudinal);
  const cosineBack = Math.cos(flapLongitudinal);
  const sineSide = Math.sin(flapLateral);
  const cosineSide = Math.cos(flapLateral);
  return {
    ct: rotor.ct * cosineBack * cosineSide - rotor.ch * sineBack - rotor.cy * cosineBack * sineSide,
    ch: rotor.ct * sineBack * cosineSide + rotor.ch * cosineBack - rotor.cy * sineBack * sineSide,
    cy: rotor.ct * sineSide + rotor.cy * cosineSide,
    flapLongitudinal,
    flapLateral,
  };
}
