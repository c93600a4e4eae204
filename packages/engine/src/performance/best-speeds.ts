import { type FlightConditions, type Trimmed, type TrimRotor, trim, trimFrom, withSearchedMargin } from "../equilibrium/index.ts";
import { lineMinimum } from "../numerics/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import type { LinePoint } from "./speed-line.ts";

/** A speed with the flight there. */
export interface SpeedOptimum {
  readonly airspeed: number;
  readonly mode: PoweredMode;
  readonly electricPower: number;
  readonly trimmed: Trimmed;
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
export function bestSpeed(
  conditions: FlightConditions,
  lines: Readonly<Record<PoweredMode, readonly LinePoint[]>>,
  rotor: TrimRotor,
  cost: (trimmed: Trimmed) => number,
): SpeedOptimum | undefined {
  let best: SpeedOptimum | undefined;
  for (const mode of Object.keys(lines) as PoweredMode[]) {
    const found = bestOnLine(conditions, mode, lines[mode], rotor, cost);
    if (found && (best === undefined || cost(found.trimmed) < cost(best.trimmed))) best = found;
  }
  return best;
}

function bestOnLine(
  conditions: FlightConditions,
  mode: PoweredMode,
  line: readonly LinePoint[],
  rotor: TrimRotor,
  cost: (trimmed: Trimmed) => number,
): SpeedOptimum | undefined {
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
  let found: Trimmed = centre;
  const evaluate = (airspeed: number) => {
    const outcome = trimFrom(conditions, { mode, forwardSpeed: airspeed, climbRate: 0 }, rotor, [centre.start], "table");
    if (outcome.kind !== "trimmed") return Number.POSITIVE_INFINITY;
    if (cost(outcome) < cost(found)) found = outcome;
    return cost(outcome);
  };
  lineMinimum(evaluate, speed(index - 1) ?? here, speed(index + 1) ?? here, speedTolerance);
  const exact = withSearchedMargin(conditions, found, rotor);
  if (exact.kind === "trimmed") found = exact;
  return { airspeed: found.point.forwardSpeed, mode, electricPower: found.evaluation.power.electric, trimmed: found };
}

/**
 * Optima of several costs without full lines: from a middling speed the walk follows each mode both ways until every cost has
 * risen, then each minimum is refined. For many loadings in a row; a line over all speeds also shows second optima.
 */
export function walkToBestSpeeds(
  conditions: FlightConditions,
  modes: readonly PoweredMode[],
  rotor: TrimRotor,
  costs: readonly ((trimmed: Trimmed) => number)[],
): readonly (SpeedOptimum | undefined)[] {
  const lines = modes.map((mode) => ({ mode, line: walk(conditions, mode, rotor, costs) }));
  return costs.map((cost) => {
    let best: SpeedOptimum | undefined;
    for (const { mode, line } of lines) {
      const found = bestOnLine(conditions, mode, line, rotor, cost);
      if (found && (best === undefined || cost(found.trimmed) < cost(best.trimmed))) best = found;
    }
    return best;
  });
}

function walk(
  conditions: FlightConditions,
  mode: PoweredMode,
  rotor: TrimRotor,
  costs: readonly ((trimmed: Trimmed) => number)[],
): LinePoint[] {
  const at = (airspeed: number) => ({ mode, forwardSpeed: airspeed, climbRate: 0 });
  let first: Trimmed | undefined;
  for (let airspeed = walkStart; airspeed < walkEnds.fastest && first === undefined; airspeed += walkStep) {
    const outcome = trim(conditions, at(airspeed), rotor, "table");
    if (outcome.kind === "trimmed") first = outcome;
  }
  if (first === undefined) return [];
  const line: LinePoint[] = [{ airspeed: first.point.forwardSpeed, outcome: first }];
  for (const direction of [walkStep, -walkStep]) {
    let here = first;
    for (;;) {
      const airspeed = here.point.forwardSpeed + direction;
      if (airspeed < walkEnds.slowest || airspeed > walkEnds.fastest) break;
      const outcome = trimFrom(conditions, at(airspeed), rotor, [here.start], "table");
      if (outcome.kind !== "trimmed") break;
      line.push({ airspeed, outcome });
      if (costs.every((cost) => cost(outcome) > cost(here))) break;
      here = outcome;
    }
  }
  return line.sort((a, b) => a.airspeed - b.airspeed);
}
