import type { Trimmed } from "../equilibrium/index.ts";
import { lineMinimum } from "../numerics/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import type { Flown, Flyer } from "./flyer.ts";
import type { LinePoint } from "./speed-line.ts";

/** A speed with the flight there. */
export interface SpeedOptimum<F extends Flown = Trimmed> {
  readonly airspeed: number;
  readonly mode: PoweredMode;
  readonly electricPower: number;
  readonly trimmed: F;
}

const speedTolerance = 0.05;
/** The walk towards a minimum starts here and moves by this [m/s]. */
const walkStart = 16;
const walkStep = 3;
const walkEnds = { slowest: 4, fastest: 60 } as const;

/**
 * The speed at which a cost of flying is least, over both modes: the cheapest point of each line, refined between its
 * neighbours by exact trims.
 */
export function bestSpeed<F extends Flown>(
  flyer: Flyer<F>,
  lines: Readonly<Record<PoweredMode, readonly LinePoint<F>[]>>,
  cost: (trimmed: F) => number,
): SpeedOptimum<F> | undefined {
  let best: SpeedOptimum<F> | undefined;
  for (const mode of Object.keys(lines) as PoweredMode[]) {
    const found = bestOnLine(flyer, mode, lines[mode], cost);
    if (found && (best === undefined || cost(found.trimmed) < cost(best.trimmed))) best = found;
  }
  return best;
}

function bestOnLine<F extends Flown>(
  flyer: Flyer<F>,
  mode: PoweredMode,
  line: readonly LinePoint<F>[],
  cost: (trimmed: F) => number,
): SpeedOptimum<F> | undefined {
  let index = -1;
  let least = Number.POSITIVE_INFINITY;
  line.forEach((point, i) => {
    if (point.outcome.kind !== "trimmed") return;
    const value = cost(point.outcome);
    if (value < least) {
      least = value;
      index = i;
    }
  });
  const centre = line[index]?.outcome;
  if (centre?.kind !== "trimmed") return undefined;
  const speed = (i: number) => {
    const point = line[i];
    return point?.outcome.kind === "trimmed" ? point.airspeed : undefined;
  };
  const here = speed(index) as number;
  let found: F = centre;
  const evaluate = (airspeed: number) => {
    const outcome = flyer.trimFrom({ mode, forwardSpeed: airspeed, climbRate: 0 }, centre, true);
    if (outcome.kind !== "trimmed") return Number.POSITIVE_INFINITY;
    if (cost(outcome) < cost(found)) found = outcome;
    return cost(outcome);
  };
  lineMinimum(evaluate, speed(index - 1) ?? here, speed(index + 1) ?? here, speedTolerance);
  const exact = flyer.searched(found);
  if (exact.kind === "trimmed") found = exact;
  return { airspeed: found.flown.forwardSpeed, mode, electricPower: found.flown.electricPower, trimmed: found };
}

/**
 * Optima of several costs without full lines: from a middling speed the walk follows each mode both ways until every cost has
 * risen, then each minimum is refined. For many loadings in a row; a line over all speeds also shows second optima.
 */
export function walkToBestSpeeds<F extends Flown>(
  flyer: Flyer<F>,
  modes: readonly PoweredMode[],
  costs: readonly ((trimmed: F) => number)[],
): readonly (SpeedOptimum<F> | undefined)[] {
  const lines = modes.map((mode) => ({ mode, line: walk(flyer, mode, costs) }));
  return costs.map((cost) => {
    let best: SpeedOptimum<F> | undefined;
    for (const { mode, line } of lines) {
      const found = bestOnLine(flyer, mode, line, cost);
      if (found && (best === undefined || cost(found.trimmed) < cost(best.trimmed))) best = found;
    }
    return best;
  });
}

function walk<F extends Flown>(flyer: Flyer<F>, mode: PoweredMode, costs: readonly ((trimmed: F) => number)[]): LinePoint<F>[] {
  const at = (airspeed: number) => ({ mode, forwardSpeed: airspeed, climbRate: 0 });
  let first: F | undefined;
  for (let airspeed = walkStart; airspeed < walkEnds.fastest && first === undefined; airspeed += walkStep) {
    const outcome = flyer.trim(at(airspeed), true);
    if (outcome.kind === "trimmed") first = outcome;
  }
  if (first === undefined) return [];
  const line: LinePoint<F>[] = [{ airspeed: first.flown.forwardSpeed, outcome: first }];
  for (const direction of [walkStep, -walkStep]) {
    let here: F = first;
    for (;;) {
      const airspeed = here.flown.forwardSpeed + direction;
      if (airspeed < walkEnds.slowest || airspeed > walkEnds.fastest) break;
      const outcome = flyer.trimFrom(at(airspeed), here, true);
      if (outcome.kind !== "trimmed") break;
      line.push({ airspeed, outcome });
      if (costs.every((cost) => cost(outcome) > cost(here))) break;
      here = outcome;
    }
  }
  return line.sort((a, b) => a.airspeed - b.airspeed);
}
