import { solveLinearInPlace } from "../../numerics/index.ts";
import type { LiftingLine } from "./lifting-line.ts";
import { StripReader, type StripStream } from "./strip-reader.ts";
import { sectionAngle, type WingStrip } from "./wing-strip.ts";

/** Circulation over span and speed at each station, with the downwash that it makes. */
export interface Circulation {
  readonly circulation: Float64Array;
  /** Downwash angle at each station [rad]. */
  readonly downwash: Float64Array;
}

export interface WingCondition extends StripStream {
  /** Angle of the root chord to the stream [rad]. */
  readonly angle: number;
}

const mostIterations = 15;
/** Largest misfit of circulation over span and speed; a lift coefficient of about 1e-8. */
const tolerance = 1e-9;
/** Half the step for telling stall [rad]: wide, so that no small bend of a measured curve is taken for it. */
const wideStep = 0.02;

/**
 * (1 + s B)⁻¹ for straight lift curves, row by row: turns misfits into steps, and angles times s into circulation.
 *
 * The matrix has a large positive diagonal and nothing else that is positive, so no pivoting is needed.
 */
export function attachedInverse(line: LiftingLine): Float64Array {
  const { count, influence } = line;
  const inverse = new Float64Array(count * count);
  const matrix = influence.map((value, at) => attachedSlope(line, Math.floor(at / count)) * value);
  for (let v = 0; v < count; v++) {
    matrix[v * count + v] = (matrix[v * count + v] as number) + 1;
    inverse[v * count + v] = 1;
  }
  for (let k = 0; k < count; k++) {
    const pivot = 1 / (matrix[k * count + k] as number);
    for (let n = 0; n < count; n++) {
      matrix[k * count + n] = (matrix[k * count + n] as number) * pivot;
      inverse[k * count + n] = (inverse[k * count + n] as number) * pivot;
    }
    for (let v = 0; v < count; v++) {
      const factor = matrix[v * count + k] as number;
      if (v === k || factor === 0) continue;
      for (let n = 0; n < count; n++) {
        matrix[v * count + n] = (matrix[v * count + n] as number) - factor * (matrix[k * count + n] as number);
        inverse[v * count + n] = (inverse[v * count + n] as number) - factor * (inverse[k * count + n] as number);
      }
    }
  }
  return inverse;
}

/** Change of a strip's circulation with its angle where its lift curve is straight. */
function attachedSlope({ chord, section, planform, strips }: LiftingLine, v: number): number {
  return ((chord[v] as number) / 2) * section.liftSlope * Math.cos(planform.sweep) * (strips[v] as WingStrip).shortWing;
}

/** Circulation for straight lift curves, at angles above no lift [rad]: the start of the search, and the shape of downwash beyond stall. */
export function attachedCirculation(line: LiftingLine, inverse: Float64Array, angles: Float64Array): Circulation {
  const circulation = times(
    inverse,
    angles.map((angle, v) => attachedSlope(line, v) * angle),
  );
  return { circulation, downwash: times(line.influence, circulation) };
}

function times(matrix: Float64Array, vector: Float64Array): Float64Array {
  const count = vector.length;
  const product = new Float64Array(count);
  for (let v = 0; v < count; v++) {
    let sum = 0;
    for (let n = 0; n < count; n++) sum += (matrix[v * count + n] as number) * (vector[n] as number);
    product[v] = sum;
  }
  return product;
}

/**
 * Circulation for which every strip's lift at its own angle, less the downwash of all circulation, is the lift of its
 * circulation: steps with the slopes of attached flow while they shrink the misfit well, then Newton's, halved where they
 * lead away. Undefined where that does not close, or where a strip has stalled: the equations then have several answers or
 * none that means anything.
 *
 * @source multhopp-1938, unchecked
 */
export function solvedCirculation(
  line: LiftingLine,
  at: WingCondition,
  start: Float64Array,
  inverse: Float64Array,
): Circulation | undefined {
  const reader = new StripReader(line, at);
  const misfitOf = (circulation: Float64Array): Misfits => misfitsOf(line, reader, at.angle, circulation);
  let here = misfitOf(start);
  for (let count = 0; count < mostIterations && here.largest > tolerance; count++) {
    const step = times(inverse, here.misfits);
    const next = misfitOf(here.circulation.map((value, v) => value - (step[v] as number)));
    if (next.largest > wellShrunk * here.largest) break;
    here = next;
  }
  for (let count = 0; count < mostIterations && here.largest > tolerance; count++) {
    const next = newtonPoint(line, here, misfitOf);
    if (!next) return undefined;
    here = next;
  }
  if (here.largest > tolerance || stalled(line, reader, at.angle, here.downwash)) return undefined;
  return { circulation: here.circulation, downwash: here.downwash };
}

/** Misfit left by a step over that before it, above which Newton's own slopes are worth their price. */
const wellShrunk = 0.4;

/** The misfits after one step of Newton's, or undefined where there is none. */
function newtonPoint(line: LiftingLine, here: Misfits, misfitOf: (circulation: Float64Array) => Misfits): Misfits | undefined {
  const step = newtonStep(line, here);
  if (!step) return undefined;
  let next = here;
  for (let length = 1; length > 1 / 32; length /= 2) {
    next = misfitOf(here.circulation.map((value, v) => value + length * (step[v] as number)));
    if (next.largest < (1 - 0.1 * length) * here.largest) break;
  }
  return next;
}

interface Misfits {
  readonly circulation: Float64Array;
  readonly largest: number;
  readonly misfits: Float64Array;
  /** ∂γ of the strip by its angle. */
  readonly slopes: Float64Array;
  readonly downwash: Float64Array;
}

function misfitsOf(line: LiftingLine, reader: StripReader, rootAngle: number, circulation: Float64Array): Misfits {
  const downwash = times(line.influence, circulation);
  const [misfits, slopes] = [new Float64Array(line.count), new Float64Array(line.count)];
  let largest = 0;
  for (let v = 0; v < line.count; v++) {
    const angle = rootAngle + (line.twist[v] as number) - (downwash[v] as number);
    const half = (line.chord[v] as number) / 2;
    const misfit = (circulation[v] as number) - half * reader.lift(v, angle);
    misfits[v] = misfit;
    slopes[v] = half * reader.slope(v, angle);
    largest = Math.max(largest, Math.abs(misfit));
  }
  return { circulation, largest, misfits, slopes, downwash };
}

function newtonStep({ count, influence }: LiftingLine, { misfits, slopes }: Misfits): Float64Array | undefined {
  const matrix = new Float64Array(count * count);
  for (let v = 0; v < count; v++) {
    const slope = slopes[v] as number;
    for (let n = 0; n < count; n++) matrix[v * count + n] = slope * (influence[v * count + n] as number) + (n === v ? 1 : 0);
  }
  const step = misfits.map((misfit) => -misfit);
  return solveLinearInPlace(matrix, step, count) ? step : undefined;
}

/** How far past its own stall a strip is certainly not attached [rad]. */
const pastStall = 0.05;

function stalled(line: LiftingLine, reader: StripReader, rootAngle: number, downwash: Float64Array): boolean {
  const { section, strips, twist } = line;
  const widest = section.stallAngle > 0 ? section.stallAngle + pastStall : Number.POSITIVE_INFINITY;
  return downwash.some((wash, v) => {
    const angle = rootAngle + (twist[v] as number) - wash;
    if (Math.abs(sectionAngle(strips[v] as WingStrip, angle)) > widest) return true;
    return reader.lift(v, angle + wideStep) < reader.lift(v, angle - wideStep);
  });
}
