import { descentThroughFlow } from "./axial-descent.ts";

/** What the mean induced velocity depends on; all over tip speed. */
export interface InducedInflowCondition {
  /** C_T = T/(ρ π R² (ΩR)²), of either sign [1]. */
  readonly ct: number;
  /** μ, in the plane of the disc [1]. */
  readonly mu: number;
  /** λ_c, free stream down through the disc: positive in climb [1]. */
  readonly lambdaC: number;
  /** κ, acts as a factor on C_T [1]. */
  readonly kappa: number;
}

/** Descent rates over v_h within which the law of axial descent is faded in, and forward speed over v_h that fades it out. */
export const descentFadeIn = 0.4;
export const forwardFadeOut = 1.5;
/** Below this hover speed over tip speed a rotor counts as making no thrust [1]. */
const leastHover = 1e-12;

/**
 * Mean induced velocity over tip speed, down through the disc positive [1].
 *
 *     climb, hover, forward flight   λ_i √(μ² + (λ_c + λ_i)²) = κ |C_T|/2
 *     axial descent                  λ_i w(λ_c) = κ |C_T|/2, w from `descentThroughFlow`
 *
 * In between, the square of the flow through the disc is a weighted mean of both, which is once differentiable throughout and
 * has one root. The descent law rules below forward speeds of 1.5 v_h, with v_h = √(κ|C_T|/2), and fades out towards it; it fades
 * in over the first 0.4 v_h of descent. In hover λ_i = √(κ C_T/2). A rotor that pushes down is the same one upside down.
 * At C_T 0 the result is 0. The blend is our own; within the ring state the law is an average of an unsteady flow.
 *
 * @source leishman-2006, momentum theory in forward flight and descent, unchecked
 * @derivation the blend of through-flow squares
 */
export function inducedInflow(condition: InducedInflowCondition): number {
  if (condition.ct === 0) return 0;
  const { sign, hover, axial, fixed, free } = throughFlow(condition);
  if (hover < leastHover) {
    const stream = Math.hypot(condition.mu, condition.lambdaC);
    return stream > leastHover ? (condition.kappa * condition.ct) / (2 * stream) : sign * hover;
  }
  return sign * hover * inducedRatio(fixed / (hover * hover), free, axial);
}

/**
 * How far a mean induced velocity is from the momentum that the thrust needs: λ_i × flow through the disc − κ C_T/2 [1].
 *
 * The same law as `inducedInflow`, whose result makes it 0, in a form whose slopes stay finite at zero thrust: for solvers.
 *
 * @param lambdaI λ_i, mean induced velocity over tip speed [1]
 * @derivation the equation of `inducedInflow` before it is solved
 */
export function momentumResidual(condition: InducedInflowCondition, lambdaI: number): number {
  return lambdaI * flowThroughDisc(condition, lambdaI) - (condition.kappa * condition.ct) / 2;
}

/**
 * Flow through the disc that carries its momentum, over tip speed, never negative [1].
 *
 * @param lambdaI λ_i, mean induced velocity over tip speed [1]
 * @derivation the law of `inducedInflow`
 */
export function flowThroughDisc(condition: InducedInflowCondition, lambdaI: number): number {
  const { fixed, free } = throughFlow(condition);
  const total = condition.lambdaC + lambdaI;
  return Math.sqrt(fixed + free * total * total);
}

/** Flow through a disc as it depends on the induced velocity: √(fixed + free (λ_c + λ_i)²). */
export interface ThroughFlow {
  readonly sign: number;
  /** λ_h [1]. */
  readonly hover: number;
  /** λ_c/λ_h in the sense of the thrust [1]. */
  readonly axial: number;
  /** Square of the flow through the disc that does not depend on λ_i [1]. */
  readonly fixed: number;
  /** Weight of (λ_c + λ_i)² in it [1]. */
  readonly free: number;
}

/** What `inducedInflow` takes to flow through the disc. @derivation its law */
export function throughFlow({ ct, mu, lambdaC, kappa }: InducedInflowCondition): ThroughFlow {
  const sign = ct < 0 ? -1 : 1;
  const hover = Math.sqrt((kappa * Math.abs(ct)) / 2);
  // Without thrust there is no hover speed to compare with, and nothing but the free stream passes through.
  if (hover < leastHover) return { sign, hover, axial: 0, fixed: mu * mu, free: 1 };
  const axial = (sign * lambdaC) / hover;
  const share = smoothStep(-axial / descentFadeIn) * (1 - smoothStep(Math.abs(mu) / hover / forwardFadeOut));
  const through = share > 0 ? hover * descentThroughFlow(axial) : 0;
  return { sign, hover, axial, fixed: mu * mu + share * through * through, free: 1 - share };
}

/** The root v > 0 of v² (fixed + free (axial + v)²) = 1: Newton within a bracket that shrinks, so it cannot fail. */
function inducedRatio(fixed: number, free: number, axial: number): number {
  let low = 0;
  // At `high` the left side is at least 1 whatever the sign of the axial flow.
  let high = Math.max(1, fixed > 0 ? 1 / Math.sqrt(fixed) : Number.POSITIVE_INFINITY);
  if (free > 0) high = Math.min(high, Math.abs(axial) + 1 / Math.sqrt(free));
  let v = Math.min(high, 1 / Math.sqrt(fixed + free * axial * axial + 1));
  for (let iteration = 0; iteration < 80; iteration++) {
    const total = axial + v;
    const inner = fixed + free * total * total;
    const residual = v * v * inner - 1;
    if (residual > 0) high = v;
    else low = v;
    const slope = 2 * v * (inner + free * v * total);
    const newton = v - residual / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - v) <= 1e-15 * next) return next;
    v = next;
  }
  return v;
}

/** 0 up to 0, 1 from 1 on, a cubic between. @derivation plain */
export function smoothStep(t: number): number {
  if (t <= 0) return 0;
  return t >= 1 ? 1 : t * t * (3 - 2 * t);
}
