import naca0015 from "./data/naca-0015.json" with { type: "json" };
import { monotoneCurve } from "./monotone-curve.ts";

const degree = Math.PI / 180;
const { angles: measuredAngles, lift: measuredLift, drag: measuredDrag } = naca0015.postStall;
/** Below the first measured angle: lift as sin 2α and drag as sin² α, joined to the first values. */
const innerAngles = [0, 5, 10, 15, 20, 25];
const first = (measuredAngles[0] ?? 30) * degree;
const liftScale = (measuredLift[0] ?? 0) / Math.sin(2 * first);
const dragScale = (measuredDrag[0] ?? 0) / Math.sin(first) ** 2;
const angles = [...innerAngles, ...measuredAngles].map((angle) => angle * degree);
const liftCurve = monotoneCurve(
  angles,
  [...innerAngles.map((angle) => liftScale * Math.sin(2 * angle * degree)), ...measuredLift],
  [2 * liftScale, 7.5],
);
const dragCurve = monotoneCurve(
  angles,
  [...innerAngles.map((angle) => dragScale * Math.sin(angle * degree) ** 2), ...measuredDrag.map((drag) => drag)],
  [0, 0],
);

/** Coefficients of a section with separated flow [1]. */
export interface SeparatedFlow {
  readonly lift: number;
  readonly drag: number;
  readonly moment: number;
}

/**
 * What any section does with separated flow, over the full circle: measured from 30 degrees on, a plate below. Backwards
 * (beyond 150 degrees) it includes the attached flow over the trailing edge as measured.
 *
 * @param alpha from −π to π [rad]
 * @source sheldahl-klimas-1981, section tables after stall
 */
export function separatedFlow(alpha: number): SeparatedFlow {
  const size = Math.abs(alpha);
  const lift = Math.sign(alpha) * liftCurve(size);
  const drag = dragCurve(size);
  return { lift, drag, moment: plateMoment(alpha, lift, drag) };
}

/**
 * Moment about the quarter chord, nose up, of a plate whose centre of pressure moves evenly from a quarter of the chord to three
 * quarters as it turns about [1]: at half the chord across the stream.
 *
 * @derivation c_m = −c_n (x_cp − 1/4), x_cp = 1/4 + |α|/(2π); exact along, across and against the stream, between them from memory
 */
export function plateMoment(alpha: number, lift: number, drag: number): number {
  const normal = lift * Math.cos(alpha) + drag * Math.sin(alpha);
  return (-normal * Math.abs(alpha)) / (2 * Math.PI);
}
