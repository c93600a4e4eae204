import { border } from "../../numerics/index.ts";
import { type FiniteWing, wingCoefficients } from "./finite-wing.ts";
import type { WingPoint } from "./wing-point.ts";

/** A wing by a parabolic polar joined to a flat plate, with the angle and the moment that a `FiniteWing` lacks. */
export interface PolarWing {
  readonly wing: FiniteWing;
  /** [rad] */
  readonly zeroLiftAngle: number;
  /** About the quarter chord, at every angle up to stall [1]. */
  readonly moment: number;
}

/** A wing with this largest lift coefficient: the joint to the flat plate is set where the top of the curve reaches it. */
export function wingWithLargestLift(wing: Omit<FiniteWing, "stallAngle">, largestLift: number): FiniteWing {
  const top = largestLift / wing.liftSlope;
  const stallAngle = border((angle) => largestLiftOf({ ...wing, stallAngle: angle }).lift < largestLift, top / 2, 4 * top + 0.5, 1e-10);
  return { ...wing, stallAngle };
}

/** Top of the lift curve before stall. */
export function largestLiftOf(wing: FiniteWing): { readonly lift: number; readonly angle: number } {
  const step = 0.001;
  let best = { lift: 0, angle: 0 };
  for (let angle = step; angle < wing.stallAngle + 0.3; angle += step) {
    const { lift } = wingCoefficients(wing, angle);
    if (lift > best.lift) best = { lift, angle };
    else if (lift < 0.97 * best.lift) break;
  }
  return best;
}

/** The wing at an angle to the stream [rad]; what is not induced drag is profile drag. */
export function polarWingPoint({ wing, zeroLiftAngle, moment }: PolarWing, angle: number): WingPoint {
  const above = angle - zeroLiftAngle;
  const turned = Math.atan2(Math.sin(above), Math.cos(above));
  const { lift, drag } = wingCoefficients(wing, turned);
  const attached = 1 / (1 + Math.exp(wing.stallSharpness * (Math.abs(turned) - wing.stallAngle)));
  const attachedLift = wing.liftSlope * turned;
  const aspect = (wing.span * wing.span) / wing.area;
  const induced = (attached * attachedLift * attachedLift) / (Math.PI * aspect * wing.spanEfficiency);
  return { lift, induced, profile: drag - induced, moment: moment * attached, rolling: 0, yawing: 0, way: "polar", stations: [] };
}

/** The same on the parabola alone, as if it never stalled. */
export function attachedPolarPoint({ wing, zeroLiftAngle, moment }: PolarWing, angle: number): WingPoint {
  const lift = wing.liftSlope * (angle - zeroLiftAngle);
  const aspect = (wing.span * wing.span) / wing.area;
  const induced = (lift * lift) / (Math.PI * aspect * wing.spanEfficiency);
  return { lift, induced, profile: wing.cd0, moment, rolling: 0, yawing: 0, way: "polar", stations: [] };
}
