export { type CheapestFlight, cheapestFlight, type ModeRule, type PoweredMode, poweredModes } from "./cheapest-flight.ts";
export { type Ceiling, type CeilingSearch, ceiling } from "./envelope-ceiling.ts";
export { type BestClimb, bestClimb } from "./envelope-climb.ts";
export { brokenAirLimit, type EnvelopeRules, furtherLimits, type LimitShare } from "./envelope-limits.ts";
export { borderResolution, type EnvelopeEdge, type EnvelopeLine, type EnvelopePoint, envelopeLine } from "./envelope-line.ts";
export { type RotorSpeedLimits, rotorSpeedLimits } from "./envelope-rotor-speed.ts";
export { EnvelopeTrimmer, levelAt } from "./envelope-trimmer.ts";
export { type FlightRequest, type Flown, type Flyer, fullFlyer, reducedFlyer } from "./flyer.ts";
export { coarseFullSpeedLine, type FullLinePoint, fullSpeedLine, type LineFlight, straightAndLevel } from "./full-line.ts";
export { fullVerticalAutorotation } from "./full-vertical-autorotation.ts";
export { type Glide, type GlidePolar, glidePolar } from "./gliding.ts";
export { commonReserve, type LoadingPerformance, loadingPerformance, type ReservePolicy } from "./loading-performance.ts";
export {
  type CorridorEnd,
  type CorridorFlight,
  type CorridorPoint,
  type CorridorRange,
  rotorSpeedRange,
  sharedRange,
} from "./rotor-speed-corridor.ts";
export { coarseSpeedLine, type LineHooks, type LinePoint, type NotFlown, speedLine } from "./speed-line.ts";
export { type SpeedSummary, speedSummary } from "./speed-summary.ts";
export { type VerticalAutorotation, type VerticalAutorotationOutcome, verticalAutorotation } from "./vertical-autorotation.ts";
export { windingTemperature } from "./winding-temperature.ts";
