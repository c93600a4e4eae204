import {
  type NonlinearProgram,
  SequentialQuadratic,
  type SqpOptions,
  type SqpResult,
  solveNonlinearProgram,
} from "../../numerics/index.ts";
import type { FullStart } from "./full-outcome.ts";

/** The best that starts led to, and the nearest miss where they led to nothing. */
export interface Found {
  readonly best?: SqpResult;
  readonly nearest?: SqpResult;
}

const feasibility = 1e-8;
const warmIterations = 40;
const coldIterations = 100;
/** Power and balance are nearly linear in most unknowns, in the solver's units. */
const firstCurvature = 0.003;
/** In the merit function: limits that cost next to nothing are kept all the same. */
const leastPrice = 0.1;
export const searchOptions: SqpOptions = { feasibilityTolerance: feasibility, firstCurvature, leaveOutSlack: true, leastPrice };

/** Iterations that every start is given before half of them are dropped, twice. */
const firstRound = 4;
const secondRound = 4;
/** Merit of a start on the way: objective and this much for each unit of violation. */
const violationPrice = 2;
/** A start this much dearer than the best answer cannot better it any more [1]. */
const outOfReach = 0.04;
/** Two searches this near to each other, in the solver's units, go to the same place. */
const samePlace = 0.4;

export function isSolution(result: SqpResult): boolean {
  return result.kind === "converged" && result.violation < feasibility * 100;
}

/** From a neighbour's curvature first; where that leads nowhere, afresh from the same place. */
export function solveFrom(program: NonlinearProgram, start: FullStart): SqpResult {
  if (start.hessian) {
    const warm = solveNonlinearProgram(program, start.x, { ...searchOptions, maximumIterations: warmIterations, hessian: start.hessian });
    if (warm.kind === "converged") return warm;
  }
  return solveNonlinearProgram(program, start.x, { ...searchOptions, maximumIterations: coldIterations });
}

/** Every start to its end. */
export function searchAll(program: NonlinearProgram, starts: readonly FullStart[]): Found {
  let found: Found = {};
  for (const start of starts) found = merged(found, solveFrom(program, start));
  return found;
}

/**
 * Many starts a few steps each, the more promising half a few more, and to the end those that may still lead to less than what is found.
 * Where none of them leads anywhere the others are followed too.
 *
 * @param follow every one: none is dropped before its end is in sight
 */
export function searchWidely(program: NonlinearProgram, starts: readonly FullStart[], follow: "promising" | "every"): Found {
  let field = starts.map(({ x }) => new SequentialQuadratic(program, x, searchOptions));
  const dropped: SequentialQuadratic[] = [];
  for (const iterations of [firstRound, secondRound]) {
    for (const search of field) search.advance(iterations);
    field.sort((a, b) => prospect(a) - prospect(b));
    const kept = follow === "every" ? field.length : Math.ceil(field.length / 2);
    dropped.unshift(...field.slice(kept));
    field = field.slice(0, kept);
  }
  let found: Found = {};
  for (const search of [...field, ...dropped]) {
    const { best } = found;
    if (best && (dropped.includes(search) || hopeless(search, best))) continue;
    found = merged(found, search.advance(coldIterations) ?? search.result());
  }
  return found;
}

function prospect(search: SequentialQuadratic): number {
  return search.objective + violationPrice * search.violation;
}

function hopeless(search: SequentialQuadratic, best: SqpResult): boolean {
  const value = best.values[0] as number;
  if (search.objective - violationPrice * search.violation > value + outOfReach * Math.abs(value)) return true;
  return search.x.every((at, i) => Math.abs(at - (best.x[i] as number)) < samePlace);
}

/** Two misses this alike are one, and the one that ended in a contradiction tells what it is [1]. */
const sameMiss = 1.1;

function merged(found: Found, result: SqpResult): Found {
  if (isSolution(result)) {
    const better = found.best === undefined || (result.values[0] as number) < (found.best.values[0] as number) - 1e-9;
    return better ? { ...found, best: result } : found;
  }
  const { nearest } = found;
  if (nearest === undefined) return { ...found, nearest: result };
  const handicap = (miss: SqpResult) => miss.violation * (miss.kind === "infeasible" ? 1 : sameMiss);
  return handicap(result) < handicap(nearest) ? { ...found, nearest: result } : found;
}
