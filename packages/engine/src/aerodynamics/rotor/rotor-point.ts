import type { Air } from "../../environment/atmosphere/index.ts";

/** A rotor at work: what the flow does to it and how its blades are set, flapping and inflow still unknown. */
export interface RotorPoint {
  /** V, free stream, 0 or more [m/s]. */
  readonly airspeed: number;
  /** Angle of the tip-path plane, or of the shaft, to the stream; positive tilted back: the stream comes up through it. */
  readonly angle:
    | {
        readonly kind: "disc";
        readonly value: number;
        /** Cyclic pitch, of which the flapping relative to the shaft depends. @defaultValue 0 */
        readonly cyclicSine?: number;
        readonly cyclicCosine?: number;
      }
    | {
        readonly kind: "shaft";
        readonly value: number;
        /** Cyclic pitch relative to the shaft-normal plane, sine part: tilts the plane of no feathering back [rad]. */
        readonly cyclicSine: number;
        /** The cosine part; counts with pitch–flap coupling or blades that carry moments to the hub. @defaultValue 0 */
        readonly cyclicCosine?: number;
      };
  /** Ω R [m/s]. */
  readonly tipSpeed: number;
  /** Pitch at 0.75 R [rad]. */
  readonly collective: number;
  readonly air: Air;
}

/** Flow of a point in axes of the tip-path plane, over tip speed. */
export interface DiscFlow {
  /** Angle of the tip-path plane [rad]. */
  readonly discAngle: number;
  /** μ = V cos α/ΩR [1]. */
  readonly mu: number;
  /** λ_c = −V sin α/ΩR, down positive [1]. */
  readonly lambdaC: number;
}

/** Cyclic pitch of a point. @derivation not a formula */
export function cyclicOf(point: RotorPoint): { readonly cosine: number; readonly sine: number } {
  return { cosine: point.angle.cyclicCosine ?? 0, sine: point.angle.cyclicSine ?? 0 };
}

/**
 * Flow of a point once its longitudinal flapping is known.
 *
 * The disc lies behind the shaft-normal plane by a₁. The component of the stream across the disc that a lateral tilt brings is of
 * second order and left out.
 *
 * @param flapLongitudinal a₁ [rad]
 * @derivation geometry in the plane of symmetry
 */
export function discFlow(point: RotorPoint, flapLongitudinal: number): DiscFlow {
  const { angle, airspeed, tipSpeed } = point;
  const discAngle = angle.kind === "disc" ? angle.value : angle.value + flapLongitudinal;
  return {
    discAngle,
    mu: (airspeed * Math.cos(discAngle)) / tipSpeed,
    lambdaC: (-airspeed * Math.sin(discAngle)) / tipSpeed,
  };
}
