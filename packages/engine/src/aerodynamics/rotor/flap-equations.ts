import { solveLinearInPlace } from "../../numerics/index.ts";
import { solveAnnularInflow } from "./annular-inflow.ts";
import { type FlapAngles, type FlapStiffness, flapAngles, flapStiffness } from "./articulation.ts";
import { inducedInflow, momentumResidual } from "./induced-inflow.ts";
import { foreAftGradient } from "./inflow-distribution.kernel.ts";
import { cyclicOf, discFlow, type RotorPoint } from "./rotor-point.ts";
import { sweepRotor } from "./rotor-sweep.kernel.ts";
import { type RotorWorkspace, ringLoadWidth } from "./rotor-workspace.ts";

/**
 * The balance of a rotor's inflow, flapping and coning. Unknowns: λ_i, θ_1c, θ_1s and, for blades that cone, β₀. With annular inflow
 * the rings are balanced inside, and λ_i is no more than their mean.
 */
export interface FlapEquations {
  readonly point: RotorPoint;
  readonly workspace: RotorWorkspace;
  readonly size: number;
  readonly stiffness: FlapStiffness;
  /** γ/(a σ), 0 for a teeter [1]. */
  readonly coningPerMoment: number;
  /** First-harmonic moment per flap angle, in the measure of the residuals: (ν² − 1)/(2 γ/(a σ)) × 8/halfSlope [1]. */
  readonly flapSpring: number;
  /** σ a/2 with the compressibility factor at 0.75 R [1/rad]. */
  readonly halfSlope: number;
  /** What the momentum residual is divided by to be an inflow: flow through the disc of the start, and blade damping [1]. */
  readonly momentumScale: number;
  readonly largestSteps: readonly number[];
  /** Sweeps so far; with annular inflow those of the rings, over the number of rings. */
  readonly effort: { sweeps: number };
  residuals(unknowns: Float64Array, residuals: Float64Array): void;
  /** Sets the workspace's state to the unknowns. */
  place(unknowns: Float64Array): void;
  /** Writes the residuals of flapping and coning alone, all but the first, with the loads of the last sweep. */
  flapBalance(unknowns: Float64Array, residuals: Float64Array): void;
}

/**
 * The equations of one point, scaled so that each residual is an inflow over tip speed or an angle.
 *
 * @param near rings start from the velocities in `ws.rings`, of a state not far away
 * @derivation moments divided by their slope over pitch in hover, (σ a/2)/8
 */
export function flapEquations(ws: RotorWorkspace, point: RotorPoint, near = false): FlapEquations {
  const { model, mesh, law, state } = ws;
  const stiffness = flapStiffness(model.articulation, point.tipSpeed / model.radius);
  const machAtThreeQuarters = Math.min((0.75 * point.tipSpeed) / point.air.speedOfSound, 0.9);
  const halfSlope = Math.max((mesh.solidity * law.liftSlope) / 2 / Math.sqrt(1 - machAtThreeQuarters ** 2), 1e-9);
  const coningPerMoment = stiffness.lockNumber / Math.max(law.liftSlope * mesh.solidity, 1e-9);
  const momentumScale = point.airspeed / point.tipSpeed + 0.05 + (model.inducedPowerFactor * halfSlope) / 4;
  state.theta0 = point.collective;
  state.tipSpeed = point.tipSpeed;
  state.speedOfSound = point.air.speedOfSound;
  state.kinematicViscosity = point.air.dynamicViscosity / point.air.density;
  state.coning = model.precone;
  const shared = {
    point,
    workspace: ws,
    size: stiffness.cones ? 4 : 3,
    stiffness,
    coningPerMoment,
    flapSpring: stiffness.surplus === 0 ? 0 : (stiffness.surplus / (2 * coningPerMoment)) * (8 / halfSlope),
    halfSlope,
    momentumScale,
    largestSteps: [0.03, 0.06, 0.06, 0.06],
    effort: { sweeps: 0 },
  };
  const place = (unknowns: Float64Array): void => placeState(shared, unknowns);
  const flapBalance = (unknowns: Float64Array, residuals: Float64Array): void => flapResiduals(shared, unknowns, residuals);
  const inflowResidual = inflowResidualOf(shared, near);
  return {
    ...shared,
    place,
    flapBalance,
    residuals(unknowns, residuals) {
      place(unknowns);
      residuals[0] = inflowResidual();
      flapBalance(unknowns, residuals);
    },
  };
}

type FlapNumbers = Omit<FlapEquations, "residuals" | "place" | "flapBalance">;

function flapOf({ point, stiffness }: FlapNumbers, unknowns: Float64Array): FlapAngles {
  return flapAngles({ theta1c: unknowns[1] as number, theta1s: unknowns[2] as number }, cyclicOf(point), stiffness.coupling);
}

function placeState(equations: FlapNumbers, unknowns: Float64Array): void {
  const { point, workspace: ws, stiffness } = equations;
  const { state, rings } = ws;
  const flap = flapOf(equations, unknowns);
  const flow = discFlow(point, flap.longitudinal);
  state.mu = flow.mu;
  state.lambdaC = flow.lambdaC;
  state.lambdaI = unknowns[0] as number;
  state.theta1c = unknowns[1] as number;
  state.theta1s = unknowns[2] as number;
  if (stiffness.cones) state.coning = unknowns[3] as number;
  rings.plungeCosine = stiffness.hingeOffset * flap.lateral;
  rings.plungeSine = -stiffness.hingeOffset * flap.longitudinal;
}

/**
 * Sweeps the state of the workspace and says how far its inflow is from the momentum of its thrust; a state without a balance of its
 * rings has no residual: NaN.
 */
function inflowResidualOf({ workspace: ws, momentumScale, effort }: FlapNumbers, near: boolean): () => number {
  const { model, state, out } = ws;
  const { length: ringCount } = ws.mesh.radiusFraction;
  let started = near;
  if (!ws.annular) {
    return () => {
      sweepRotor(ws, state);
      effort.sweeps += 1;
      const condition = { ct: out.ct, mu: state.mu, lambdaC: state.lambdaC, kappa: model.inducedPowerFactor };
      return momentumResidual(condition, state.lambdaI) / momentumScale;
    };
  }
  return () => {
    const inflow = solveAnnularInflow(ws, state, 1, started);
    started = inflow.kind === "balanced";
    effort.sweeps += inflow.ringSweeps / ringCount;
    return inflow.kind === "balanced" ? state.lambdaI - inflow.lambdaI : Number.NaN;
  };
}

/** Moments that flapping and coning leave over, after a sweep. */
function flapResiduals(equations: FlapNumbers, unknowns: Float64Array, residuals: Float64Array): void {
  const { workspace: ws, point, stiffness, coningPerMoment, flapSpring, halfSlope } = equations;
  if (stiffness.rigid) {
    residuals[1] = (unknowns[1] as number) - cyclicOf(point).cosine;
    residuals[2] = (unknowns[2] as number) - cyclicOf(point).sine;
    return;
  }
  const flap = flapOf(equations, unknowns);
  const hinge = stiffness.hingeOffset === 0 ? ws.out : momentsAboutHinge(ws, stiffness.hingeOffset);
  residuals[1] = (hinge.momentCos * 8) / halfSlope + flapSpring * flap.longitudinal;
  residuals[2] = (hinge.momentSin * 8) / halfSlope + flapSpring * flap.lateral;
  if (!stiffness.cones) return;
  const resting = stiffness.spring * ws.model.precone;
  residuals[3] = (unknowns[3] as number) * (1 + stiffness.surplus) - resting - coningPerMoment * hinge.meanFlapMoment;
}

/** Flap moments about a hinge off the shaft, from the rings' loads. @derivation moment arms from the hinge */
export function momentsAboutHinge(
  ws: RotorWorkspace,
  hingeOffset: number,
): { readonly momentCos: number; readonly momentSin: number; readonly meanFlapMoment: number } {
  const { loads } = ws.rings;
  const { radiusFraction } = ws.mesh;
  let momentCos = 0;
  let momentSin = 0;
  let meanFlapMoment = 0;
  for (let i = 0; i < radiusFraction.length; i++) {
    const share = 1 - hingeOffset / (radiusFraction[i] as number);
    momentCos += share * (loads[i * ringLoadWidth + 4] as number);
    momentSin += share * (loads[i * ringLoadWidth + 5] as number);
    meanFlapMoment += share * (loads[i * ringLoadWidth + 6] as number);
  }
  return { momentCos, momentSin, meanFlapMoment };
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
  const { point, workspace, halfSlope, stiffness } = equations;
  const model = workspace.model;
  const cyclic = cyclicOf(point);
  const backOf = (sine: number): number => (stiffness.rigid ? 0 : cyclic.sine - sine);
  const largestThrust = 0.2 * workspace.mesh.solidity;
  let theta1s = 0;
  let lambdaI = 0;
  let flow = discFlow(point, backOf(0));
  for (let repetition = 0; repetition < 10; repetition++) {
    const mu = Math.min(flow.mu, 1.5);
    const lambda = Math.min(Math.max(flow.lambdaC + lambdaI, -0.3), 0.3);
    const flapped = (-(8 / 3) * mu * (point.collective - 0.75 * lambda)) / (1 + 1.5 * mu * mu);
    theta1s = (theta1s + Math.min(Math.max(flapped, -0.4), 0.4)) / 2;
    flow = discFlow(point, backOf(theta1s));
    const straight = halfSlope * (point.collective * (1 / 3 + (mu * mu) / 2) + (mu * theta1s) / 2 - lambda / 2);
    const ct = Math.min(Math.max(straight, -largestThrust), largestThrust);
    lambdaI = (lambdaI + inducedInflow({ ct, mu: flow.mu, lambdaC: flow.lambdaC, kappa: model.inducedPowerFactor })) / 2;
  }
  const { mu } = flow;
  const lambda = flow.lambdaC + lambdaI;
  const gradient = lambdaI * foreAftGradient(workspace.inflowKind, mu, lambda);
  const lockNumber = equations.coningPerMoment * 2 * halfSlope;
  const hingedConing = lockNumber * ((point.collective * (1 + mu * mu)) / 8 - lambda / 6);
  const coning = stiffness.cones ? Math.min(Math.max(hingedConing, -0.1), 0.3) : model.precone;
  const theta1c = (gradient + (4 / 3) * mu * coning) / (1 + 0.5 * mu * mu);
  const start = new Float64Array(equations.size);
  start[0] = lambdaI;
  start[1] = theta1c;
  start[2] = theta1s;
  if (stiffness.cones) start[3] = coning;
  if (stiffness.rigid || equations.flapSpring > 0) bendToHub(equations, mu, start);
  return start;
}

/** Moves start values of pitch from those of free flapping to those of blades that carry moments to the hub. */
function bendToHub(equations: FlapEquations, mu: number, start: Float64Array): void {
  const { stiffness, flapSpring, point } = equations;
  const cyclic = cyclicOf(point);
  if (stiffness.rigid) {
    start[1] = cyclic.cosine;
    start[2] = cyclic.sine;
    return;
  }
  const free = { theta1c: start[1] as number, theta1s: start[2] as number };
  const flap = flapAngles(free, cyclic, stiffness.coupling);
  const slopes = pitchSlopes(equations, mu, 0);
  const step = Float64Array.of(-flapSpring * flap.longitudinal, -flapSpring * flap.lateral);
  if (!solveLinearInPlace(Float64Array.from(slopes), step, 2)) return;
  start[1] = free.theta1c + (step[0] as number);
  start[2] = free.theta1s + (step[1] as number);
}

/** Slopes of the two moment residuals over θ_1c and θ_1s, row by row. */
function pitchSlopes({ stiffness, flapSpring }: FlapEquations, mu: number, shaft: number): readonly [number, number, number, number] {
  if (stiffness.rigid) return [1, 0, 0, 1];
  const spring = flapSpring / (1 + stiffness.coupling ** 2);
  const coupled = spring * stiffness.coupling;
  return [1 + 0.5 * mu * mu + coupled, -spring, spring, Math.max(1 + (1.5 - 2 * shaft) * mu * mu, 0.2) + coupled];
}

/**
 * Slopes of the residuals by the same closed forms, row by row.
 *
 * @derivation differentiation of the closed forms of `startValues`; with the shaft angle given, the disc follows θ_1s
 */
export function startJacobian(equations: FlapEquations, start: Float64Array): Float64Array {
  const { point, workspace, halfSlope, size, stiffness } = equations;
  const flow = discFlow(
    point,
    flapAngles({ theta1c: start[1] ?? 0, theta1s: start[2] ?? 0 }, cyclicOf(point), stiffness.coupling).longitudinal,
  );
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
  const [cosineOverCosine, cosineOverSine, sineOverCosine, sineOverSine] = pitchSlopes(equations, mu, shaft);
  const free = stiffness.rigid ? 0 : 1;
  const mean = workspace.annular ? 0 : 1;
  const rows = [
    mean === 0 ? [1, 0, 0, 0] : [momentumSlope / equations.momentumScale, 0, ((shaft - 1) * damping * mu) / equations.momentumScale, 0],
    [-gradient * free * mean, cosineOverCosine, cosineOverSine, (-4 / 3) * mu * free],
    [-2 * mu * free * mean, sineOverCosine, sineOverSine, 0],
    [(lockNumber / 6) * mean, 0, ((shaft - 1) * lockNumber * mu) / 6, 1 + stiffness.surplus],
  ];
  const jacobian = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) jacobian[row * size + column] = rows[row]?.[column] ?? 0;
  }
  return jacobian;
}
