export { airframeBalance, type Balance } from "./airframe-loads.ts";
export { trim } from "./cold-trim.ts";
export type { ControlUse, FlightConditions, FlightMode, FlightPoint, LossModel } from "./conditions.ts";
export {
  type FullConditions,
  type FullEvaluation,
  type FullNotTrimmable,
  type FullOutcome,
  type FullPoint,
  type FullStart,
  type FullTrimmed,
  FullTrimmer,
  type FullUnresolved,
  fullObjective,
  referenceSize,
  runningLines,
} from "./full/index.ts";
export { tipSpeedRange } from "./governor.ts";
export { startingStates, withLeftPropeller } from "./starting-states.ts";
export { type NotTrimmable, objective, type Trimmed, type TrimOutcome, trimFrom, withSearchedMargin } from "./trim.ts";
export { type TrimEvaluation, type TrimLimit, trimLimits } from "./trim-problem.ts";
export { createTrimRotor, type TrimRotor } from "./trim-rotor.ts";
export type { TrimStart } from "./trim-variables.ts";
