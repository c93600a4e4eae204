import { type Airframe, rotorStateWidth } from "../../airframe/index.ts";
import { type NonlinearProgram, type SqpResult, solveNonlinearProgram } from "../../numerics/index.ts";
import type { TrimLimit } from "../trim-problem.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";
import type { FullLimit } from "./full-limits.ts";
import type { FullNotTrimmable, FullUnresolved, LimitNeeded } from "./full-outcome.ts";
import type { FullProblem } from "./full-problem.ts";
import { isSolution, searchOptions } from "./full-search.ts";
import { attitudeIndex } from "./full-variables.ts";
import { limitMeasure } from "./limit-measure.ts";
import { withoutBound, withoutLimits } from "./relaxed-program.ts";

/** Limits of one kind, or a bound, that may be what stands in the way. */
interface Suspect {
  readonly program: NonlinearProgram;
  /** Moves a bound, which its solution always lies beyond. */
  readonly movesBound: boolean;
  read(result: SqpResult): { readonly limit: TrimLimit; readonly needed: LimitNeeded };
}

export type FullRefusal = FullNotTrimmable | FullUnresolved;

/** What easing led to: a flight within all limits after all, or how far a limit would have to be moved. */
export type Eased =
  | { readonly kind: "flies"; readonly x: Float64Array }
  | { readonly kind: "needed"; readonly limit: TrimLimit; readonly needed: LimitNeeded };

const bindingSlack = 1e-4;
const nearBound = 1e-3;
const mostSuspects = 5;
const easedIterations = 60;
/** Half the square of a violation that is none. */
const unmoved = 1e-12;

/**
 * Eases the limits of one kind after the other, those first that the nearest miss pulls hardest at, until one kind alone lets the flight
 * balance.
 *
 * @derivation least violation of some limits subject to all others
 */
export function easedLimit(conditions: FullConditions, airframe: Airframe, problem: FullProblem, nearest: SqpResult): Eased | undefined {
  for (const suspect of suspects(conditions, airframe, problem, nearest).slice(0, mostSuspects)) {
    const result = solveNonlinearProgram(suspect.program, nearest.x, { ...searchOptions, maximumIterations: easedIterations });
    if (!isSolution(result)) continue;
    if (!suspect.movesBound && (result.values[0] as number) < unmoved) return { kind: "flies", x: result.x };
    return { kind: "needed", ...suspect.read(result) };
  }
  return undefined;
}

/** What the relaxed subproblem pulls hardest at; a run that ended without contradiction is not taken for one. */
export function refusal(point: FullPoint, airframe: Airframe, problem: FullProblem, nearest: SqpResult): FullRefusal {
  const start = { x: nearest.x };
  const { violation } = nearest;
  if (nearest.kind !== "infeasible" || !Number.isFinite(violation))
    return { kind: "not-resolved", limit: "not resolved by the solver", family: "air", point, violation, start };
  const [limit] = [...pulling(problem, nearest).map(({ limit: found }) => found), ...boundsHeld(airframe, problem, nearest.x)];
  const { name, family } = limit ?? { name: "no balance of forces and moments", family: "air" };
  return { kind: "no-equilibrium", point, limit: name, family, violation, start };
}

function pulling(problem: FullProblem, result: SqpResult) {
  return problem.limits
    .map((limit, row) => ({
      limit,
      row,
      pull: Math.abs(result.multipliers[problem.equalities + row] as number),
      slack: result.values[1 + problem.equalities + row] as number,
    }))
    .filter(({ pull, slack }) => slack < bindingSlack && pull > 0)
    .sort((a, b) => b.pull - a.pull);
}

function suspects(conditions: FullConditions, airframe: Airframe, problem: FullProblem, nearest: SqpResult): readonly Suspect[] {
  const families = [...new Set(pulling(problem, nearest).map(({ limit }) => familyOf(limit)))];
  const limits = families.map((family): Suspect => {
    const rows = problem.limits.flatMap((limit, row) => (familyOf(limit) === family ? [row] : []));
    return {
      program: withoutLimits(problem.program, rows),
      movesBound: false,
      read: ({ x }) => {
        const evaluation = problem.evaluation(x);
        const broken = rows.map((row) => {
          const limit = problem.limits[row] as FullLimit;
          const { allowed, reached, quantity } = limitMeasure(limit, evaluation, conditions, airframe);
          const ratio = limit.of.kind === "stall" ? allowed / reached : reached / allowed;
          return { limit, ratio: Number.isFinite(ratio) ? ratio : 0, needed: { allowed, needed: reached, quantity } };
        });
        return broken.reduce((worst, one) => (one.ratio > worst.ratio ? one : worst));
      },
    };
  });
  const { layout } = problem;
  const bounds = boundsHeld(airframe, problem, nearest.x).map((bound): Suspect => {
    const { index, side, quantity } = bound;
    const unit = layout.units[index] as number;
    return {
      program: withoutBound(problem.program, index, side),
      movesBound: true,
      read: ({ x }) => ({
        limit: bound,
        needed: { allowed: (layout[side][index] as number) * unit, needed: (x[index] as number) * unit, quantity },
      }),
    };
  });
  return [...limits, ...bounds];
}

/** Limits that are eased together: power and current have the same cause, and parts come in pairs. */
function familyOf({ of }: FullLimit): string {
  switch (of.kind) {
    case "motor-power":
    case "motor-current":
    case "motor-voltage":
    case "block-current":
      return "drive";
    case "stall":
    case "branch":
      return "stall";
    case "lift-high":
    case "lift-low":
      return "lift";
    default:
      return of.kind;
  }
}

interface HeldBound extends TrimLimit {
  readonly index: number;
  readonly side: "lower" | "upper";
  readonly quantity: LimitNeeded["quantity"];
}

/** Unknowns at an end of their range: controls, attitude, rotor speeds. */
function boundsHeld(airframe: Airframe, { layout }: FullProblem, x: Float64Array): readonly HeldBound[] {
  const held = (index: number, name: string, family: TrimLimit["family"], quantity: LimitNeeded["quantity"]): HeldBound[] => {
    const low = layout.lower[index] as number;
    const high = layout.upper[index] as number;
    const here = x[index] as number;
    if (high <= low || (here - low >= nearBound && high - here >= nearBound)) return [];
    return [{ name, family, index, side: here - low < nearBound ? "lower" : "upper", quantity }];
  };
  const controls = airframe.controls.flatMap(({ id, what }, i) =>
    held(layout.controlAt + i, `${id.replaceAll("-", " ")} range`, "control", what === "thrust" ? "force" : "angle"),
  );
  const attitude = [
    ...held(attitudeIndex.pitch, "pitch angle", "rule", "angle"),
    ...held(attitudeIndex.roll, "roll angle", "rule", "angle"),
  ];
  const many = airframe.rotors.length > 1;
  const speeds = airframe.rotors.flatMap(({ part }, i) =>
    held(layout.rotorAt + i * rotorStateWidth, `rotor speed range${many ? `, ${part.id.replaceAll("-", " ")}` : ""}`, "strength", "speed"),
  );
  return [...controls, ...attitude, ...speeds];
}
