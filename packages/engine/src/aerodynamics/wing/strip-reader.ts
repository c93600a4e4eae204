import { circleSteps, circleWidth, rootReynoldsStep, rootReynoldsSteps, stepWidth } from "../airfoil-section/index.ts";
import type { LiftingLine } from "./lifting-line.ts";
import { attachment, flapLift, sectionAngle, type WingStrip } from "./wing-strip.ts";

/** Stream in which strips are read. */
export interface StripStream {
  /** On the mean chord [1]. */
  readonly reynolds: number;
  readonly mach: number;
}

const stepAngle = (2 * Math.PI) / circleSteps;
/** Steps over which slopes are taken: more than one, so that the corners of the table count little. */
const slopeSteps = 2;

/**
 * Lift of strips read straight from the tables of their sections, for a search that asks for nothing else many times: the same
 * values as `stripCoefficients`.
 */
export class StripReader {
  private readonly line: LiftingLine;
  private readonly section: LiftingLine["section"];
  /** First number of the lower circle of each strip, and the share of the next one. */
  private readonly first: Int32Array;
  private readonly share: Float64Array;
  private readonly added: Float64Array;
  private readonly compression: number;
  private readonly cosine: number;

  constructor(line: LiftingLine, stream: StripStream) {
    this.line = line;
    this.section = line.section;
    this.cosine = Math.cos(line.planform.sweep);
    const mach = stream.mach * this.cosine;
    this.compression = 1 / Math.sqrt(1 - Math.min(mach * mach, 0.81));
    this.added = Float64Array.from(line.strips, (strip) => flapLift(strip, mach));
    this.first = new Int32Array(line.count);
    this.share = new Float64Array(line.count);
    for (let v = 0; v < line.count; v++) {
      const { reynolds, reynoldsIndex } = this.section;
      if (reynolds.length < 2) continue;
      const position = Math.min(Math.sqrt(stream.reynolds * (line.relativeChord[v] as number)) / rootReynoldsStep, rootReynoldsSteps);
      const step = Math.floor(position);
      const below = reynoldsIndex[step] as number;
      const level = below + ((reynoldsIndex[step + 1] as number) - below) * (position - step);
      const lower = Math.min(Math.floor(level), reynolds.length - 2);
      this.first[v] = lower * circleWidth;
      this.share[v] = level - lower;
    }
  }

  /** Lift coefficient of a strip at an angle [rad]. */
  lift(v: number, angle: number): number {
    const strip = this.line.strips[v] as WingStrip;
    const turned = sectionAngle(strip, angle);
    const added = strip.flap.angle === 0 ? 0 : (this.added[v] as number) * attachment(turned);
    return (this.read(v, turned) + added) * this.cosine * this.cosine;
  }

  /** Slope of that by its angle [1/rad]; a flap's fading is left out. */
  slope(v: number, angle: number): number {
    const strip = this.line.strips[v] as WingStrip;
    const half = slopeSteps * stepAngle;
    const rise = this.read(v, sectionAngle(strip, angle + half)) - this.read(v, sectionAngle(strip, angle - half));
    return (rise / (2 * half)) * this.cosine * this.cosine;
  }

  private read(v: number, angle: number): number {
    const turn = (angle / (2 * Math.PI) + 0.5) % 1;
    const position = (turn < 0 ? turn + 1 : turn) * circleSteps;
    const step = Math.min(Math.floor(position), circleSteps - 1);
    const at = (this.first[v] as number) + step * stepWidth;
    const low = this.circle(at, position - step);
    const share = this.share[v] as number;
    return share === 0 ? low : low + (this.circle(at + circleWidth, position - step) - low) * share;
  }

  private circle(at: number, share: number): number {
    const { table } = this.section;
    const [attached, separated] = [table[at] as number, table[at + 1] as number];
    const nextAttached = table[at + stepWidth] as number;
    const nextSeparated = table[at + stepWidth + 1] as number;
    return (attached + (nextAttached - attached) * share) * this.compression + separated + (nextSeparated - separated) * share;
  }
}
