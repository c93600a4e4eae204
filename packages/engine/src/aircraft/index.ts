export type { BatteryDefinition } from "./battery-part.ts";
export type { BodyPart } from "./body-part.ts";
export { type Control, type ControlRange, controlRange } from "./control.ts";
export type { ControlPart } from "./control-part.ts";
export { type AircraftDefinition, aircraftDefinition } from "./definition.ts";
export type { DriveLine } from "./drive-line.ts";
export type { ElectricalNetwork } from "./electrical-network.ts";
export type { InterferencePart } from "./interference-part.ts";
export { hotelPower, type Loading, largestPayload, recordLoading, standardGravity, takeoffMass } from "./loading.ts";
export type { PayloadRecord } from "./loading-records.ts";
export { blockPlace, type MassItem, type MassProperties, massItems, massProperties } from "./mass-properties.ts";
export type { MotorDefinition } from "./motor-part.ts";
export { type ConsumerPower, emergencyPower, type NetworkPower, type NetworkUse, networkPower } from "./network-power.ts";
export type { Place, Size } from "./placement.ts";
export type { PropellerPart } from "./propeller-part.ts";
export type {
  BodyDrag,
  FinDefinition,
  PropellersDefinition,
  ReducedAircraft,
  RotorControls,
  RotorDrive,
  TailplaneDefinition,
  WingDefinition,
} from "./reduced-aircraft.ts";
export { isNotReducible, type NotReducible, reducedAircraft } from "./reduction.ts";
export type { RotorPart } from "./rotor-part.ts";
export { withDragIncrement } from "./section-part.ts";
export { type SurfacePart, type SurfaceStall, stallOf } from "./surface-part.ts";
export { type HangingAttitude, hangingAttitude, hangingCentre } from "./suspension.ts";
