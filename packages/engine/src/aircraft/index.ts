export type { BodyPart } from "./body-part.ts";
export { type Control, type ControlRange, controlRange } from "./control.ts";
export type { ControlPart } from "./control-part.ts";
// Format 2 under a passing name until every reader has moved to it.
export { type AircraftDefinition as WholeAircraft, aircraftDefinition as wholeAircraft } from "./definition.ts";
export type { DriveLine } from "./drive-line.ts";
export type { InterferencePart } from "./interference-part.ts";
export { hotelPower, type Loading, largestPayload, recordLoading, standardGravity, takeoffMass } from "./loading.ts";
export { blockPlace, combinedMass, type MassItem, type MassProperties, massItems, massProperties } from "./mass-properties.ts";
export type { Place, Size } from "./placement.ts";
export type { PropellerPart } from "./propeller-part.ts";
export {
  type AircraftDefinition,
  aircraftDefinition,
  type BatteryDefinition,
  type MotorDefinition,
  type PayloadRecord,
  type PropellersDefinition,
  type RotorDefinition,
  type WingDefinition,
} from "./reduced-aircraft.ts";
export type { RotorPart } from "./rotor-part.ts";
export type { SurfacePart } from "./surface-part.ts";
export { type HangingAttitude, hangingAttitude, hangingCentre } from "./suspension.ts";
