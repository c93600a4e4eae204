export { type Wind, type WindProfile, type WindVelocity, windSpeedAt, windVelocityAt } from "./wind.ts";
export { airspeedForGroundSpeed, type TrackKeeping, windTriangle } from "./wind-triangle.ts";
