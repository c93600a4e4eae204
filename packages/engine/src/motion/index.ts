export type { ControlFault } from "./actuators.ts";
export {
  type LateralDerivatives,
  type LongitudinalDerivatives,
  lateralMotion,
  longitudinalMotion,
  type SteadyFlight,
} from "./aeroplane-derivatives.ts";
export { type EulerAngles, eulerAngles } from "./attitude.ts";
export {
  type AeroplaneReference,
  type LateralCoefficients,
  type LongitudinalCoefficients,
  lateralOf,
  longitudinalOf,
} from "./coefficient-derivatives.ts";
export { type ControlledFlight, controlledFlight, controlStep } from "./controlled-flight.ts";
export type { EnergyState } from "./energy-balance.ts";
export type { FlightDynamics, WindField } from "./flight-dynamics.ts";
export type {
  FlightEvent,
  FlightSample,
  FlightSimulation,
  FlightTrace,
  SimulationOptions,
} from "./flight-simulation.ts";
export { type DiscreteGust, discreteGust } from "./gusts.ts";
export type { LinearMotion, LinearState, Mode, ModeGroup, StateKind } from "./linear-motion.ts";
export { type SplitMotion, splitMotion, withFollowing, withHeld } from "./linear-reduction.ts";
export { type LinearResponse, linearResponse } from "./linear-response.ts";
export { type Linearisation, linearise } from "./linearisation.ts";
export {
  extremesOf,
  goalOf,
  outsideBand,
  pitchExcursion,
  type RecoveryBand,
  type RecoveryGoal,
  recoveryTime,
  usualBand,
} from "./manoeuvres.ts";
export { modesOf } from "./modes.ts";
export type { BodyVector, MovingAircraft, MovingControl, MovingLoads, MovingRotor, MovingRotorLoads } from "./moving-aircraft.ts";
export type { RateOfChange } from "./multistep.ts";
export type { ControllerGains, ReferenceController } from "./reference-controller.ts";
export { bodyState } from "./rigid-body.ts";
export type { RotorDrive } from "./rotor-drive.ts";
export { flyTransition, type TransitionSample, type TransitionTrace } from "./transition-flight.ts";
export { type PlanKnot, referenceAt, type TransitionPlan, type TransitionWay, transitionPlan } from "./transition-plan.ts";
export { type MovingFlight, movingFlight } from "./trimmed-flight.ts";
