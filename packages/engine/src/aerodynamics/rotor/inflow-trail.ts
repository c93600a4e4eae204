import { flapEquations } from "./flap-equations.ts";
import { type SolvedRotor, solution, solveRotorInflowAndFlap, type UnsolvedRotor } from "./inflow-and-flap.ts";
import type { RotorPoint } from "./rotor-point.ts";
import type { RingBuffers, RotorWorkspace } from "./rotor-workspace.ts";
import { type SmallSystemEnd, solveSmallSystem } from "./small-system.ts";

/** Sweeps after which a start from the state before is given up. */
const nearSweeps = 16;
const tolerance = 1e-10;

interface Passed {
  readonly place: number;
  readonly ended: SmallSystemEnd;
  readonly rings: Pick<RingBuffers, "induced" | "swirl" | "slopes">;
  /** What else the rings were left with. */
  readonly others: Omit<RingBuffers, "induced" | "swirl" | "slopes">;
}

/**
 * States of one rotor one beside the other, as a search over one number meets them: each starts from the nearest one below, with its
 * slopes and the velocities of its rings, and from closed forms where there is none or that fails.
 *
 * A state is that of `solveRotorInflowAndFlap` where only one is steady. Where rings have several answers it may be another one: what a
 * search ends at is to be solved once more from nothing.
 */
export class InflowTrail {
  private readonly ws: RotorWorkspace;
  private readonly pointAt: (place: number) => RotorPoint;
  /** Places rising. */
  private readonly passed: Passed[] = [];

  /** @param pointAt the point of a place: its collective, or another number that changes from state to state */
  constructor(ws: RotorWorkspace, pointAt: (place: number) => RotorPoint) {
    this.ws = ws;
    this.pointAt = pointAt;
  }

  at(place: number): SolvedRotor | UnsolvedRotor {
    const above = this.passed.findIndex((one) => one.place > place);
    const next = above < 0 ? this.passed.length : above;
    const point = this.pointAt(place);
    const near = this.passed[next - 1];
    const beside = near && this.beside(place, point, near, this.passed[next - 2]);
    if (beside) return beside;
    return solveRotorInflowAndFlap(this.ws, point, { ended: (ended) => this.pass(place, ended) });
  }

  private beside(place: number, point: RotorPoint, near: Passed, before: Passed | undefined): SolvedRotor | undefined {
    const { rings } = this.ws;
    rings.induced.set(near.rings.induced);
    rings.swirl.set(near.rings.swirl);
    rings.slopes.set(near.rings.slopes);
    Object.assign(rings, near.others);
    const equations = flapEquations(this.ws, point, true);
    const ended = solveSmallSystem({
      size: equations.size,
      residuals: (unknowns, residuals) => equations.residuals(unknowns, residuals),
      start: startAhead(place, near, before),
      jacobian: near.ended.jacobian,
      largestSteps: equations.largestSteps,
      tolerance,
      largestEvaluationCount: nearSweeps,
    });
    if (!ended.converged) return undefined;
    this.pass(place, ended);
    return solution(this.ws, equations, ended.unknowns);
  }

  private pass(place: number, ended: SmallSystemEnd): void {
    const { induced, swirl, slopes, ...others } = this.ws.rings;
    const rings = { induced: induced.slice(), swirl: swirl.slice(), slopes: slopes.slice() };
    const above = this.passed.findIndex((one) => one.place > place);
    this.passed.splice(above < 0 ? this.passed.length : above, 0, { place, ended, rings, others });
  }
}

/** Unknowns straight on from two states below, where the nearer one is not much further away than they are apart. */
function startAhead(place: number, near: Passed, before: Passed | undefined): Float64Array {
  const start = near.ended.unknowns.slice();
  const share = before ? (place - near.place) / (near.place - before.place) : 0;
  if (!before || !(share <= 1.5)) return start;
  for (let i = 0; i < start.length; i++) start[i] = (start[i] as number) * (1 + share) - share * (before.ended.unknowns[i] as number);
  return start;
}
