export { bodyFlight } from "./flight-path.ts";
export { type FullConditions, type FullPoint, runningLines } from "./full-conditions.ts";
export { type FullEvaluation, referenceSize } from "./full-problem.ts";
export {
  type FullNotTrimmable,
  type FullOutcome,
  type FullStart,
  type FullTrimmed,
  FullTrimmer,
  type FullUnresolved,
  fullObjective,
} from "./full-trim.ts";
