export { cubicWeights } from "./cubic-weights.ts";
export { solveLinearInPlace } from "./dense-linear.ts";
export { type EigenSystem, eigenSystem } from "./eigenvalues.ts";
export { border, lineMinimum } from "./line-minimum.ts";
export type { NonlinearProgram } from "./nonlinear-program.ts";
export { piecewiseLinear } from "./piecewise-linear.ts";
export { SequentialQuadratic, type SqpOptions, type SqpResult, solveNonlinearProgram } from "./sequential-quadratic.ts";
