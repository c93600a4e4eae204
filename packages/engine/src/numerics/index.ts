export { piecewiseLinear } from "./piecewise-linear.ts";
