import {
  createRotorWorkspace,
  factorNearGround,
  flapStiffness,
  groundEffect,
  inducedInflow,
  type RotorModel,
} from "../../aerodynamics/rotor/index.ts";
import type { Air } from "../../environment/atmosphere/index.ts";
import type { RotorReading } from "./model-input.ts";
import { type RotorPointInputs, rotorStateOn } from "./solution.ts";
import { type NoRotorState, RotorBench, type RotorState } from "./state.ts";

/** A rotor on the bench, as the inputs set its cyclic pitch. */
export function rotorBench({ model }: RotorReading, air: Air, inputs: RotorPointInputs): RotorBench {
  const held = { cosine: inputs.cyclicCosine, sine: inputs.cyclicSine };
  return new RotorBench(createRotorWorkspace(model), air, inputs.cyclicTrim === "no-flapping" && flapsFreely(model) ? "no-flapping" : held);
}

/** The state that one row of inputs asks for, with the bench that it was found on. */
export interface RotorFinding {
  readonly bench: RotorBench;
  readonly outcome: RotorState | NoRotorState;
}

/** Flapping [rad] and share of the induced power factor that may be left when both are corrected from state to state. */
const flapTolerance = 1e-9;
const factorTolerance = 1e-9;
const mostCorrections = 40;

/** Whether pitch relative to the tip-path plane is all that flapping depends on. */
function flapsFreely({ articulation }: RotorModel): boolean {
  const { surplus, coupling, rigid } = flapStiffness(articulation, 1);
  return surplus === 0 && coupling === 0 && !rigid;
}

/**
 * The state that one row of inputs asks for; the schema has made sure that its givens fit together.
 *
 * Cyclic pitch that takes flapping away, and the ground's part in the induced velocity, depend on the state: both are put right from
 * state to state until they stay.
 */
export function rotorFinding(bench: RotorBench, inputs: RotorPointInputs): RotorFinding {
  const { model } = bench.ws;
  const trims = inputs.cyclicTrim === "no-flapping" && !flapsFreely(model) && model.articulation.kind !== "rigid";
  const height = inputs.heightAboveGround === undefined ? undefined : inputs.heightAboveGround / model.radius;
  let tried = new RotorBench(bench.ws, bench.air, bench.setting);
  for (let correction = 0; correction < mostCorrections; correction++) {
    const outcome = rotorStateOn(tried, inputs);
    if (outcome.kind !== "solved") return { bench: tried, outcome };
    const { shaft, rotor } = outcome;
    const flapped = trims && Math.hypot(shaft.flapLongitudinal, shaft.flapLateral) >= flapTolerance;
    const held = tried.ws.model.inducedPowerFactor;
    const factor = height === undefined ? held : factorAtHeight(model.inducedPowerFactor, outcome, height);
    if (typeof factor !== "number") return { bench, outcome: factor };
    if (!flapped && Math.abs(factor - held) <= factorTolerance * held) return { bench: tried, outcome };
    const ws = { ...bench.ws, model: { ...model, inducedPowerFactor: factor } };
    tried = new RotorBench(ws, bench.air, trims ? { cosine: rotor.theta1c, sine: rotor.theta1s } : bench.setting);
  }
  const what = trims ? "cyclic pitch that takes the flapping away" : "induced velocity that the ground leaves";
  return { bench, outcome: { kind: "no-equilibrium", seek: "correction", reason: `no ${what} was found` } };
}

/** The induced power factor that stands for the ground, of a rotor whose own is `kappa`. */
function factorAtHeight(kappa: number, { rotor }: RotorState, height: number): number | NoRotorState {
  const condition = { ct: rotor.ct, mu: rotor.mu, lambdaC: rotor.lambdaC, kappa };
  const far = inducedInflow(condition);
  // Pushing down or making nothing: no image to speak of.
  const effect = groundEffect(height, far > 0 ? Math.abs(rotor.mu) / far : Number.MAX_VALUE);
  if (effect.kind === "too-low")
    return {
      kind: "no-equilibrium",
      seek: "ground effect",
      reason: `the formula for the ground's effect ends ${effect.lowestHeight} radii above it`,
    };
  return far > 0 ? factorNearGround(condition, far, effect.inducedRatio) : kappa;
}
