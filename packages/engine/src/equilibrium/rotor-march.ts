import {
  inducedInflow,
  type RotorSweepState,
  type RotorWorkspace,
  solveRotorInflowAndFlap,
  sweepRotor,
} from "../aerodynamics/rotor/index.ts";
import { solveLinearInPlace } from "../numerics/index.ts";
import type { ThrustAtCollective } from "./thrust-limit.ts";

const size = 3;
const tolerance = 1e-5;
const differenceStep = 1e-6;
const secantSteps = 10;
const newtonSteps = 12;
/** Unknowns λ_i, θ_1c, θ_1s and their residuals are brought to the order of one by these. */
const unknownScale = [20, 10, 10] as const;
const residualScale = [20, 100, 100] as const;
const largestMove = 0.6;

/**
 * Thrust over collective at one flow, followed: each collective starts from the solution of the one before, so that the
 * branch which the rotor flies when its pitch is raised slowly is kept up to the edge of stall. A step back starts from the nearest
 * known collective below.
 *
 * @derivation secant updates of the equations of mean inflow and first-harmonic flapping
 */
export function thrustMarch(
  workspace: RotorWorkspace,
  flow: RotorSweepState,
  cold: { readonly airspeed: number; readonly discAngle: number },
  air: Parameters<typeof solveRotorInflowAndFlap>[1]["air"],
): ThrustAtCollective {
  const known: { readonly collective: number; readonly u: Float64Array }[] = [];
  let jacobian: Float64Array | undefined;
  const r = new Float64Array(size);
  const kappa = workspace.model.inducedPowerFactor;

  function residuals(collective: number, u: Float64Array): number {
    flow.theta0 = collective;
    flow.lambdaI = (u[0] as number) / unknownScale[0];
    flow.theta1c = (u[1] as number) / unknownScale[1];
    flow.theta1s = (u[2] as number) / unknownScale[2];
    sweepRotor(workspace, flow);
    const { ct, momentCos, momentSin } = workspace.out;
    r[0] = (flow.lambdaI - inducedInflow({ ct, mu: flow.mu, lambdaC: flow.lambdaC, kappa })) * residualScale[0];
    r[1] = momentCos * residualScale[1];
    r[2] = momentSin * residualScale[2];
    return Math.max(Math.abs(r[0]), Math.abs(r[1]), Math.abs(r[2]));
  }

  function measured(collective: number, u: Float64Array): Float64Array {
    residuals(collective, u);
    const base = Float64Array.from(r);
    const slopes = new Float64Array(size * size);
    for (let i = 0; i < size; i++) {
      const moved = Float64Array.from(u);
      moved[i] = (moved[i] as number) + differenceStep;
      residuals(collective, moved);
      for (let k = 0; k < size; k++) slopes[k * size + i] = ((r[k] as number) - (base[k] as number)) / differenceStep;
    }
    return slopes;
  }

  function stepFrom(slopes: Float64Array, base: Float64Array): Float64Array | undefined {
    const step = base.map((value) => -value);
    if (!solveLinearInPlace(Float64Array.from(slopes), step, size)) return undefined;
    let longest = 0;
    for (const value of step) longest = Math.max(longest, Math.abs(value));
    return longest > largestMove ? step.map((value) => (value * largestMove) / longest) : step;
  }

  function secant(collective: number, start: Float64Array): Float64Array | undefined {
    const slopes = jacobian ?? measured(collective, start);
    let u = start;
    let size0 = residuals(collective, u);
    for (let k = 0; k < secantSteps && size0 > tolerance; k++) {
      const base = Float64Array.from(r);
      const step = stepFrom(slopes, base);
      if (step === undefined) return undefined;
      u = u.map((value, i) => value + (step[i] as number));
      size0 = residuals(collective, u);
      const length = step.reduce((sum, value) => sum + value * value, 0);
      for (let row = 0; row < size; row++) {
        let missed = (r[row] as number) - (base[row] as number);
        for (let i = 0; i < size; i++) missed -= (slopes[row * size + i] as number) * (step[i] as number);
        for (let i = 0; i < size; i++)
          slopes[row * size + i] = (slopes[row * size + i] as number) + (missed * (step[i] as number)) / length;
      }
    }
    jacobian = slopes;
    return size0 <= tolerance ? u : undefined;
  }

  function newton(collective: number, start: Float64Array): Float64Array | undefined {
    let u = start;
    let worst = residuals(collective, u);
    for (let k = 0; k < newtonSteps && worst > tolerance; k++) {
      const slopes = measured(collective, u);
      residuals(collective, u);
      const step = stepFrom(slopes, Float64Array.from(r));
      if (step === undefined) return undefined;
      let share = 1;
      let next = u;
      let nextWorst = Number.POSITIVE_INFINITY;
      for (; share > 0.02; share /= 2) {
        next = u.map((value, i) => value + share * (step[i] as number));
        nextWorst = residuals(collective, next);
        if (nextWorst < worst) break;
      }
      if (!(nextWorst < worst)) return undefined;
      u = next;
      worst = nextWorst;
      jacobian = slopes;
    }
    return worst <= tolerance ? u : undefined;
  }

  function coldStart(collective: number): Float64Array | undefined {
    const solved = solveRotorInflowAndFlap(workspace, {
      airspeed: cold.airspeed,
      angle: { kind: "disc", value: cold.discAngle },
      tipSpeed: flow.tipSpeed,
      collective,
      air,
    });
    if (solved.kind !== "solved") return undefined;
    return Float64Array.of(solved.lambdaI * unknownScale[0], solved.theta1c * unknownScale[1], solved.theta1s * unknownScale[2]);
  }

  /** Known solutions below a collective, nearest first: from above one would come along the stalled branch. */
  function below(collective: number) {
    return known.filter((entry) => entry.collective <= collective).sort((a, b) => b.collective - a.collective);
  }

  function predicted(collective: number): Float64Array | undefined {
    const [near, far] = below(collective);
    if (near === undefined) return coldStart(collective);
    if (far === undefined || near.collective === far.collective) return near.u;
    const share = (collective - near.collective) / (near.collective - far.collective);
    return near.u.map((value, i) => value + share * (value - (far.u[i] as number)));
  }

  return (collective) => {
    const start = predicted(collective);
    if (start === undefined) return undefined;
    const nearest = below(collective)[0];
    const found = secant(collective, start) ?? newton(collective, start) ?? (nearest ? newton(collective, nearest.u) : undefined);
    if (found === undefined) {
      jacobian = undefined;
      return undefined;
    }
    residuals(collective, found);
    if (!known.some((entry) => entry.collective === collective)) known.push({ collective, u: found });
    return workspace.out.ct;
  };
}
