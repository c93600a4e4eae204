/** What turns a rotor in motion, and how it holds the rotor's speed. */
export type RotorDrive =
  /** A torque that does not change [N m]; 0 is a rotor that turns free. */
  | { readonly kind: "torque"; readonly torque: number }
  /** The rotor's speed stays as it is, whatever torque that takes: a rotor without its own motion. */
  | { readonly kind: "held" }
  /**
   * A governor: torque from the error of the speed and its integral, critically damped with the time constant, between 0 (the clutch drives one
   * way only) and what the largest power gives.
   */
  | {
      readonly kind: "governed";
      /** [rad/s] */
      readonly rate: number;
      /** [s] */
      readonly timeConstant: number;
      /** At the shaft [W]. */
      readonly largestPower: number;
      /** Torque of the integral at the start [N m]. */
      readonly torque: number;
    };

/** Torque on the shaft [N m] and the rate at which the governor's integral changes [N m/s]. */
export interface DriveTorque {
  readonly torque: number;
  readonly integralRate: number;
}

/**
 * Torque of a drive at a rotor speed.
 *
 *     Q = Q_i + (2 J/τ) (Ω₀ − Ω)      Q_i' = (J/τ²) (Ω₀ − Ω)
 *
 * gives (Ω − Ω₀)'' + (2/τ)(Ω − Ω₀)' + (Ω − Ω₀)/τ² = 0 without aerodynamic damping. At a limit the integral waits.
 *
 * @param integral Q_i [N m]
 * @param polarInertia [kg m²]
 * @param rate of the rotor [rad/s]
 * @param asked what the air asks of the shaft [N m]
 * @derivation the differential equation above
 */
export function driveTorque(drive: RotorDrive, integral: number, polarInertia: number, rate: number, asked: number): DriveTorque {
  switch (drive.kind) {
    case "torque":
      return { torque: drive.torque, integralRate: 0 };
    case "held":
      return { torque: asked, integralRate: 0 };
    case "governed": {
      const error = drive.rate - rate;
      const wanted = integral + (2 * polarInertia * error) / drive.timeConstant;
      const most = drive.largestPower / Math.max(rate, 1e-3);
      const torque = Math.min(Math.max(wanted, 0), most);
      const integralRate = torque === wanted ? (polarInertia * error) / drive.timeConstant ** 2 : 0;
      return { torque, integralRate };
    }
  }
}
