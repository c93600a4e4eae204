/** A wing as a lift-curve slope with a blend to the flat plate beyond stall. SI, per radian. */
export interface FiniteWing {
  readonly area: number;
  readonly span: number;
  readonly liftSlope: number;
  readonly cd0: number;
  readonly spanEfficiency: number;
  readonly stallAngle: number;
  readonly stallSharpness: number;
  readonly flatPlateCoefficient: number;
}

export interface WingCoefficients {
  readonly lift: number;
  readonly drag: number;
}

/**
 * Lift and drag coefficients at the angle of attack `alpha` [rad] to the local flow.
 *
 * Attached: C_L = a α, C_D = C_D0 + C_L²/(π A e). Separated: normal force C sin α, so C_L = C sin α cos α,
 * C_D = C_D0 + C sin² α. The two are joined by a logistic function of |α| about the stall angle.
 *
 * @derivation parabolic polar of a finite wing joined to the normal force of a flat plate; the joint is our own choice.
 */
export function wingCoefficients(wing: FiniteWing, alpha: number): WingCoefficients {
  const aspectRatio = (wing.span * wing.span) / wing.area;
  const attached = 1 / (1 + Math.exp(wing.stallSharpness * (Math.abs(alpha) - wing.stallAngle)));
  const attachedLift = wing.liftSlope * alpha;
  const sine = Math.sin(alpha);
  const plateLift = wing.flatPlateCoefficient * sine * Math.cos(alpha);
  const plateDrag = wing.flatPlateCoefficient * sine * sine;
  const inducedDrag = (attachedLift * attachedLift) / (Math.PI * aspectRatio * wing.spanEfficiency);
  return {
    lift: attached * attachedLift + (1 - attached) * plateLift,
    drag: wing.cd0 + attached * inducedDrag + (1 - attached) * plateDrag,
  };
}
