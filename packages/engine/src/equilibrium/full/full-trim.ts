import { hotelPower, massProperties } from "../../aircraft/index.ts";
import { Airframe, rotorStateWidth } from "../../airframe/index.ts";
import type { SqpResult } from "../../numerics/index.ts";
import { fullAnswer } from "./full-answer.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";
import type { FullOutcome, FullStart, FullTrimmed } from "./full-outcome.ts";
import { type FullEvaluation, type FullProblem, fullProblem } from "./full-problem.ts";
import { easedLimit, refusal } from "./full-refusal.ts";
import { type Found, isSolution, searchAll, searchWidely, solveFrom } from "./full-search.ts";
import { fullStarts } from "./full-starts.ts";
import { secondLook } from "./second-look.ts";
import { type StallLimits, stallLimits } from "./stall-limits.ts";
import { hoverVelocity } from "./start-estimates.ts";
import { isSlow } from "./ways-of-flying.ts";

/** A searched margin may lie this far below the floor [1]: the search itself is no sharper. */
const marginTolerance = 5e-4;
/** A binding margin may lie this far above it [1]. */
const largestMarginGiven = 2e-3;
const marginAttempts = 5;

/** Trims flights of one aircraft in one loading and air. Holds buffers: not to be shared between threads. */
export class FullTrimmer {
  readonly conditions: FullConditions;
  readonly airframe: Airframe;
  readonly #stall: StallLimits;
  /** How trims ended so far. */
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
    return this.#counted(this.#widely(point, margin));
  }

  /** Trims from given starts and keeps the cheapest; where they leave it open, from every way of flying. */
  trimFrom(point: FullPoint, starts: readonly FullStart[], margin: "table" | "exact" = "exact"): FullOutcome {
    const outcome = this.#above(this.#floors(), point, margin, (problem) => searchAll(problem.program, starts));
    return this.#counted(outcome.kind === "not-resolved" ? this.#widely(point, margin) : outcome);
  }

  #widely(point: FullPoint, margin: "table" | "exact"): FullOutcome {
    const follow = isSlow(point.airspeed, hoverVelocity(this.conditions, this.airframe)) ? "every" : "promising";
    return this.#above(this.#floors(), point, margin, (problem) => {
      const starts = fullStarts(this.conditions, point, this.airframe, problem).map((x) => ({ x }));
      return secondLook(problem, this.airframe, searchWidely(problem.program, starts, follow));
    });
  }

  #counted(outcome: FullOutcome): FullOutcome {
    this.counter[outcome.kind === "trimmed" ? "converged" : outcome.kind === "no-equilibrium" ? "limited" : "failed"] += 1;
    return outcome;
  }

  /** The same with changes that touch neither rotors nor air: what was found of the rotors is kept. */
  with(changes: Partial<Pick<FullConditions, "aircraft" | "controls" | "loading" | "steering">>): FullTrimmer {
    return new FullTrimmer({ ...this.conditions, ...changes }, this.#stall);
  }

  #floors(): readonly number[] {
    return this.airframe.rotors.map(({ part }) => part.stallMarginFloor);
  }

  #problem(point: FullPoint, floors: readonly number[]): FullProblem {
    return fullProblem(this.conditions, point, this.airframe, this.#stall, floors);
  }

  #above(floors: readonly number[], point: FullPoint, margin: "table" | "exact", search: (problem: FullProblem) => Found): FullOutcome {
    const problem = this.#problem(point, floors);
    const { best, nearest } = search(problem);
    if (best === undefined) return this.#refused(floors, point, problem, nearest as SqpResult, margin);
    return this.#kept(floors, point, problem, best, margin);
  }

  #kept(floors: readonly number[], point: FullPoint, problem: FullProblem, best: SqpResult, margin: "table" | "exact"): FullOutcome {
    // On schedule the floor has a price and is no wall: the margin is told as it is.
    if (this.conditions.controls === "schedule" && margin === "exact")
      return this.#answer(point, problem, best, this.#searchedMargins(problem.evaluation(best.x)));
    return margin === "exact" ? this.#withExactMargin(floors, point, problem, best) : this.#answer(point, problem, best);
  }

  #answer(point: FullPoint, problem: FullProblem, result: SqpResult, margins?: readonly number[]): FullTrimmed {
    return fullAnswer(this.conditions, point, this.airframe, problem, result, margins);
  }

  /** Says what stands in the way; when asked exactly, also how far it would have to be moved, which may show that it need not be. */
  #refused(floors: readonly number[], point: FullPoint, problem: FullProblem, nearest: SqpResult, margin: "table" | "exact"): FullOutcome {
    let refused = refusal(point, this.airframe, problem, nearest);
    if (refused.kind === "not-resolved") {
      // Stopped short: once more from there.
      const further = solveFrom(problem.program, { x: nearest.x });
      if (isSolution(further)) return this.#kept(floors, point, problem, further, margin);
      refused = refusal(point, this.airframe, problem, further);
    }
    const asked = margin === "exact" || refused.kind === "not-resolved";
    const eased = asked ? easedLimit(this.conditions, this.airframe, problem, nearest) : undefined;
    if (eased?.kind === "flies") {
      const result = solveFrom(problem.program, { x: eased.x });
      if (isSolution(result)) return this.#kept(floors, point, problem, result, margin);
    }
    if (eased?.kind === "needed") {
      const { name, family } = eased.limit;
      const { violation, start } = refused;
      return { kind: "no-equilibrium", point, limit: name, family, violation, needed: eased.needed, start };
    }
    return refused;
  }

  /** The answer with its stall margins searched; solved again where the table had flattered. */
  #withExactMargin(floors: readonly number[], point: FullPoint, problem: FullProblem, found: SqpResult): FullOutcome {
    let asked = floors;
    let result = found;
    let best: FullTrimmed | undefined;
    let raise = 1;
    for (let attempt = 0; attempt < marginAttempts; attempt++) {
      const evaluation = problem.evaluation(result.x);
      const margins = this.#searchedMargins(evaluation);
      const wrong = margins.map((margin, i) => margin < (floors[i] as number) - marginTolerance);
      if (!wrong.some(Boolean)) best = this.#answer(point, problem, result, margins);
      const given = margins.some(
        (margin, i) =>
          (evaluation.stallMargins[i] as number) < (asked[i] as number) * (1 + 1e-4) && margin - (floors[i] as number) > largestMarginGiven,
      );
      if (best && !given) return best;
      asked = margins.map((margin, i) => {
        const table = evaluation.stallMargins[i] as number;
        return Number.isFinite(table) && Number.isFinite(margin)
          ? (table / margin) * (floors[i] as number) * (1 + marginTolerance / 4) * raise
          : (floors[i] as number) * raise;
      });
      const again = solveFrom(this.#problem(point, asked).program, { x: result.x, hessian: result.hessian });
      if (isSolution(again)) result = again;
      else if (best) break;
      // Where what the table flattered cannot be met, a little more may be.
      else raise *= 1 + largestMarginGiven;
    }
    if (best) return best;
    const stalling = problem.limits.find(({ of }) => of.kind === "stall");
    const margins = this.#searchedMargins(problem.evaluation(result.x));
    const least = Math.min(...margins.map((margin, i) => margin - (floors[i] as number)));
    const rotor = margins.findIndex((margin, i) => margin - (floors[i] as number) === least);
    return {
      kind: "no-equilibrium",
      point,
      limit: stalling?.name ?? "stall margin",
      family: "air",
      violation: -least,
      needed: { allowed: floors[rotor] as number, needed: margins[rotor] as number, quantity: "dimensionless" },
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
}
