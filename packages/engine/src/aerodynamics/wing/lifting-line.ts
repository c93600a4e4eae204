import { type SectionLaw, sectionCharacteristics } from "../airfoil-section/index.ts";
import { deflectionOn, type FlapEffect, flapEffect, noFlap, type WingFlap } from "./flap.ts";
import { aspectRatio, chordAt, meanAerodynamicChord, meanChord, type WingPlanform } from "./wing-planform.ts";
import { shortWingShare, type WingStrip } from "./wing-strip.ts";

/** A wing cut into strips for the lifting line, from the right tip to the left. Flat arrays, one number per station. */
export interface LiftingLine {
  readonly planform: WingPlanform;
  readonly count: number;
  /** y over the half span, right positive. */
  readonly place: Float64Array;
  readonly sine: Float64Array;
  /** Chord over span. */
  readonly chord: Float64Array;
  /** Angle of the strip against the root [rad]. */
  readonly twist: Float64Array;
  /** Quarter chord behind that of the mean aerodynamic chord, over span. */
  readonly aft: Float64Array;
  /** Downwash angle at a station by circulation over span and speed at another, row by row. */
  readonly influence: Float64Array;
  readonly section: SectionLaw;
  readonly strips: readonly WingStrip[];
  /** Chord over mean chord, for Reynolds numbers. */
  readonly relativeChord: Float64Array;
}

export interface LiftingLineOptions {
  /** Stations from tip to tip, odd or even. */
  readonly count: number;
  /** Whether the stream bends along the chord of a short wing. */
  readonly shortWing: boolean;
  /** At which the angle without lift of the section is taken. */
  readonly reynolds: number;
  readonly mach: number;
}

/**
 * Stations at equal steps of θ, y = ½ b cos θ, with the downwash of a trigonometric interpolation of the circulation.
 *
 *     b_νν = (m + 1)/(4 sin θ_ν),   b_νn = −sin θ_n/(cos θ_n − cos θ_ν)² · (1 − (−1)^{ν−n})/(2 (m + 1))
 *
 * @source multhopp-1938, unchecked
 */
export function liftingLine(
  planform: WingPlanform,
  section: SectionLaw,
  flaps: readonly WingFlap[],
  options: LiftingLineOptions,
): LiftingLine {
  const { count } = options;
  const zeroLiftAngle = sectionCharacteristics(section, options).zeroLiftAngle ?? 0;
  const shortWing = options.shortWing ? shortWingShare(section.liftSlope * Math.cos(planform.sweep), aspectRatio(planform)) : 1;
  const angles = Float64Array.from({ length: count }, (_, i) => ((i + 1) * Math.PI) / (count + 1));
  const place = angles.map(Math.cos);
  const sine = angles.map(Math.sin);
  const { share } = meanAerodynamicChord(planform);
  return {
    planform,
    count,
    place,
    sine,
    chord: place.map((y) => chordAt(planform, Math.abs(y)) / planform.span),
    twist: place.map((y) => planform.twist * Math.abs(y)),
    aft: place.map((y) => (Math.tan(planform.sweep) * (Math.abs(y) - share)) / 2),
    influence: influences(place, sine),
    section,
    strips: Array.from(angles, (theta) => ({
      section,
      flap: flapAt(theta, Math.PI / (count + 1), flaps),
      sweep: planform.sweep,
      zeroLiftAngle,
      shortWing,
    })),
    relativeChord: place.map((y) => chordAt(planform, Math.abs(y)) / meanChord(planform)),
  };
}

function influences(place: Float64Array, sine: Float64Array): Float64Array {
  const count = place.length;
  const matrix = new Float64Array(count * count);
  for (let v = 0; v < count; v++) {
    for (let n = 0; n < count; n++) {
      if (n === v) matrix[v * count + n] = (count + 1) / (4 * (sine[v] as number));
      else if ((n - v) % 2 !== 0)
        matrix[v * count + n] = -(sine[n] as number) / ((count + 1) * ((place[n] as number) - (place[v] as number)) ** 2);
    }
  }
  return matrix;
}

/** Effect of all flaps on the stretch of θ around a station: each counts with the share of the stretch that it covers. */
function flapAt(theta: number, width: number, flaps: readonly WingFlap[]): FlapEffect {
  const [outer, inner] = [Math.cos(theta - width / 2), Math.cos(theta + width / 2)];
  let sum = noFlap;
  for (const flap of flaps) {
    for (const right of [true, false]) {
      const [low, high] = right ? [flap.from, flap.to] : [-flap.to, -flap.from];
      const covered = (Math.min(outer, high) - Math.max(inner, low)) / (outer - inner);
      const deflection = deflectionOn(flap, right);
      if (covered <= 0 || deflection === 0) continue;
      const effect = flapEffect(flap.chordFraction, deflection);
      sum = {
        angle: sum.angle + covered * effect.angle,
        moment: sum.moment + covered * effect.moment,
        drag: sum.drag + covered * effect.drag,
      };
    }
  }
  return sum;
}

/** Factor that turns the sum of circulations times sin θ into the lift coefficient. */
export function liftFactor({ planform, count }: LiftingLine): number {
  return (Math.PI * aspectRatio(planform)) / (count + 1);
}
