import { flapAngles } from "./articulation.ts";
import { type FlapEquations, flapEquations, startJacobian, startValues } from "./flap-equations.ts";
import { cyclicOf, type DiscFlow, discFlow, type RotorPoint } from "./rotor-point.ts";
import type { RotorSweepResult, RotorWorkspace } from "./rotor-workspace.ts";
import { type SmallSystemEnd, solveSmallSystem } from "./small-system.ts";

/** A rotor in steady flapping with the inflow that its thrust makes; axes and coefficients as in the sweep. */
export interface SolvedRotor extends Readonly<RotorSweepResult>, DiscFlow {
  readonly kind: "solved";
  readonly lambdaI: number;
  readonly theta1c: number;
  readonly theta1s: number;
  /** [rad]. */
  readonly coning: number;
  /** a₁: tip-path plane behind the plane normal to the shaft [rad]. */
  readonly flapLongitudinal: number;
  /** b₁: tip-path plane down on the advancing side [rad]. */
  readonly flapLateral: number;
  /** Moment on the hub over ρ π R³ (ΩR)², front up [1]. */
  readonly hubPitchMoment: number;
  /** The same, advancing side down [1]. */
  readonly hubRollMoment: number;
  /** Sweeps that it took; with annular inflow those of the rings, over the number of rings. */
  readonly sweeps: number;
}

export interface UnsolvedRotor {
  readonly kind: "not-converged";
  /** Largest of the residuals that was left: inflow over tip speed, angles in radians; not above 1. */
  readonly residual: number;
  readonly iterations: number;
}

export interface InflowAndFlapOptions {
  /** Largest residual accepted. @defaultValue 1e-10 */
  readonly tolerance?: number;
  /** @defaultValue 80 */
  readonly largestSweepCount?: number;
  /** Told how a system that converged ended. */
  ended?(ended: SmallSystemEnd): void;
}

/**
 * Mean inflow, first-harmonic flapping and (hinged blades) coning of a rotor at given collective.
 *
 *     λ_i = inducedInflow(C_T)      mean flap moment × cos ψ = 0      mean flap moment × sin ψ = 0
 *     hinged:  β₀ = γ/(a σ) × mean flap moment
 *
 * Always starts from closed forms for the point itself, so a result does not depend on what was solved before. Where two
 * solutions exist (deep stall), it is the one that the closed forms lead to.
 *
 * @source johnson-1980, ch. 5, equivalence of flapping and feathering, unchecked
 */
export function solveRotorInflowAndFlap(
  ws: RotorWorkspace,
  point: RotorPoint,
  options: InflowAndFlapOptions = {},
): SolvedRotor | UnsolvedRotor {
  const equations = flapEquations(ws, point);
  const start = startValues(equations);
  const ended = solveSmallSystem({
    size: equations.size,
    residuals: (unknowns, residuals) => equations.residuals(unknowns, residuals),
    start,
    jacobian: startJacobian(equations, start),
    largestSteps: equations.largestSteps,
    tolerance: options.tolerance ?? 1e-10,
    largestEvaluationCount: options.largestSweepCount ?? 80,
  });
  if (!ended.converged) return { kind: "not-converged", residual: Math.min(ended.residual, 1), iterations: ended.evaluations };
  options.ended?.(ended);
  return solution(ws, equations, ended.unknowns);
}

/** The state of the last residuals, whose unknowns these are. */
export function solution(ws: RotorWorkspace, equations: FlapEquations, unknowns: Float64Array): SolvedRotor {
  const lambdaI = unknowns[0] ?? 0;
  const theta1c = unknowns[1] ?? 0;
  const theta1s = unknowns[2] ?? 0;
  const flap = flapAngles({ theta1c, theta1s }, cyclicOf(equations.point), equations.stiffness.coupling);
  const { mu, lambdaC, discAngle } = discFlow(equations.point, flap.longitudinal);
  return {
    kind: "solved",
    ...ws.out,
    discAngle,
    mu,
    lambdaC,
    lambdaI,
    theta1c,
    theta1s,
    coning: ws.state.coning,
    flapLongitudinal: flap.longitudinal,
    flapLateral: flap.lateral,
    hubPitchMoment: -ws.out.momentCos,
    hubRollMoment: -ws.out.momentSin,
    sweeps: equations.effort.sweeps,
  };
}
