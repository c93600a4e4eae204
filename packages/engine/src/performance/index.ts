export { type CheapestFlight, cheapestFlight, type ModeRule, type PoweredMode, poweredModes } from "./cheapest-flight.ts";
export { ceiling } from "./envelope-ceiling.ts";
export { bestClimb } from "./envelope-climb.ts";
export { brokenAirLimit, type EnvelopeRules } from "./envelope-limits.ts";
export { borderResolution, type EnvelopePoint, envelopeLine } from "./envelope-line.ts";
export { rotorSpeedLimits } from "./envelope-rotor-speed.ts";
export { EnvelopeTrimmer, levelAt } from "./envelope-trimmer.ts";
export { type FlightRequest, type Flown, type Flyer, fullFlyer, reducedFlyer } from "./flyer.ts";
export { type FullLinePoint, fullSpeedLine, type LineFlight, straightAndLevel } from "./full-line.ts";
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
  widenedRanges,
} from "./rotor-speed-corridor.ts";
export { type LineHooks, type LinePoint, type NotFlown, type ReducedPoint, speedLine } from "./speed-line.ts";
export { type SpeedSummary, speedSummary } from "./speed-summary.ts";
export { type VerticalAutorotation, type VerticalAutorotationOutcome, verticalAutorotation } from "./vertical-autorotation.ts";
