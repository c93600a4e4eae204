import { inducedInflow, momentumResidual } from "./induced-inflow.ts";
import { foreAftGradient } from "./inflow-distribution.kernel.ts";
import { discFlow, type RotorPoint } from "./rotor-point.ts";
import { sweepRotor } from "./rotor-sweep.kernel.ts";
import type { RotorWorkspace } from "./rotor-workspace.ts";

/** The balance of a rotor's inflow, flapping and coning. Unknowns: λ_i, θ_1c, θ_1s and, for hinged blades, β₀. */
export interface FlapEquations {
  readonly point: RotorPoint;
  readonly workspace: RotorWorkspace;
  readonly size: number;
  readonly hinged: boolean;
  /** γ/(a σ), 0 for a teeter [1]. */
  readonly coningPerMoment: number;
  /** σ a/2 with the compressibility factor at 0.75 R [1/rad]. */
  readonly halfSlope: number;
  /** What the momentum residual is divided by to be an inflow: flow through the disc of the start, and blade damping [1]. */
  readonly momentumScale: number;
  readonly largestSteps: readonly number[];
  residuals(unknowns: Float64Array, residuals: Float64Array): void;
}

/**
 * The equations of one point, scaled so that each residual is an inflow over tip speed or an angle.
 *
 * @derivation moments divided by their slope over pitch in hover, (σ a/2)/8
 */
export function flapEquations(ws: RotorWorkspace, point: RotorPoint): FlapEquations {
  const { model, mesh, law, state, out } = ws;
  const hinged = model.articulation.kind === "hinged";
  const machAtThreeQuarters = Math.min((0.75 * point.tipSpeed) / point.air.speedOfSound, 0.9);
  const halfSlope = Math.max((mesh.solidity * law.liftSlope) / 2 / Math.sqrt(1 - machAtThreeQuarters ** 2), 1e-9);
  const lockNumber = model.articulation.kind === "hinged" ? model.articulation.lockNumber : 0;
  const coningPerMoment = lockNumber / Math.max(law.liftSlope * mesh.solidity, 1e-9);
  const momentumScale = point.airspeed / point.tipSpeed + 0.05 + (model.inducedPowerFactor * halfSlope) / 4;
  state.theta0 = point.collective;
  state.tipSpeed = point.tipSpeed;
  state.speedOfSound = point.air.speedOfSound;
  state.kinematicViscosity = point.air.dynamicViscosity / point.air.density;
  state.coning = model.precone;
  return {
    point,
    workspace: ws,
    size: hinged ? 4 : 3,
    hinged,
    coningPerMoment,
    halfSlope,
    momentumScale,
    largestSteps: [0.03, 0.06, 0.06, 0.06],
    residuals(unknowns, residuals) {
      const flow = discFlow(point, unknowns[2] as number);
      state.mu = flow.mu;
      state.lambdaC = flow.lambdaC;
      state.lambdaI = unknowns[0] as number;
      state.theta1c = unknowns[1] as number;
      state.theta1s = unknowns[2] as number;
      if (hinged) state.coning = unknowns[3] as number;
      sweepRotor(ws, state);
      const condition = { ct: out.ct, mu: flow.mu, lambdaC: flow.lambdaC, kappa: model.inducedPowerFactor };
      residuals[0] = momentumResidual(condition, state.lambdaI) / momentumScale;
      residuals[1] = (out.momentCos * 8) / halfSlope;
      residuals[2] = (out.momentSin * 8) / halfSlope;
      if (hinged) residuals[3] = state.coning - coningPerMoment * out.meanFlapMoment;
    },
  };
}

/**
 * Closed forms for a blade with straight lift and small angles; inflow by damped repetition.
 *
 *     C_T = (σ a/2) (θ₀ (1/3 + μ²/2) + μ θ_1s/2 − λ/2)      θ_1s = −(8 μ/3)(θ₀ − 3 λ/4)/(1 + 3 μ²/2)
 *     θ_1c = (λ_i k_x + 4 μ β₀/3)/(1 + μ²/2)                β₀ = γ (θ₀/8 (1 + μ²) − λ/6)
 *
 * @source gessow-myers-1952, ch. 8, closed forms of flapping, unchecked
 */
export function startValues(equations: FlapEquations): Float64Array {
  const { point, workspace, halfSlope } = equations;
  const model = workspace.model;
  const largestThrust = 0.2 * workspace.mesh.solidity;
  let theta1s = 0;
  let lambdaI = 0;
  let flow = discFlow(point, 0);
  for (let repetition = 0; repetition < 10; repetition++) {
    const mu = Math.min(flow.mu, 1.5);
    const lambda = Math.min(Math.max(flow.lambdaC + lambdaI, -0.3), 0.3);
    const flapped = (-(8 / 3) * mu * (point.collective - 0.75 * lambda)) / (1 + 1.5 * mu * mu);
    theta1s = (theta1s + Math.min(Math.max(flapped, -0.4), 0.4)) / 2;
    flow = discFlow(point, theta1s);
    const straight = halfSlope * (point.collective * (1 / 3 + (mu * mu) / 2) + (mu * theta1s) / 2 - lambda / 2);
    const ct = Math.min(Math.max(straight, -largestThrust), largestThrust);
    lambdaI = (lambdaI + inducedInflow({ ct, mu: flow.mu, lambdaC: flow.lambdaC, kappa: model.inducedPowerFactor })) / 2;
  }
  const { mu } = flow;
  const lambda = flow.lambdaC + lambdaI;
  const gradient = lambdaI * foreAftGradient(workspace.inflowKind, mu, lambda);
  const lockNumber = equations.coningPerMoment * 2 * halfSlope;
  const hingedConing = lockNumber * ((point.collective * (1 + mu * mu)) / 8 - lambda / 6);
  const coning = equations.hinged ? Math.min(Math.max(hingedConing, -0.1), 0.3) : model.precone;
  const theta1c = (gradient + (4 / 3) * mu * coning) / (1 + 0.5 * mu * mu);
  const start = new Float64Array(equations.size);
  start[0] = lambdaI;
  start[1] = theta1c;
  start[2] = theta1s;
  if (equations.hinged) start[3] = coning;
  return start;
}

/**
 * Slopes of the residuals by the same closed forms, row by row.
 *
 * @derivation differentiation of the closed forms of `startValues`; with the shaft angle given, the disc follows θ_1s
 */
export function startJacobian(equations: FlapEquations, start: Float64Array): Float64Array {
  const { point, workspace, halfSlope, size } = equations;
  const flow = discFlow(point, start[2] as number);
  const mu = flow.mu;
  const shaft = point.angle.kind === "shaft" ? 1 : 0;
  const lambdaI = start[0] as number;
  const kappa = workspace.model.inducedPowerFactor;
  const total = flow.lambdaC + lambdaI;
  const through = Math.max(Math.hypot(mu, total), 1e-3);
  const damping = (kappa * halfSlope) / 4;
  const momentumSlope = Math.max(through + (lambdaI * total) / through, 0.3 * through) + damping;
  const gradient = foreAftGradient(workspace.inflowKind, mu, flow.lambdaC + lambdaI);
  const lockNumber = equations.coningPerMoment * 2 * halfSlope;
  const rows = [
    [momentumSlope / equations.momentumScale, 0, ((shaft - 1) * damping * mu) / equations.momentumScale, 0],
    [-gradient, 1 + 0.5 * mu * mu, 0, (-4 / 3) * mu],
    [-2 * mu, 0, Math.max(1 + (1.5 - 2 * shaft) * mu * mu, 0.2), 0],
    [lockNumber / 6, 0, ((shaft - 1) * lockNumber * mu) / 6, 1],
  ];
  const jacobian = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) jacobian[row * size + column] = rows[row]?.[column] ?? 0;
  }
  return jacobian;
}
