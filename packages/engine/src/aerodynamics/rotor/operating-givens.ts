import type { Air } from "../../environment/atmosphere/index.ts";
import type { SolvedRotor } from "./inflow-and-flap.ts";
import type { RotorPoint } from "./rotor-point.ts";
import type { CyclicPitch } from "./shaft-axes.ts";

/** The free stream, as airspeed V [m/s] or as advance ratio V cos(shaft angle)/(ΩR) [1]. */
export type Stream = { readonly kind: "airspeed"; readonly value: number } | { readonly kind: "advance-ratio"; readonly value: number };

/** What is held and what is sought; all in axes of the shaft. Thrust [N] and shaft torque [N m] are those of the whole rotor. */
export type OperatingGivens =
  | { readonly seek: "loads"; readonly stream: Stream; readonly shaftAngle: number; readonly tipSpeed: number; readonly collective: number }
  | {
      readonly seek: "collective";
      readonly stream: Stream;
      readonly shaftAngle: number;
      readonly tipSpeed: number;
      readonly thrust: number;
    }
  | {
      readonly seek: "shaft-angle";
      readonly stream: Stream;
      readonly tipSpeed: number;
      readonly collective: number;
      readonly torque: number;
    }
  | {
      readonly seek: "tip-speed";
      readonly airspeed: number;
      readonly shaftAngle: number;
      readonly collective: number;
      readonly held: { readonly kind: "torque" | "thrust"; readonly value: number };
    }
  | {
      readonly seek: "shaft-angle-and-collective";
      readonly stream: Stream;
      readonly tipSpeed: number;
      readonly thrust: number;
      readonly torque: number;
    }
  | {
      readonly seek: "shaft-angle-and-tip-speed";
      readonly airspeed: number;
      readonly collective: number;
      readonly thrust: number;
      readonly torque: number;
    };

/** A rotor found in equilibrium, with the point it was found at. */
export interface OperatingPoint {
  readonly kind: "solved";
  readonly point: RotorPoint;
  readonly shaftAngle: number;
  readonly rotor: SolvedRotor;
}

/** No such state, with the numbers that say why. */
export type NoOperatingPoint =
  | { readonly kind: "not-converged"; readonly residual: number; readonly iterations: number }
  | { readonly kind: "thrust-unavailable"; readonly largestThrust: number }
  | { readonly kind: "thrust-below-range"; readonly smallestThrust: number }
  | { readonly kind: "no-equilibrium"; readonly seek: OperatingGivens["seek"]; readonly reason: string };

/** What stays the same while an operating point is sought. */
export interface OperatingSurroundings {
  readonly air: Air;
  readonly cyclic: CyclicPitch;
}
