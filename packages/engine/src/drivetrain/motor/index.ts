export { type ElectricMotor, type MotorState, motorState } from "./electric-motor.ts";
export { type LoadCurve, loadTorque } from "./load-curve.ts";
export {
  type GearStage,
  type MotorController,
  type MotorDefinition,
  type NoLoadCurrent,
  totalRatio,
  windingResistance,
} from "./motor-definition.ts";
export { type HeatingConditions, type PointHeating, pointHeating, usualRoot } from "./motor-heat.ts";
export type { MotorPoint } from "./motor-point.ts";
export {
  continuousRating,
  fullDutyPoint,
  idlePoint,
  largestAtFullDuty,
  type MotorRating,
  shortRating,
  stallCurrent,
} from "./motor-ratings.ts";
export { type MotorFinding, type MotorHeld, type MotorRoot, motorStates } from "./motor-search.ts";
export type { MotorThermal } from "./winding-heat.ts";
