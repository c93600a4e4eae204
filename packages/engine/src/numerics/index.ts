export { solveLinearInPlace } from "./dense-linear.ts";
export { border, goldenSection } from "./golden-section.ts";
export { piecewiseLinear } from "./piecewise-linear.ts";
export { type NonlinearProgram, type SqpOptions, type SqpResult, solveNonlinearProgram } from "./sequential-quadratic.ts";
