/** Coefficients of a wing at one angle, on its area and mean aerodynamic chord; moments about the quarter chord of that. */
export interface WingPoint {
  readonly lift: number;
  readonly induced: number;
  readonly profile: number;
  /** Nose up positive. */
  readonly moment: number;
  /** Right wing down positive, on area and span. */
  readonly rolling: number;
  /** Nose right positive, on area and span. */
  readonly yawing: number;
  /** `strips`: some strip has stalled, and the downwash keeps the shape of attached flow. */
  readonly way: "polar" | "lifting-line" | "strips";
  readonly stations: readonly WingStation[];
}

export interface WingStation {
  /** y over the half span, right positive. */
  readonly place: number;
  readonly lift: number;
  /** Local chord times lift over mean chord. */
  readonly loading: number;
  /** Angle of attack that the section sees [rad]. */
  readonly effectiveAngle: number;
  readonly downwash: number;
}
