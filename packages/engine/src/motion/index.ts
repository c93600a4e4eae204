export {
  type LateralDerivatives,
  type LongitudinalDerivatives,
  lateralMotion,
  longitudinalMotion,
  type SteadyFlight,
} from "./aeroplane-derivatives.ts";
export {
  type AeroplaneReference,
  type LateralCoefficients,
  type LongitudinalCoefficients,
  lateralOf,
  longitudinalOf,
} from "./coefficient-derivatives.ts";
export { type LinearResponse, linearResponse } from "./linear-response.ts";
export type { ModeGroup } from "./mode-names.ts";
export { type LinearMotion, type LinearState, type Mode, modesOf, type StateKind } from "./modes.ts";
