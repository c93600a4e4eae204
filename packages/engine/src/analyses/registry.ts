import type { Analysis } from "./contract.ts";

/** Every analysis of the house, in the order of the questions. One line each. */
export const analyses: readonly Analysis[] = [];
