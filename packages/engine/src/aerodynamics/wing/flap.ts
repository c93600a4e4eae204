import { piecewiseLinear } from "../../numerics/index.ts";

/** A plain trailing-edge flap on a stretch of the wing. */
export interface WingFlap {
  /** Shares of the half span between which it lies. */
  readonly from: number;
  readonly to: number;
  /** Its chord over that of the wing [1]. */
  readonly chordFraction: number;
  /** Trailing edge down positive [rad]. */
  readonly deflection: number;
  /** `opposite`: deflected as given on the right and the other way on the left, as ailerons are. */
  readonly side: "both" | "left" | "right" | "opposite";
}

/** What a deflected flap does to a section. */
export interface FlapEffect {
  /** Angle of attack that it is worth [rad]. */
  readonly angle: number;
  /** Added to the moment about the quarter chord, nose up positive [1]. */
  readonly moment: number;
  /** Added to the drag coefficient [1]. */
  readonly drag: number;
}

export const noFlap: FlapEffect = { angle: 0, moment: 0, drag: 0 };

const degree = Math.PI / 180;
/** Share of its theoretical effect that a plain flap has, over deflection: gap and separation. From memory. */
const deflections = [0, 10, 20, 30, 40, 60].map((angle) => angle * degree);
const shares = [0.85, 0.85, 0.75, 0.6, 0.5, 0.4];

/**
 * A plain flap by thin-section theory, less what gap and separation take.
 *
 *     τ = 1 − (θ − sin θ)/π,  Δc_m = −½ sin θ (1 − cos θ) δ     cos θ = 2E − 1
 *
 * and Δc_d = 1.7 E^1.38 sin² δ.
 *
 * @source glauert-1926-elements, ch. 7, unchecked; hoak-finck-1978, sect. 6.1.1, losses of plain flaps from memory
 */
export function flapEffect(chordFraction: number, deflection: number): FlapEffect {
  const theta = Math.acos(2 * chordFraction - 1);
  const worth = deflection * piecewiseLinear(deflections, shares, Math.abs(deflection));
  return {
    angle: worth * (1 - (theta - Math.sin(theta)) / Math.PI),
    moment: -0.5 * Math.sin(theta) * (1 - Math.cos(theta)) * worth,
    drag: 1.7 * chordFraction ** 1.38 * Math.sin(deflection) ** 2,
  };
}

/** Deflection of a flap at a place of the span, 0 off it [rad]; the share of a stretch that it covers is for the caller. */
export function deflectionOn(flap: WingFlap, right: boolean): number {
  if (flap.side === "both") return flap.deflection;
  if (flap.side === "opposite") return right ? flap.deflection : -flap.deflection;
  return (flap.side === "right") === right ? flap.deflection : 0;
}
