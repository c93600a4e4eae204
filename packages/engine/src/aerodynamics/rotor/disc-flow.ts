import { descentFadeIn, forwardFadeOut, inducedInflow, smoothStep, throughFlow } from "./induced-inflow.ts";
import type { RotorSweepState } from "./rotor-workspace.ts";

/** What the disc as a whole has to say to the balance of its rings. */
export interface DiscFlow {
  /** C_T of the disc [1]. */
  readonly ct: number;
  /** Flow through the disc: √(fixed + free (λ_c + λ_i)²), as `inducedInflow` has it [1]. */
  readonly fixed: number;
  readonly free: number;
  /** λ_i of the disc, and the flow through it that goes with it [1]. */
  readonly lambdaI: number;
  readonly through: number;
  /** Share of the disc's induced velocity, instead of the ring's own balance, 0 to 1 [1]. */
  readonly even: number;
  /** Share of the flow by the ring's own thrust, instead of the disc's, in the rest of it, 0 to 1 [1]. */
  readonly ringwise: number;
}

/** Rates of descent over v_h: between the first two flow is by rings again, from the third on thrust is, fully so 1 later [1]. */
const ringsBegin = 0.6;
const ringsRule = 1.4;
const windmillBegins = 2;

/** A disc whose rings are alone: climb, hover, forward flight, fast descent. */
export const ringsAlone: DiscFlow = { ct: 0, fixed: 0, free: 1, lambdaI: 0, through: 0, even: 0, ringwise: 1 };

/**
 * What a disc says to its rings at a thrust.
 *
 * Nothing in climb, hover, forward flight above 1.5 v_h and descent faster than 3 v_h, where there are streamtubes to keep momentum in.
 * From 0.4 to 2 v_h of descent without forward speed every ring has the induced velocity of the disc; once differentiable between.
 *
 * @param ct C_T of the disc [1]
 * @derivation the fading of `inducedInflow`, and out again where momentum theory holds; chosen
 */
export function discFlow({ mu, lambdaC }: RotorSweepState, ct: number): DiscFlow {
  const hover = Math.sqrt(Math.abs(ct) / 2);
  if (ct * lambdaC >= 0) return ringsAlone;
  const descent = Math.abs(lambdaC) / hover;
  const upright = 1 - smoothStep(Math.abs(mu) / hover / forwardFadeOut);
  const condition = { ct, mu, lambdaC, kappa: 1 };
  const { fixed, free } = throughFlow(condition);
  const lambdaI = inducedInflow(condition);
  return {
    ct,
    fixed,
    free,
    lambdaI,
    through: ct / (2 * lambdaI),
    even: smoothStep(descent / descentFadeIn) * (1 - smoothStep(descent - windmillBegins)) * upright,
    ringwise: 1 - upright * (1 - smoothStep((descent - ringsBegin) / (ringsRule - ringsBegin))),
  };
}

/** True where the disc has no say. */
export function isAlone(flow: DiscFlow): boolean {
  return flow.even === 0 && flow.ringwise === 1;
}
