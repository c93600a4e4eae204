export { type FullConditions, type FullPoint, runningLines } from "./full-conditions.ts";
export {
  type FullNotTrimmable,
  type FullOutcome,
  type FullStart,
  type FullTrimmed,
  type FullUnresolved,
  fullObjective,
  type LimitNeeded,
} from "./full-outcome.ts";
export { type FullEvaluation, referenceSize } from "./full-problem.ts";

export { FullTrimmer } from "./full-trim.ts";
