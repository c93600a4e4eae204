import type { Problem } from "../contract.ts";
import type { RotorPointInputs } from "./solution.ts";
import type { NoRotorState } from "./state.ts";

/** Mach number of the advancing tip at which the section law is not computed any more. */
export const largestTipMach = 0.9;

/** Why there is no answer, with the numbers. */
export function rotorProblem(failed: NoRotorState, inputs: RotorPointInputs): Problem {
  switch (failed.kind) {
    case "not-converged":
      return {
        kind: "not-converged",
        message: `Inflow and flapping could not be solved; a residual of ${failed.residual.toExponential(1)} was left after ${failed.iterations} sweeps.`,
        residual: Number.isFinite(failed.residual) ? failed.residual : null,
        iterations: failed.iterations,
      };
    case "thrust-unavailable":
      return {
        kind: "thrust-unavailable",
        message: `The rotor stalls first: its largest steady ${asked(inputs, failed.largestThrust)}.`,
        largestThrust: failed.largestThrust,
      };
    case "thrust-below-range":
      return {
        kind: "thrust-below-range",
        message: `Even at the lowest collective its ${asked(inputs, failed.smallestThrust)}.`,
        smallestThrust: failed.smallestThrust,
      };
    case "no-equilibrium":
      return inputs.shaftTorque === 0 || inputs.power === 0
        ? { kind: "no-autorotation", message: `No autorotation: ${failed.reason}.`, sought: failed.seek }
        : { kind: "no-equilibrium", message: `No equilibrium: ${failed.reason}.`, sought: failed.seek };
  }
}

function asked({ thrust, ct, lift }: RotorPointInputs, reached: number): string {
  if (ct !== undefined) return `thrust coefficient here is ${reached.toPrecision(3)}, ${ct.toPrecision(3)} was asked for`;
  const name = lift === undefined ? "thrust" : "lift";
  return `${name} here is ${reached.toFixed(1)} N, ${(lift ?? thrust ?? 0).toFixed(1)} N were asked for`;
}

/** Refused because the section law means nothing there; undefined when it does. */
export function tipMachProblem(advancingTipMach: number): Problem | undefined {
  if (advancingTipMach <= largestTipMach) return undefined;
  return {
    kind: "outside-model",
    message: `The advancing tip moves at Mach ${advancingTipMach.toFixed(2)}; the section law ends at ${largestTipMach}.`,
    advancingTipMach,
    largest: largestTipMach,
  };
}
