export { type FiniteWing, type WingCoefficients, wingCoefficients } from "./finite-wing.ts";
