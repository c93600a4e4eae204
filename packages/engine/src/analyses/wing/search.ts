import { lineMinimum } from "../../numerics/index.ts";
import type { BenchPoint, WingBench } from "./bench.ts";

/** Points of a wing between no lift and stall, and the best of them; undefined where there is no such point. */
export interface WingSearch {
  readonly zeroLift: BenchPoint | undefined;
  /** Slope of lift there [1/rad]. */
  readonly liftSlope: number | undefined;
  /** By rising angle, from no lift to the largest lift. */
  readonly march: readonly BenchPoint[];
  readonly stall: BenchPoint | undefined;
  /** Whether lift falls behind `stall`, or only a limit of the file stops it. */
  readonly stalls: boolean;
  readonly bestGlide: BenchPoint | undefined;
  /** Of the largest C_L^1.5/C_D. */
  readonly leastPower: BenchPoint | undefined;
  /** Of the least rate of sink: the same but for the slope of the path. */
  readonly leastSink: BenchPoint | undefined;
}

const degree = Math.PI / 180;
const step = 0.5 * degree;
const widest = { zeroLift: 30 * degree, stall: 45 * degree };
/** Lift has fallen by this much, or this share of the largest, where it has stalled. */
const fallen = { by: 0.01, share: 0.01 };
/** Tolerance of the best angles [rad]: on a parabola they cost nothing. */
const fine = { solved: 1e-4, parabola: 1e-9 };
/** A drag coefficient below this is none. */
const countedDrag = 1e-9;

export function wingSearch(bench: WingBench): WingSearch {
  const zero = zeroLiftAngle(bench);
  if (zero === undefined)
    return {
      zeroLift: undefined,
      liftSlope: undefined,
      march: [],
      stall: undefined,
      stalls: false,
      bestGlide: undefined,
      leastPower: undefined,
      leastSink: undefined,
    };
  const zeroLift = bench.at(zero);
  const liftSlope = (bench.at(zero + step).lift - bench.at(zero - step).lift) / (2 * step);
  const found = marched(bench, zeroLift);
  const best = bests(bench, found.march);
  return { zeroLift, liftSlope, ...found, ...best, march: parabola(bench, best.leastSink, found.stall) ?? found.march };
}

/** For a parabolic polar without a largest lift of its own: a march on the parabola, past the least sink. */
function parabola({ attachedAt, reading: { attached } }: WingBench, leastSink: BenchPoint | undefined, stall: BenchPoint | undefined) {
  if (!attached || !attachedAt || !leastSink) return undefined;
  const lift = Math.min(attached.largestLift, Math.max(1.15 * leastSink.lift, stall?.lift ?? 0));
  const zero = -attachedAt(0).lift / attached.liftSlope;
  return Array.from({ length: 61 }, (_, i) => attachedAt(zero + ((i / 60) * lift) / attached.liftSlope));
}

/** On the march up to stall; for a parabolic polar on the parabola, up to the largest lift where one was given. */
function bests({ at, attachedAt, reading: { attached } }: WingBench, march: readonly BenchPoint[]) {
  let [look, points, width] = [at, march, step];
  if (attached && attachedAt) {
    const zero = -attachedAt(0).lift / attached.liftSlope;
    const range = attached.largestLift / attached.liftSlope;
    const marks = 200;
    [look, width] = [attachedAt, range / marks];
    points = Array.from({ length: marks }, (_, i) => attachedAt(zero + ((i + 1) / marks) * range));
  }
  const usable = points.filter((point) => point.lift > 0);
  const best = (measure: (point: BenchPoint) => number) => bestOf(look, usable, width, measure);
  return {
    bestGlide: best(glideRatio),
    leastPower: best(powerFactor),
    leastSink: best(({ lift, drag }) => (drag > countedDrag ? Math.hypot(lift, drag) ** 1.5 / drag : 0)),
  };
}

export function glideRatio({ lift, drag }: BenchPoint): number {
  return drag > countedDrag ? lift / drag : 0;
}

export function powerFactor({ lift, drag }: BenchPoint): number {
  return drag > countedDrag && lift > 0 ? lift ** 1.5 / drag : 0;
}

/** The crossing of zero lift, marched from zero angle toward it in whole degrees, then closed in on. */
function zeroLiftAngle(bench: WingBench): number | undefined {
  const lift = (angle: number): number => bench.at(angle).lift;
  const down = lift(0) > 0;
  let inner = 0;
  for (let count = 1; count * degree <= widest.zeroLift; count++) {
    const outer = (down ? -count : count) * degree;
    if (lift(outer) > 0 !== down) {
      return rising(lift, down ? [outer, inner] : [inner, outer]);
    }
    inner = outer;
  }
  return undefined;
}

/** Root of a function that rises between two ends: false position with the weight of a stale end halved. */
function rising(f: (x: number) => number, [from, to]: readonly [number, number]): number {
  let [low, high, atLow, atHigh] = [from, to, f(from), f(to)];
  for (let i = 0; i < 60 && high - low > 1e-10; i++) {
    const x = atHigh > atLow ? low - (atLow * (high - low)) / (atHigh - atLow) : (low + high) / 2;
    const value = f(x);
    if (Math.abs(value) < 1e-9) return x;
    if (value < 0) [low, atLow, atHigh] = [x, value, atHigh / 2];
    else [high, atHigh, atLow] = [x, value, atLow / 2];
  }
  return (low + high) / 2;
}

/** Upward from no lift to the first stall, or to the largest lift that may be used. */
function marched(bench: WingBench, zeroLift: BenchPoint): Pick<WingSearch, "march" | "stall" | "stalls"> {
  const allowed = bench.reading.largestLift;
  const points = [zeroLift];
  let top = zeroLift;
  for (let count = 1; count * step <= widest.stall; count++) {
    const point = bench.at(zeroLift.angle + count * step);
    if (allowed !== undefined && point.lift >= allowed) {
      const last = allowedPoint(bench, top.angle, point.angle, allowed);
      return { march: [...points.filter(({ angle }) => angle < last.angle), last], stall: last, stalls: true };
    }
    if (point.lift > top.lift) top = point;
    points.push(point);
    if (point.lift < top.lift - Math.max(fallen.by, fallen.share * top.lift)) {
      const stall = refined(bench.at, top, step, ({ lift }) => lift);
      return { march: [...points.filter(({ angle }) => angle < stall.angle), stall], stall, stalls: true };
    }
  }
  return { march: points.filter(({ angle }) => angle <= top.angle), stall: top.lift > 0 ? top : undefined, stalls: false };
}

function allowedPoint(bench: WingBench, from: number, to: number, allowed: number): BenchPoint {
  let [low, high] = [from, to];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (bench.at(middle).lift < allowed) low = middle;
    else high = middle;
  }
  return bench.at(low);
}

type Looking = (angle: number) => BenchPoint;
type Measure = (point: BenchPoint) => number;

function bestOf(look: Looking, points: readonly BenchPoint[], width: number, measure: Measure): BenchPoint | undefined {
  let found: BenchPoint | undefined;
  for (const point of points) if (measure(point) > (found ? measure(found) : 0)) found = point;
  if (!found) return undefined;
  const last = points[points.length - 1] as BenchPoint;
  return refined(look, found, width, measure, last.angle);
}

/** The largest of a measure around a point, not beyond an angle. */
function refined(look: Looking, around: BenchPoint, width: number, measure: Measure, highest = Number.POSITIVE_INFINITY): BenchPoint {
  const [low, high] = [around.angle - width, Math.min(around.angle + width, highest)];
  if (high <= low) return around;
  const { x } = lineMinimum((angle) => -measure(look(angle)), low, high, look(low).wing.way === "polar" ? fine.parabola : fine.solved);
  const found = look(x);
  return measure(found) > measure(around) ? found : around;
}
