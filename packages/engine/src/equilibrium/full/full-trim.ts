import { hotelPower, massProperties } from "../../aircraft/index.ts";
import { Airframe, rotorStateWidth } from "../../airframe/index.ts";
import { type SqpResult, solveNonlinearProgram } from "../../numerics/index.ts";
import type { TrimLimit } from "../trim-problem.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";
import { type FullEvaluation, type FullProblem, fullProblem } from "./full-problem.ts";
import { fullStarts } from "./full-starts.ts";
import { tipSpeedBounds } from "./full-variables.ts";
import { rangeShares } from "./range-shares.ts";
import { type StallLimits, stallLimits } from "./stall-limits.ts";

/** A flight in balance of all six components. */
export interface FullTrimmed {
  readonly kind: "trimmed";
  readonly point: FullPoint;
  readonly evaluation: FullEvaluation;
  /** Speeds [m/s], airspeed along the path; electric power [W]. */
  readonly flown: {
    readonly mode: FullPoint["mode"];
    readonly airspeed: number;
    readonly forwardSpeed: number;
    readonly climbRate: number;
    readonly electricPower: number;
  };
  /** Largest steady thrust over thrust per rotor, searched [1]. */
  readonly stallMargins: readonly number[];
  readonly limits: readonly { readonly limit: TrimLimit; readonly share: number }[];
  readonly start: FullStart;
  readonly iterations: number;
  /** A scheduled rotor speed lies at an end of its permitted range. */
  readonly tipSpeedHeld: boolean;
}

/** No balance within the limits: what blocks, and how much is missing in its own scaled measure. */
export interface FullNotTrimmable {
  readonly kind: "no-equilibrium";
  readonly point: FullPoint;
  readonly limit: string;
  readonly family: TrimLimit["family"];
  readonly violation: number;
  readonly start: FullStart;
}

/** The solver ended without an answer and without a contradiction: nothing is known of this flight. */
export interface FullUnresolved {
  readonly kind: "not-resolved";
  readonly limit: string;
  readonly family: TrimLimit["family"];
  readonly point: FullPoint;
  readonly violation: number;
  readonly start: FullStart;
}

export type FullOutcome = FullTrimmed | FullNotTrimmable | FullUnresolved;

export interface FullStart {
  readonly x: Float64Array;
  readonly hessian?: Float64Array;
}

const feasibility = 1e-8;
const warmIterations = 40;
const coldIterations = 100;
const marginTolerance = 5e-4;
const largestMarginGiven = 2e-3;

/** Trims flights of one aircraft in one loading and air. Holds buffers: not to be shared between threads. */
export class FullTrimmer {
  readonly conditions: FullConditions;
  readonly airframe: Airframe;
  readonly #stall: StallLimits;
  /** How solves ended so far. */
  readonly counter = { converged: 0, limited: 0, failed: 0 };

  /** @param stall limits of the same rotors in the same air, known from elsewhere */
  constructor(conditions: FullConditions, stall?: StallLimits) {
    this.conditions = conditions;
    const { aircraft, loading, air, losses, lightsOn } = conditions;
    this.airframe = new Airframe({
      aircraft,
      loading,
      air,
      losses,
      hotelPower: hotelPower(aircraft, loading, lightsOn),
      mass: massProperties(aircraft, loading),
    });
    const [first] = this.airframe.rotors;
    for (const rotor of this.airframe.rotors) {
      // Given for the first rotor's hub; another one stands higher or lower by its place.
      const lower = rotor.part.hub.z - (first?.part.hub.z ?? 0);
      rotor.groundHeight = conditions.groundHeight === undefined ? undefined : conditions.groundHeight - lower;
    }
    this.#stall = stall ?? stallLimits(this.airframe);
  }

  /** Trims a flight of which nothing is known: from every way of flying, keeping the cheapest. */
  trim(point: FullPoint, margin: "table" | "exact" = "exact"): FullOutcome {
    const problem = this.#problem(point, this.#floors());
    return this.trimFrom(
      point,
      fullStarts(this.conditions, point, this.airframe, problem).map((x) => ({ x })),
      margin,
    );
  }

  /** Trims from given starts and keeps the cheapest. */
  trimFrom(point: FullPoint, starts: readonly FullStart[], margin: "table" | "exact" = "exact"): FullOutcome {
    const kept = this.#above(this.#floors(), point, starts, margin);
    if (kept.kind === "trimmed" || this.conditions.controls === "optimum" || kept.kind !== "no-equilibrium") return kept;
    if (!kept.limit.startsWith("stall margin")) return kept;
    // Controls on their schedule cannot be asked to keep the margin: the flight exists, with less than the floor, and says so.
    const flown = this.#above(
      this.airframe.rotors.map(() => 1),
      point,
      [...starts, kept.start],
      margin,
    );
    return flown.kind === "trimmed" ? flown : kept;
  }

  /** The same aircraft with a change that touches neither rotors nor air: what was found of the rotors is kept. */
  withAircraft(aircraft: FullConditions["aircraft"]): FullTrimmer {
    return new FullTrimmer({ ...this.conditions, aircraft }, this.#stall);
  }

  #floors(): readonly number[] {
    return this.airframe.rotors.map(({ part }) => part.stallMarginFloor);
  }

  #problem(point: FullPoint, floors: readonly number[]): FullProblem {
    return fullProblem(this.conditions, point, this.airframe, this.#stall, floors);
  }

  #above(floors: readonly number[], point: FullPoint, starts: readonly FullStart[], margin: "table" | "exact"): FullOutcome {
    const problem = this.#problem(point, floors);
    let best: SqpResult | undefined;
    let nearest: SqpResult | undefined;
    for (const start of starts) {
      const found = this.#solve(problem, start);
      if (found.kind === "converged" && found.violation < feasibility * 100) {
        if (best === undefined || (found.values[0] as number) < (best.values[0] as number) - 1e-9) best = found;
      } else if (nearest === undefined || found.violation < nearest.violation) nearest = found;
    }
    if (best === undefined) return this.#blocked(point, problem, nearest as SqpResult);
    return margin === "exact" ? this.#withExactMargin(floors, point, problem, best) : this.#trimmed(point, problem, best, undefined);
  }

  #solve(problem: FullProblem, start: FullStart): SqpResult {
    if (start.hessian) {
      const warm = solveNonlinearProgram(problem.program, start.x, {
        feasibilityTolerance: feasibility,
        maximumIterations: warmIterations,
        hessian: start.hessian,
      });
      if (warm.kind === "converged") return warm;
    }
    return solveNonlinearProgram(problem.program, start.x, { feasibilityTolerance: feasibility, maximumIterations: coldIterations });
  }

  /** The answer with its stall margins searched; solved again where the table had flattered. */
  #withExactMargin(floors: readonly number[], point: FullPoint, problem: FullProblem, found: SqpResult): FullOutcome {
    let asked = floors;
    let result = found;
    let best: FullTrimmed | undefined;
    for (let attempt = 0; attempt < 4; attempt++) {
      const evaluation = problem.evaluation(result.x);
      const margins = this.#searchedMargins(evaluation);
      const wrong = margins.map((margin, i) => margin < (floors[i] as number) - marginTolerance);
      if (!wrong.some(Boolean)) best = this.#trimmed(point, problem, result, margins);
      const given = margins.some(
        (margin, i) =>
          (evaluation.stallMargins[i] as number) < (asked[i] as number) * (1 + 1e-4) && margin - (floors[i] as number) > largestMarginGiven,
      );
      if (best && !given) return best;
      asked = margins.map((margin, i) => {
        const table = evaluation.stallMargins[i] as number;
        return Number.isFinite(table) && Number.isFinite(margin)
          ? (table / margin) * (floors[i] as number) * (1 + marginTolerance / 4)
          : (floors[i] as number);
      });
      const again = this.#solve(this.#problem(point, asked), { x: result.x, hessian: result.hessian });
      if (again.kind !== "converged") break;
      result = again;
    }
    if (best) return best;
    const evaluation = problem.evaluation(result.x);
    const least = Math.min(...this.#searchedMargins(evaluation).map((margin, i) => margin - (floors[i] as number)));
    this.counter.limited += 1;
    return {
      kind: "no-equilibrium",
      point,
      limit: problem.limits.find(({ of }) => of.kind === "stall")?.name ?? "stall margin",
      family: "air",
      violation: -least,
      start: { x: result.x },
    };
  }

  #searchedMargins({ loads, rotorStates }: FullEvaluation): number[] {
    return loads.rotors.map(({ ct, advanceRatio, axialInflow }, i) =>
      ct > 0
        ? this.#stall.search(i, advanceRatio, axialInflow, rotorStates[i * rotorStateWidth] as number).thrust / ct
        : Number.POSITIVE_INFINITY,
    );
  }

  #trimmed(point: FullPoint, problem: FullProblem, result: SqpResult, margins: readonly number[] | undefined): FullTrimmed {
    this.counter.converged += 1;
    const evaluation = problem.evaluation(result.x);
    const stallMargins = margins ?? evaluation.stallMargins;
    const shares = problem.limits.flatMap((limit, i) => {
      if (limit.of.kind === "branch" || limit.of.kind === "clutch") return [];
      const slack = result.values[1 + problem.equalities + i] as number;
      return [{ limit: { name: limit.name, family: limit.family }, share: this.#share(limit, slack, stallMargins) }];
    });
    return {
      kind: "trimmed",
      point,
      evaluation,
      flown: {
        mode: point.mode,
        airspeed: Math.hypot(evaluation.airspeed, evaluation.climbRate),
        forwardSpeed: evaluation.airspeed,
        climbRate: evaluation.climbRate,
        electricPower: evaluation.loads.electricPower,
      },
      stallMargins,
      limits: [...shares, ...rangeShares(this.airframe, problem.layout, result.x)],
      start: { x: result.x, hessian: result.hessian },
      iterations: result.iterations,
      tipSpeedHeld: this.airframe.rotors.some((_, i) => tipSpeedBounds(this.conditions, point, this.airframe, i, problem.running).held),
    };
  }

  #share({ of }: FullProblem["limits"][number], slack: number, margins: readonly number[]): number {
    const { aircraft } = this.conditions;
    switch (of.kind) {
      case "stall":
        return (this.airframe.rotors[of.rotor]?.part.stallMarginFloor ?? 1) / (margins[of.rotor] as number);
      case "flap":
        return Math.sqrt(Math.max(0, 1 - slack));
      case "lift-high":
      case "lift-low": {
        const part = aircraft.surfaces[of.surface];
        const most = (part?.maximumLiftCoefficient ?? 1) * (part?.trimLiftFraction ?? 1);
        return Math.max(0, (most - slack) / most);
      }
      default:
        return 1 - slack;
    }
  }

  /** Names what the relaxed subproblem pulls hardest at; a run that ended without contradiction is not taken for one. */
  #blocked(point: FullPoint, problem: FullProblem, result: SqpResult): FullOutcome {
    const start = { x: result.x };
    if (result.kind === "not-converged" || !Number.isFinite(result.violation)) {
      this.counter.failed += 1;
      return { kind: "not-resolved", limit: "not resolved by the solver", family: "air", point, violation: result.violation, start };
    }
    this.counter.limited += 1;
    let strongest: TrimLimit | undefined;
    let pull = 0;
    problem.limits.forEach((limit, i) => {
      const multiplier = Math.abs(result.multipliers[problem.equalities + i] as number);
      const slack = result.values[1 + problem.equalities + i] as number;
      if (slack < 1e-4 && multiplier > pull) {
        pull = multiplier;
        strongest = limit;
      }
    });
    const bound = strongest ?? this.#boundLimit(problem, result.x) ?? { name: "no balance of forces and moments", family: "air" as const };
    return { kind: "no-equilibrium", point, limit: bound.name, family: bound.family, violation: result.violation, start };
  }

  #boundLimit({ layout }: FullProblem, x: Float64Array): TrimLimit | undefined {
    const at = (index: number) => {
      const low = layout.lower[index] as number;
      const high = layout.upper[index] as number;
      const here = x[index] as number;
      return high > low && (here - low < 1e-3 || high - here < 1e-3);
    };
    const control = this.airframe.controls.find((_, i) => at(layout.controlAt + i));
    if (control) return { name: `${control.id.replaceAll("-", " ")} range`, family: "control" };
    if (at(0) || at(1)) return { name: "attitude", family: "rule" };
    const rotor = this.airframe.rotors.findIndex((_, i) => at(layout.rotorAt + i * rotorStateWidth));
    return rotor >= 0 ? { name: "rotor speed range", family: "strength" } : undefined;
  }
}

/** What a trim makes least: electric power, or sink rate in a glide. @derivation not a formula */
export function fullObjective({ point, evaluation }: FullTrimmed): number {
  return point.mode === "glide" ? -evaluation.climbRate : evaluation.loads.electricPower;
}
