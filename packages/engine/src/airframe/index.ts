export { aircraftRotor } from "./aircraft-rotor.ts";
export { Airframe } from "./airframe.ts";
export {
  type AirframeConditions,
  type AirframeLoads,
  type AirframeMass,
  type AirframeMotion,
  type PartLoads,
  rotorStateWidth,
  type SurfaceReading,
} from "./airframe-loads.ts";
export type { Vector } from "./axes.ts";
export type { AirframeControl } from "./control-map.ts";
export type { DrivePower, LossModel } from "./drive-power.ts";
export type { ElementRotor } from "./element-rotor.ts";
export type { RotorLoads, RotorSetting } from "./rotor-loads.ts";
export type { PropellerLoads } from "./thrust-propeller.ts";
