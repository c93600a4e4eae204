import { type NonlinearProgram, type SqpResult, solveNonlinearProgram } from "../numerics/index.ts";
import type { FlightConditions, FlightPoint } from "./conditions.ts";
import { branchLimit, clutchLimit, type TrimEvaluation, type TrimLimit, trimLimits, trimProblem } from "./trim-problem.ts";
import type { TrimRotor } from "./trim-rotor.ts";
import { type TrimStart, variable } from "./trim-variables.ts";

/** A trimmed point: state, loads, power, and the stall margin found by an exact search. */
export interface Trimmed {
  readonly kind: "trimmed";
  readonly point: FlightPoint;
  readonly evaluation: TrimEvaluation;
  /** Speeds [m/s], airspeed along the path; electric power [W]. */
  readonly flown: {
    readonly mode: FlightPoint["mode"];
    readonly airspeed: number;
    readonly forwardSpeed: number;
    readonly climbRate: number;
    readonly electricPower: number;
  };
  /** [m] */
  readonly rotorRadius: number;
  /** Largest steady thrust over trimmed thrust, exact [1]. */
  readonly stallMargin: number;
  /** Limits with the share used; those at 1 bind. */
  readonly limits: readonly { readonly limit: TrimLimit; readonly share: number }[];
  /** A start for a neighbouring point. */
  readonly start: TrimStart;
  readonly iterations: number;
}

/** No equilibrium within the limits: the limit that blocks, and by how much in its own scaled measure. */
export interface NotTrimmable {
  readonly kind: "no-equilibrium";
  readonly point: FlightPoint;
  readonly limit: string;
  readonly family: TrimLimit["family"];
  /** Largest scaled violation left [1]. */
  readonly violation: number;
  /** The nearest miss. */
  readonly start: TrimStart;
}

export type TrimOutcome = Trimmed | NotTrimmable;

/** Whether the stall margin of the answer comes from the table (on the way) or from a search of its own (at the answer). */
export type MarginSearch = "table" | "exact";

const feasibility = 1e-8;
const warmIterations = 40;
const coldIterations = 80;
/** A searched margin may lie this far below the floor [1]: the search itself is no sharper. */
const marginTolerance = 5e-4;
/** A binding margin may lie this far above it: what is given away in power was at most 0.3 % where looked at. */
const largestMarginGiven = 2e-3;

/**
 * Trims one point from given starts and keeps the cheapest solution. The stall margin constraint uses the table; at the
 * answer the margin is searched exactly, and where the table flattered, the floor is raised by the difference and the
 * point solved again. On schedule, where no free control can keep the margin, the point is flown with what margin there is.
 */
export function trimFrom(
  conditions: FlightConditions,
  point: FlightPoint,
  rotor: TrimRotor,
  starts: readonly TrimStart[],
  margin: MarginSearch = "exact",
): TrimOutcome {
  const floor = conditions.aircraft.rotor.stallMarginFloor;
  const kept = trimAbove(floor, conditions, point, rotor, starts, margin);
  if (kept.kind === "trimmed" || conditions.controls === "optimum" || kept.limit !== "stall margin") return kept;
  // Controls on their schedule cannot be asked to keep the margin: the flight exists, with less than the floor, and says so.
  const flown = trimAbove(1, conditions, point, rotor, [...starts, kept.start], margin);
  return flown.kind === "trimmed" ? flown : kept;
}

/** From a neighbour's curvature first; where that leads nowhere, afresh from the same place. */
function solve(program: NonlinearProgram, start: TrimStart): SqpResult {
  if (start.hessian) {
    const warm = solveNonlinearProgram(program, start.x, {
      feasibilityTolerance: feasibility,
      maximumIterations: warmIterations,
      hessian: start.hessian,
    });
    if (warm.kind === "converged") return warm;
  }
  return solveNonlinearProgram(program, start.x, { feasibilityTolerance: feasibility, maximumIterations: coldIterations });
}

function startOf(result: SqpResult): TrimStart {
  return result.kind === "converged" ? { x: result.x, hessian: result.hessian } : { x: result.x };
}

function trimAbove(
  floor: number,
  conditions: FlightConditions,
  point: FlightPoint,
  rotor: TrimRotor,
  starts: readonly TrimStart[],
  margin: MarginSearch,
): TrimOutcome {
  let best: SqpResult | undefined;
  let nearest: SqpResult | undefined;
  for (const start of starts) {
    const found = solve(trimProblem(conditions, point, rotor, floor).program, start);
    if (found.violation < feasibility * 100 && found.kind === "converged") {
      if (best === undefined || (found.values[0] as number) < (best.values[0] as number) - 1e-9) best = found;
    } else if (nearest === undefined || found.violation < nearest.violation) nearest = found;
  }
  if (best === undefined) return blocked(point, nearest as SqpResult, trimProblem(conditions, point, rotor, floor).program);
  if (margin === "exact") return withExactMargin(floor, conditions, point, rotor, best);
  const evaluation = trimProblem(conditions, point, rotor, floor).evaluation(best.x);
  return trimmed(conditions, point, evaluation, evaluation.stallMargin, best);
}

/** The same point with its stall margin searched exactly, and solved again where the table had flattered. */
export function withSearchedMargin(conditions: FlightConditions, from: Trimmed, rotor: TrimRotor): TrimOutcome {
  return trimFrom(conditions, from.point, rotor, [from.start]);
}

/** What the solver makes least: electric power, or sink rate in a glide. */
export function objective(trimmed: Trimmed): number {
  return trimmed.point.mode === "glide" ? -trimmed.evaluation.climbRate : trimmed.evaluation.power.electric;
}

function withExactMargin(floor: number, conditions: FlightConditions, point: FlightPoint, rotor: TrimRotor, found: SqpResult): TrimOutcome {
  let asked = floor;
  let result = found;
  let best: Trimmed | undefined;
  let margin = 0;
  for (let attempt = 0; attempt < 4; attempt++) {
    const evaluation = trimProblem(conditions, point, rotor, asked).evaluation(result.x);
    const largest = rotor.searchedStallLimit(evaluation.advanceRatio, evaluation.axialInflow, evaluation.state.tipSpeed);
    margin = largest.thrust / evaluation.rotor.ct;
    const binds = evaluation.stallMargin < asked * (1 + 1e-4);
    if (margin >= floor - marginTolerance) best = trimmed(conditions, point, evaluation, margin, result);
    if (best && (!binds || margin - floor < largestMarginGiven)) return best;
    // The table is off by this factor here: ask it for what the search would call the floor, and a trace more.
    asked = (evaluation.stallMargin / margin) * floor * (1 + marginTolerance / 4);
    const again = solve(trimProblem(conditions, point, rotor, asked).program, result);
    if (again.kind !== "converged") break;
    result = again;
  }
  return best ?? { kind: "no-equilibrium", point, limit: "stall margin", family: "air", violation: floor - margin, start: startOf(result) };
}

function trimmed(
  conditions: FlightConditions,
  point: FlightPoint,
  evaluation: TrimEvaluation,
  stallMargin: number,
  result: SqpResult,
): Trimmed {
  return {
    kind: "trimmed",
    point,
    evaluation,
    flown: {
      mode: point.mode,
      airspeed: evaluation.airspeed,
      forwardSpeed: evaluation.forwardSpeed,
      climbRate: evaluation.climbRate,
      electricPower: evaluation.power.electric,
    },
    rotorRadius: conditions.aircraft.rotor.radius,
    stallMargin,
    limits: limitShares(conditions, point, stallMargin, result),
    start: startOf(result),
    iterations: result.iterations,
  };
}

function limitShares(conditions: FlightConditions, point: FlightPoint, stallMargin: number, result: SqpResult): Trimmed["limits"] {
  const offset = 1 + 6 + (point.mode === "clutch-closed" ? 1 : 0);
  const wing = conditions.aircraft.wing;
  return trimLimits.map((limit, i) => {
    const slack = result.values[offset + i] as number;
    switch (i) {
      case 0:
        return { limit, share: conditions.aircraft.rotor.stallMarginFloor / stallMargin };
      case 1:
      case 2: {
        const most = wing.maximumLiftCoefficient * wing.trimLiftFraction;
        return { limit, share: (most - slack) / most };
      }
      case 3:
      case 4: {
        const range = conditions.aircraft.rotor.flapRange;
        return { limit, share: (range - slack * 5 * (Math.PI / 180)) / range };
      }
      default:
        return { limit, share: 1 - slack };
    }
  });
}

/**
 * Names what blocks: the inequality or bound that the relaxed subproblem pulls hardest at. Among bounds only those with a
 * meaning for the aircraft are named.
 */
function blocked(point: FlightPoint, result: SqpResult, program: NonlinearProgram): NotTrimmable {
  const closed = point.mode === "clutch-closed";
  const names = [...(closed ? [clutchLimit] : []), ...trimLimits, branchLimit];
  let strongest: TrimLimit | undefined;
  let pull = 0;
  names.forEach((limit, i) => {
    const multiplier = Math.abs(result.multipliers[6 + i] as number);
    const slack = result.values[7 + i] as number;
    if (slack < 1e-4 && multiplier > pull) {
      pull = multiplier;
      strongest = limit;
    }
  });
  const bound = strongest ?? boundLimit(result, program) ?? { name: "no balance of forces", family: "air" as const };
  return { kind: "no-equilibrium", point, limit: bound.name, family: bound.family, violation: result.violation, start: startOf(result) };
}

/** A free control at an end of its own range; one held at a single value stands there always and blocks nothing by it. */
function boundLimit({ x }: SqpResult, { lower, upper }: NonlinearProgram): TrimLimit | undefined {
  const at = (index: number, ends: Float64Array) =>
    (lower[index] as number) < (upper[index] as number) && Math.abs((x[index] as number) - (ends[index] as number)) < 1e-3;
  if (at(variable.collective, lower) || at(variable.collective, upper)) return { name: "collective range", family: "control" };
  if (at(variable.tipSpeed, upper)) return { name: "highest rotor speed", family: "strength" };
  if (at(variable.tipSpeed, lower)) return { name: "lowest rotor speed", family: "strength" };
  return undefined;
}
