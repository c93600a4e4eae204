import { domainOfRows } from "../../published/index.ts";
import { type BenchPoint, glideSpeed, type WingBench } from "./bench.ts";
import type { WingOutputs, WingRow } from "./output-schema.ts";
import type { WingInputs } from "./schema.ts";
import { glideRatio, powerFactor, type WingSearch } from "./search.ts";

export function wingOutputsOf(bench: WingBench, rows: readonly BenchPoint[], search: WingSearch, inputs: WingInputs): WingOutputs {
  const { reading } = bench;
  const { bestGlide, zeroLift, stall, stalls } = search;
  const aspect = (reading.span * reading.span) / reading.area;
  return {
    rows: rows.map((point) => rowOf(point, bench.parasite, aspect)),
    aspectRatio: aspect,
    meanAerodynamicChord: reading.meanAerodynamicChord,
    liftSlope: search.liftSlope ?? null,
    zeroLiftAngle: zeroLift?.angle ?? null,
    zeroLiftDrag: zeroLift?.drag ?? null,
    largestLift: stall?.lift ?? null,
    stallAngle: stalls && stall ? stall.angle : null,
    ...bestOf(search),
    ...speedsOf(bench, search),
    spanEfficiency: bestGlide ? spanEfficiency(bestGlide, aspect) : null,
    fitted: reading.attached ? null : fittedPolar(search, aspect),
    loading: loadings(search),
    domain: domainOfRows(
      "wing",
      rows.map(({ angle }) => wingCoordinates(bench, inputs, angle)),
    ),
  };
}

/** Where a wing works, for its distance from published checks. */
export function wingCoordinates({ reading }: WingBench, { wing }: WingInputs, angle?: number) {
  const written = "area" in wing ? wing : undefined;
  const deflections = written?.flaps.map(({ deflection }) => Math.abs(deflection)) ?? [];
  return {
    aspectRatio: (reading.span * reading.span) / reading.area,
    sweep: written?.sweep,
    flapDeflection: Math.max(0, ...deflections),
    angle,
  };
}

function rowOf(point: BenchPoint, parasite: number, aspect: number): WingRow {
  const { wing, lift, drag, angle, reynolds } = point;
  return {
    angle,
    liftCoefficient: lift,
    dragCoefficient: drag,
    inducedDragCoefficient: wing.induced,
    profileDragCoefficient: wing.profile,
    parasiteDragCoefficient: parasite,
    momentCoefficient: wing.moment,
    rollingMomentCoefficient: wing.rolling,
    yawingMomentCoefficient: wing.yawing,
    liftToDrag: glideRatio(point),
    spanEfficiency: wing.way === "strips" ? null : spanEfficiency(point, aspect),
    reynoldsNumber: reynolds,
    way: wing.way,
  };
}

/** Lift coefficient below which the ratio says nothing [1]. */
const countedLift = 0.05;

function spanEfficiency({ lift, wing }: BenchPoint, aspect: number): number | null {
  if (Math.abs(lift) < countedLift || wing.induced < 1e-9) return null;
  return (lift * lift) / (Math.PI * aspect * wing.induced);
}

function bestOf({ bestGlide, leastPower }: WingSearch) {
  return {
    bestGlideRatio: bestGlide ? glideRatio(bestGlide) : null,
    bestGlideAngle: bestGlide ? Math.atan2(bestGlide.drag, bestGlide.lift) : null,
    bestGlideAngleOfAttack: bestGlide?.angle ?? null,
    bestGlideLift: bestGlide?.lift ?? null,
    bestPowerFactor: leastPower ? powerFactor(leastPower) : null,
    bestPowerFactorLift: leastPower?.lift ?? null,
  };
}

type Speeds = Pick<WingOutputs, "bestGlideSpeed" | "minimumSink" | "minimumSinkSpeed" | "stallSpeed" | "glide">;

/**
 * Speeds of steady glides, the whole force carrying the weight: V = √(2W/(ρ S C_R)), sink V C_D/C_R.
 *
 * @derivation balance along and across the path
 */
function speedsOf(bench: WingBench, { march, bestGlide, leastSink, stall }: WingSearch): Speeds {
  const { weight } = bench;
  if (weight === undefined) return { bestGlideSpeed: null, minimumSink: null, minimumSinkSpeed: null, stallSpeed: null, glide: [] };
  const rows = march.filter(({ lift, drag }) => lift > countedLift && drag > 0).map((point) => glideRow(bench, weight, point));
  const slowest = leastSink ? glideRow(bench, weight, leastSink) : undefined;
  const best = bestGlide ? glideRow(bench, weight, bestGlide) : undefined;
  return {
    bestGlideSpeed: best?.airspeed ?? null,
    minimumSink: slowest?.sinkRate ?? null,
    minimumSinkSpeed: slowest?.airspeed ?? null,
    stallSpeed: stall ? glideSpeed(weight, bench.air, bench.reading.area, stall.lift) : null,
    glide: rows,
  };
}

function glideRow({ air, reading }: WingBench, weight: number, point: BenchPoint): WingOutputs["glide"][number] {
  const force = Math.hypot(point.lift, point.drag);
  const airspeed = glideSpeed(weight, air, reading.area, force);
  const sinkRate = (airspeed * point.drag) / force;
  return {
    airspeed,
    sinkRate,
    liftToDrag: glideRatio(point),
    angle: point.angle,
    liftCoefficient: point.lift,
    power: weight * sinkRate,
  };
}

/** C_D = C_D0 + C_L²/(π A e) through the march between a tenth and three quarters of the largest lift, by least squares. */
function fittedPolar({ march, stall }: WingSearch, aspect: number): WingOutputs["fitted"] {
  if (!stall) return null;
  const [lowest, highest] = [0.1 * stall.lift, 0.75 * stall.lift];
  const points = march.filter(({ lift }) => lift >= lowest && lift <= highest);
  if (points.length < 4) return null;
  const mean = (of: (point: BenchPoint) => number): number => points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [meanSquare, meanDrag] = [mean(({ lift }) => lift * lift), mean(({ drag }) => drag)];
  const spread = mean(({ lift }) => (lift * lift - meanSquare) ** 2);
  const slope = mean(({ lift, drag }) => (lift * lift - meanSquare) * (drag - meanDrag)) / spread;
  if (!(slope > 1e-9) || spread < 1e-12) return null;
  return {
    zeroLiftDrag: meanDrag - slope * meanSquare,
    oswaldEfficiency: 1 / (Math.PI * aspect * slope),
    lowestLift: lowest,
    highestLift: highest,
  };
}

function loadings({ bestGlide, stall }: WingSearch): WingOutputs["loading"] {
  const one = (at: "best glide" | "stall", point: BenchPoint | undefined): WingOutputs["loading"] =>
    point && point.wing.stations.length > 0
      ? [
          {
            at,
            angle: point.angle,
            stations: point.wing.stations.map(({ place, lift, loading, effectiveAngle, downwash }) => ({
              place,
              liftCoefficient: lift,
              loading,
              effectiveAngle,
              downwash,
            })),
          },
        ]
      : [];
  return [...one("best glide", bestGlide), ...one("stall", stall)];
}
