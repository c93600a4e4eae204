export { type AtmosphericCondition, atmosphereAt } from "./atmosphere-at.ts";
export { type Air, type AirState, moistAir } from "./moist-air.ts";
export { densityAltitude, standardAltitudeRange, standardPressure, standardTemperature } from "./standard-atmosphere.ts";
