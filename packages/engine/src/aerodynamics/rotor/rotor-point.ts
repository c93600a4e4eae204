import type { Air } from "../../environment/atmosphere/index.ts";

/** A rotor at work: what the flow does to it and how its blades are set, flapping and inflow still unknown. */
export interface RotorPoint {
  /** V, free stream, 0 or more [m/s]. */
  readonly airspeed: number;
  /** Angle of the tip-path plane, or of the shaft, to the stream; positive tilted back: the stream comes up through it. */
  readonly angle:
    | { readonly kind: "disc"; readonly value: number }
    | {
        readonly kind: "shaft";
        readonly value: number;
        /** Cyclic pitch relative to the shaft-normal plane, sine part: tilts the plane of no feathering back [rad]. */
        readonly cyclicSine: number;
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

/**
 * Flow of a point once the sine part of the pitch relative to the tip-path plane is known.
 *
 * The disc lies behind the shaft-normal plane by a₁ = θ_1s,cyclic − θ_1s. The component of the stream across the disc that a lateral
 * tilt brings is of second order and left out.
 *
 * @param theta1s θ_1s relative to the tip-path plane [rad]
 * @derivation geometry in the plane of symmetry
 */
export function discFlow(point: RotorPoint, theta1s: number): DiscFlow {
  const { angle, airspeed, tipSpeed } = point;
  const discAngle = angle.kind === "disc" ? angle.value : angle.value + angle.cyclicSine - theta1s;
  return {
    discAngle,
    mu: (airspeed * Math.cos(discAngle)) / tipSpeed,
    lambdaC: (-airspeed * Math.sin(discAngle)) / tipSpeed,
  };
}
