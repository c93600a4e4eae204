import { piecewiseLinear } from "../../numerics/index.ts";

/** Torque that a load asks for over its rate; both those of the last shaft. SI. */
export type LoadCurve =
  | {
      /** Q = Q_ref (ω/ω_ref)^n: n = 2 for a propeller at one advance ratio. */
      readonly kind: "power-law";
      readonly rotationRate: number;
      readonly torque: number;
      readonly exponent: number;
    }
  | { readonly kind: "table"; readonly rotationRates: readonly number[]; readonly torques: readonly number[] };

/** Torque of the load at a rate that is not negative [N m]; a table is held at its ends. */
export function loadTorque(load: LoadCurve, rotationRate: number): number {
  if (load.kind === "table") return piecewiseLinear(load.rotationRates, load.torques, rotationRate);
  return load.torque * (rotationRate / load.rotationRate) ** load.exponent;
}
