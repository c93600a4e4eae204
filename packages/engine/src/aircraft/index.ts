export { type Control, type ControlRange, controlRange } from "./control.ts";
export {
  type AircraftDefinition,
  aircraftDefinition,
  type BatteryDefinition,
  type MotorDefinition,
  type PayloadRecord,
  type PropellersDefinition,
  type RotorDefinition,
  type WingDefinition,
} from "./definition.ts";
export { hotelPower, type Loading, largestPayload, recordLoading, standardGravity, takeoffMass } from "./loading.ts";
export type { Place } from "./placement.ts";
