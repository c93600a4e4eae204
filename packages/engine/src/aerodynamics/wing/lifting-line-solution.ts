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

/** Solves (1 + s B) γ = s α for straight lift curves: the start of the search, and the shape of downwash beyond stall. */
export function attachedCirculation(line: LiftingLine, angles: Float64Array): Circulation {
  const { count, influence, chord, section, planform, strips } = line;
  const matrix = new Float64Array(count * count);
  const right = new Float64Array(count);
  for (let v = 0; v < count; v++) {
    const slope = ((chord[v] as number) / 2) * section.liftSlope * Math.cos(planform.sweep) * (strips[v] as WingStrip).shortWing;
    for (let n = 0; n < count; n++) matrix[v * count + n] = slope * (influence[v * count + n] as number) + (n === v ? 1 : 0);
    right[v] = slope * (angles[v] as number);
  }
  solveLinearInPlace(matrix, right, count);
  return { circulation: right, downwash: downwashOf(line, right) };
}

export function downwashOf({ count, influence }: LiftingLine, circulation: Float64Array): Float64Array {
  return circulation.map((_, v) => {
    let wash = 0;
    for (let n = 0; n < count; n++) wash += (influence[v * count + n] as number) * (circulation[n] as number);
    return wash;
  });
}

/**
 * Circulation for which every strip's lift at its own angle, less the downwash of all circulation, is the lift of its
 * circulation: Newton's steps, halved where they lead away. Undefined where that does not close, or where a strip has
 * stalled: the equations then have several answers or none that means anything.
 *
 * @source multhopp-1938, unchecked
 */
export function solvedCirculation(line: LiftingLine, at: WingCondition, start: Float64Array): Circulation | undefined {
  const reader = new StripReader(line, at);
  const circulation = Float64Array.from(start);
  let here = misfitsOf(line, reader, at.angle, circulation);
  for (let count = 0; count < mostIterations && here.largest > tolerance; count++) {
    const step = newtonStep(line, here);
    if (!step) return undefined;
    let [tried, next] = [circulation, here];
    for (let length = 1; length > 1 / 32; length /= 2) {
      tried = circulation.map((value, v) => value + length * (step[v] as number));
      next = misfitsOf(line, reader, at.angle, tried);
      if (next.largest < (1 - 0.1 * length) * here.largest) break;
    }
    circulation.set(tried);
    here = next;
  }
  if (here.largest > tolerance || stalled(line, reader, at.angle, here.downwash)) return undefined;
  return { circulation, downwash: here.downwash };
}

interface Misfits {
  readonly largest: number;
  readonly misfits: Float64Array;
  /** ∂γ of the strip by its angle. */
  readonly slopes: Float64Array;
  readonly downwash: Float64Array;
}

function misfitsOf(line: LiftingLine, reader: StripReader, rootAngle: number, circulation: Float64Array): Misfits {
  const downwash = downwashOf(line, circulation);
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
  return { largest, misfits, slopes, downwash };
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
