import { type FlightConditions, type Trimmed, type TrimRotor, trimFrom, withSearchedMargin } from "../equilibrium/index.ts";
import { goldenSection } from "../numerics/index.ts";
import type { PoweredMode } from "./cheapest-flight.ts";
import type { LinePoint } from "./speed-line.ts";

/** A speed with the flight there. */
export interface SpeedOptimum {
  readonly airspeed: number;
  readonly mode: PoweredMode;
  readonly electricPower: number;
  readonly trimmed: Trimmed;
}

const speedTolerance = 0.02;

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
    const outcome = trimFrom(conditions, { mode, forwardSpeed: airspeed, climbRate: 0 }, rotor, [centre.vector], "table");
    if (outcome.kind !== "trimmed") return Number.POSITIVE_INFINITY;
    if (cost(outcome) < cost(found)) found = outcome;
    return cost(outcome);
  };
  goldenSection(evaluate, speed(index - 1) ?? here, speed(index + 1) ?? here, speedTolerance);
  const exact = withSearchedMargin(conditions, found, rotor);
  if (exact.kind === "trimmed") found = exact;
  return { airspeed: found.point.forwardSpeed, mode, electricPower: found.evaluation.power.electric, trimmed: found };
}
