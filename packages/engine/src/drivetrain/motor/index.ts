export { type ElectricMotor, type MotorState, motorState } from "./electric-motor.ts";
