export { type CheapestFlight, cheapestFlight, type ModeRule, type PoweredMode, poweredModes } from "./cheapest-flight.ts";
export { coarseFullSpeedLine, type FullLinePoint, fullSpeedLine, type LineFlight, straightAndLevel } from "./full-line.ts";
export { type Glide, type GlidePolar, glidePolar } from "./gliding.ts";
export { commonReserve, type LoadingPerformance, loadingPerformance, type ReservePolicy } from "./loading-performance.ts";
export { coarseSpeedLine, type LineHooks, type LinePoint, speedLine } from "./speed-line.ts";
export { type SpeedSummary, speedSummary } from "./speed-summary.ts";
export { type VerticalAutorotation, type VerticalAutorotationOutcome, verticalAutorotation } from "./vertical-autorotation.ts";
