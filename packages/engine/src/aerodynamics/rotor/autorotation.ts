import type { Air } from "../../environment/atmosphere/index.ts";
import { type AnnularTorque, annularAutorotation, annularPlace } from "./annular-autorotation.ts";
import type { BorderedPlace } from "./bordered-system.ts";
import { type FlapEquations, flapEquations } from "./flap-equations.ts";
import { type SolvedRotor, solution } from "./inflow-and-flap.ts";
import { rotorOperatingPoint } from "./operating-point.ts";
import type { RotorPoint } from "./rotor-point.ts";
import type { RotorWorkspace } from "./rotor-workspace.ts";
import { solveSmallSystem } from "./small-system.ts";

/** A rotor that the air turns: at this airspeed and rotor speed, with this collective, the disc angle is sought. */
export interface AutorotationCondition {
  /** [m/s]. */
  readonly airspeed: number;
  /** Ω R [m/s]. */
  readonly tipSpeed: number;
  /** Pitch at 0.75 R [rad]. */
  readonly collective: number;
  /** Torque that the shaft gives, 0 or a little below for what turns with the rotor; over ρ π R³ (ΩR)² [1]. @defaultValue 0 */
  readonly cq?: number;
  readonly air: Air;
}

export interface Autorotation {
  readonly kind: "solved";
  readonly discAngle: number;
  readonly rotor: SolvedRotor;
  /** Sweeps of the last system; scanning for a first state and measuring the slopes of its rings come on top. */
  readonly sweeps: number;
  /** For the next state beside this one. */
  readonly trail: AutorotationTrail;
}

/** Unknowns and slopes of a solved state, from which the next one starts; with annular inflow those of every ring. */
export type AutorotationTrail =
  | { readonly kind: "mean"; readonly unknowns: Float64Array; readonly jacobian: Float64Array }
  | { readonly kind: "annular"; readonly place: BorderedPlace };

export interface NoAutorotation {
  readonly kind: "no-equilibrium";
  readonly reason: string;
}

const tolerance = 1e-10;
const nearSweeps = 40;
const farSweeps = 120;
/** Torque is brought to the size of the other residuals by this share of σ a/2. */
const torqueShare = 0.1;
const largestSteps = [0.03, 0.06, 0.06, 0.06, 0.06];

type MeanTrail = Extract<AutorotationTrail, { readonly kind: "mean" }>;

/**
 * The disc angle at which a rotor autorotates, with inflow and flapping, all in one system.
 *
 * Beside a solved state (`near`) it starts from that state and its slopes, and stays on its branch, that of every ring included: with
 * annular inflow all rings are balanced side by side with flapping and torque. Where that fails, or without one, the first crossing
 * of torque over shaft angle is sought as `rotorOperatingPoint` does.
 *
 * @derivation the equations of `solveRotorInflowAndFlap` and that of torque, disc angle unknown
 */
export function autorotation(
  ws: RotorWorkspace,
  condition: AutorotationCondition,
  near?: AutorotationTrail,
): Autorotation | NoAutorotation {
  const beside = near && solveBeside(ws, condition, near);
  if (beside) return beside;
  const { airspeed, tipSpeed, collective, cq = 0, air } = condition;
  const { radius } = ws.model;
  const torque = cq * air.density * Math.PI * radius ** 3 * tipSpeed ** 2;
  const stream = { kind: "airspeed", value: airspeed } as const;
  const found = rotorOperatingPoint(
    ws,
    { seek: "shaft-angle", stream, tipSpeed, collective, torque },
    { air, cyclic: { cosine: 0, sine: 0 } },
  );
  if (found.kind !== "solved") return { kind: "no-equilibrium", reason: "reason" in found ? found.reason : "the rotor cannot be solved" };
  const scanned = solveFrom(ws, condition, trailOf(ws, condition, found.rotor), farSweeps);
  return scanned ?? { kind: "no-equilibrium", reason: "the state that was found could not be closed in on" };
}

function solveBeside(ws: RotorWorkspace, condition: AutorotationCondition, near: AutorotationTrail): Autorotation | undefined {
  if (near.kind === "mean") return ws.annular ? undefined : solveFrom(ws, condition, near, nearSweeps);
  const { shared } = near.place;
  const { point, equations } = systemOf(ws, condition, shared[shared.length - 1] as number);
  if (!ws.annular) return undefined;
  const solved = annularAutorotation(equations, torqueOf(condition, point, equations), near.place);
  if (!solved) return undefined;
  return solvedState(solution(ws, equations, solved.unknowns), { kind: "annular", place: solved.place });
}

function solvedState(rotor: SolvedRotor, trail: AutorotationTrail): Autorotation {
  return { kind: "solved", discAngle: rotor.discAngle, rotor, sweeps: rotor.sweeps, trail };
}

function torqueOf({ cq = 0 }: AutorotationCondition, point: MovablePoint, { size, halfSlope }: FlapEquations): AnnularTorque {
  return {
    cq,
    scale: 1 / (torqueShare * halfSlope),
    turn: (discAngle) => {
      point.angle.value = discAngle;
    },
    largestSteps: largestSteps.slice(0, size + 1),
    tolerance,
    largestSweepCount: nearSweeps,
  };
}

/** The unknowns of a state that another search has found, and slopes by differences. */
function trailOf(ws: RotorWorkspace, condition: AutorotationCondition, rotor: SolvedRotor): MeanTrail {
  const { point, equations } = systemOf(ws, condition, rotor.discAngle);
  const { size } = equations;
  const unknowns = new Float64Array(size + 1);
  unknowns.set([rotor.lambdaI, rotor.theta1c, rotor.theta1s, rotor.coning].slice(0, size));
  unknowns[size] = rotor.discAngle;
  const jacobian = new Float64Array((size + 1) ** 2);
  const residuals = residualsWithTorque(ws, condition, point, equations);
  const before = new Float64Array(size + 1);
  const after = new Float64Array(size + 1);
  residuals(unknowns, before);
  for (let column = 0; column <= size; column++) {
    const moved = unknowns.slice();
    moved[column] = (moved[column] as number) + 1e-6;
    residuals(moved, after);
    for (let row = 0; row <= size; row++) jacobian[row * (size + 1) + column] = ((after[row] as number) - (before[row] as number)) / 1e-6;
  }
  return { kind: "mean", unknowns, jacobian };
}

interface MovablePoint extends RotorPoint {
  readonly angle: { readonly kind: "disc"; value: number };
}

function systemOf(
  ws: RotorWorkspace,
  condition: AutorotationCondition,
  discAngle: number,
): { readonly point: MovablePoint; readonly equations: FlapEquations } {
  const { airspeed, tipSpeed, collective, air } = condition;
  const point: MovablePoint = { airspeed, angle: { kind: "disc", value: discAngle }, tipSpeed, collective, air };
  return { point, equations: flapEquations(ws, point) };
}

function residualsWithTorque(
  ws: RotorWorkspace,
  { cq = 0 }: AutorotationCondition,
  point: MovablePoint,
  equations: FlapEquations,
): (unknowns: Float64Array, residuals: Float64Array) => void {
  const { size, halfSlope } = equations;
  return (unknowns, residuals) => {
    point.angle.value = unknowns[size] as number;
    equations.residuals(unknowns, residuals);
    residuals[size] = (ws.out.cq - cq) / (torqueShare * halfSlope);
  };
}

function solveFrom(
  ws: RotorWorkspace,
  condition: AutorotationCondition,
  trail: MeanTrail,
  largestSweepCount: number,
): Autorotation | undefined {
  const { point, equations } = systemOf(ws, condition, trail.unknowns[trail.unknowns.length - 1] as number);
  const size = equations.size + 1;
  if (trail.unknowns.length !== size) return undefined;
  const ended = solveSmallSystem({
    size,
    residuals: residualsWithTorque(ws, condition, point, equations),
    start: trail.unknowns,
    jacobian: trail.jacobian,
    largestSteps: largestSteps.slice(0, size),
    tolerance,
    largestEvaluationCount: largestSweepCount,
  });
  if (!ended.converged) return undefined;
  const rotor = solution(ws, equations, ended.unknowns);
  if (!ws.annular) return solvedState(rotor, { kind: "mean", unknowns: ended.unknowns, jacobian: ended.jacobian });
  const place = annularPlace(equations, torqueOf(condition, point, equations), ended.unknowns);
  return solvedState(rotor, { kind: "annular", place });
}
