import type { Airframe } from "../../airframe/index.ts";
import type { SqpResult } from "../../numerics/index.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";
import type { FullTrimmed } from "./full-outcome.ts";
import type { FullEvaluation, FullProblem } from "./full-problem.ts";
import { tipSpeedBounds } from "./full-variables.ts";
import { limitMeasure } from "./limit-measure.ts";
import { rangeShares } from "./range-shares.ts";

/** An answer made of a solution. @param margins searched stall margins; from the table when absent */
export function fullAnswer(
  conditions: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  problem: FullProblem,
  result: SqpResult,
  margins: readonly number[] | undefined,
): FullTrimmed {
  const table = problem.evaluation(result.x);
  const stallMargins = margins ?? table.stallMargins;
  const evaluation: FullEvaluation = { ...table, stallMargins };
  const shares = problem.limits.flatMap((limit) => {
    if (limit.of.kind === "branch" || limit.of.kind === "clutch") return [];
    const { allowed, reached } = limitMeasure(limit, evaluation, conditions, airframe);
    const share = limit.of.kind === "stall" ? allowed / reached : reached / allowed;
    return [{ limit: { name: limit.name, family: limit.family }, share: Math.max(0, share) }];
  });
  return {
    kind: "trimmed",
    point,
    evaluation: table,
    flown: {
      mode: point.mode,
      airspeed: Math.hypot(table.airspeed, table.climbRate),
      forwardSpeed: table.airspeed,
      climbRate: table.climbRate,
      electricPower: table.loads.electricPower,
    },
    stallMargins,
    limits: [...shares, ...rangeShares(airframe, problem.layout, result.x)],
    start: { x: result.x, hessian: result.hessian },
    iterations: result.iterations,
    tipSpeedHeld: airframe.rotors.some((_, i) => tipSpeedBounds(conditions, point, airframe, i, problem.running).held),
  };
}
