/** Coefficients of a section at Mach 0, with the lift split by what compressibility acts on. */
export interface SectionPoint {
  /** Lift of the attached flow, which Prandtl and Glauert's factor multiplies [1]. */
  readonly attachedLift: number;
  /** Lift of the separated flow, which it does not [1]. */
  readonly separatedLift: number;
  /** [1]. */
  readonly drag: number;
  /** The part of drag that attached flow makes, by friction: it acts along the whole velocity of a yawed blade [1]. */
  readonly viscousDrag: number;
  /** Pitching moment about the quarter chord, nose up [1]. */
  readonly moment: number;
}

/** A section at one Reynolds number. */
export interface SectionAtReynolds {
  readonly reynolds: number;
  /** Lowest positive angle of largest lift [rad]. */
  readonly stallAngle: number;
  readonly point: (alpha: number) => SectionPoint;
}

/** Steps of the circle in a table; a power of two, so that an index wraps with a bit mask. */
export const circleSteps = 4096;
/** Numbers per step in the table of forces: attached lift, separated lift, drag, viscous drag. */
export const stepWidth = 4;
/** Numbers per Reynolds number: the circle and its first step again, so that the next step always exists. */
export const circleWidth = (circleSteps + 1) * stepWidth;

/** One circle of a table, −π first. */
export interface TabulatedCircle {
  /** `stepWidth` numbers per step. */
  readonly forces: Float64Array;
  /** Moments in the same steps: few readers want them, so they lie apart. */
  readonly moments: Float64Array;
}

/**
 * A section at every step of the circle.
 *
 * @param point the section at an angle from −π to π [rad]
 * @derivation plain tabulation
 */
export function tabulatedCircle(point: (alpha: number) => SectionPoint): TabulatedCircle {
  const forces = new Float64Array(circleWidth);
  const moments = new Float64Array(circleSteps + 1);
  for (let step = 0; step <= circleSteps; step++) {
    const at = point(step === circleSteps ? -Math.PI : -Math.PI + (step * 2 * Math.PI) / circleSteps);
    forces[step * stepWidth] = at.attachedLift;
    forces[step * stepWidth + 1] = at.separatedLift;
    forces[step * stepWidth + 2] = at.drag;
    forces[step * stepWidth + 3] = at.viscousDrag;
    moments[step] = at.moment;
  }
  return { forces, moments };
}
