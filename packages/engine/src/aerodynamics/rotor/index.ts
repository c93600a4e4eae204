export { type AnnularInflow, solveAnnularInflow } from "./annular-inflow.ts";
export { type AnnularLoads, type AnnularOutcome, type AnnularPoint, annularLoads, type RingLoad } from "./annular-point.ts";
export { type Articulation, type FlapAngles, type FlapStiffness, flapAngles, flapStiffness } from "./articulation.ts";
export {
  type Autorotation,
  type AutorotationCondition,
  type AutorotationTrail,
  autorotation,
  type NoAutorotation,
} from "./autorotation.ts";
export { type CollectiveForThrust, collectiveForThrust, type ThrustTarget } from "./collective-for-thrust.ts";
export { type Closeness, type Crossing, firstCrossing } from "./first-crossing.ts";
export { momentsAboutHinge } from "./flap-equations.ts";
export { factorNearGround, type GroundEffect, groundEffect } from "./ground-effect.ts";
export { type InducedInflowCondition, inducedInflow, momentumResidual } from "./induced-inflow.ts";
export {
  type InflowAndFlapOptions,
  type SolvedRotor,
  solveRotorInflowAndFlap,
  type UnsolvedRotor,
} from "./inflow-and-flap.ts";
export { type LargestThrust, largestSteadyThrust, type ThrustLimitCondition } from "./largest-steady-thrust.ts";
export type { NoOperatingPoint, OperatingGivens, OperatingPoint, OperatingSurroundings, Stream } from "./operating-givens.ts";
export { rotorOperatingPoint } from "./operating-point.ts";
export { type ElementLoad, rotorLoading } from "./rotor-loading.ts";
export type { RotorMesh } from "./rotor-mesh.ts";
export {
  type BladeStation,
  bladeAt,
  type InflowBalance,
  type InflowDistribution,
  type RadialFlow,
  type RotorModel,
  type TipLoss,
} from "./rotor-model.ts";
export { type DiscFlow, discFlow, type RotorPoint } from "./rotor-point.ts";
export { sweepRotor } from "./rotor-sweep.kernel.ts";
export {
  createRotorWorkspace,
  type RingBuffers,
  type RotorSweepResult,
  type RotorSweepState,
  type RotorWorkspace,
} from "./rotor-workspace.ts";
export { type CyclicPitch, type ShaftCoefficients, shaftCoefficients } from "./shaft-axes.ts";
export { largestSkew, type WakePlace, wakeInfluence } from "./skewed-wake.ts";
