export { bladePropeller, type PropellerBlades, type PropellerStation, propellerRotor } from "./blade-propeller.ts";
export { foldedDragArea } from "./folded-drag.ts";
export { helicalPitchAngle } from "./helical-pitch.ts";
export { measuredPropeller } from "./measured-propeller.ts";
export { type MomentumPropeller, type PropellerState, propellerState } from "./momentum-propeller.ts";
export { momentumSource } from "./momentum-source.ts";
export {
  type PropellerCoefficients,
  propellerCoefficients,
  propellerPowerPerRotor,
  propellerThrustPerRotor,
} from "./propeller-coefficients.ts";
export { type PropellerMapRow, propellerMap } from "./propeller-map.ts";
export type {
  BladeRing,
  NoPropellerLoads,
  PropellerCondition,
  PropellerLoads,
  PropellerSource,
} from "./propeller-source.ts";
export { largestTipMach, type RateFound, type RateStream, type RateTarget, rotationRateFor } from "./rotation-rate-search.ts";
