export { finiteLiftSlope } from "./finite-lift-slope.ts";
export { type FiniteWing, type WingCoefficients, wingCoefficients } from "./finite-wing.ts";
export { flapEffect, type WingFlap } from "./flap.ts";
export { type LiftingLine, liftingLine } from "./lifting-line.ts";
export type { WingCondition } from "./lifting-line-solution.ts";
export { LiftingLineWing } from "./lifting-line-wing.ts";
export { attachedPolarPoint, largestLiftOf, type PolarWing, polarWingPoint, wingWithLargestLift } from "./polar-wing.ts";
export { meanAerodynamicChord, type WingPlanform } from "./wing-planform.ts";
export type { WingPoint, WingStation } from "./wing-point.ts";
