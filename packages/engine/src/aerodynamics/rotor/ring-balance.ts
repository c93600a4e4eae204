import { bracketedRoot } from "./bracketed-root.ts";
import type { DiscFlow } from "./disc-flow.ts";
import { flowThroughDisc } from "./induced-inflow.ts";
import { sweepRing } from "./ring-sweep.kernel.ts";
import { type RotorSweepState, type RotorWorkspace, ringLoadWidth } from "./rotor-workspace.ts";
import { prandtlFactor } from "./tip-loss.ts";

/** Bracket around a root at which a ring's search ends, in velocity over reference speed [1]. */
const inducedTolerance = 1e-11;
const swirlTolerance = 1e-10;
/** Steps in which a stalled ring is searched, from the attached side. */
const stalledSteps = 6;
const steepestPitch = 1.5;
/** Flow over tip speed at which the wake of drag is mixed away when nothing flows through the ring. Chosen. */
const mixing = 0.02;
/** Secants from a near guess: how many, how long at most, and how short the last, after which none is needed [1]. */
const secantSteps = 6;
const bothSteps = 14;
const differenceStep = 1e-4;
/** Width of the bracket from which induced and swirl velocity are closed in on together [1]. */
const looseTolerance = 1e-3;
const longestSecant = 0.05;
const endingSecant = 1e-8;
/** A secant as short as this is not worth a sweep [1]. */
const leastSecant = 1e-11;
/** Rate of descent over the hover induced velocity of the ring within which κ fades to 1. Chosen. */
const kappaFade = 0.4;

/** κ of a ring in its axial flow: whole in hover and climb, 1 in descent. */
function contractionFactor(kappa: number, ct: number, lambdaC: number): number {
  if (kappa === 1 || ct * lambdaC >= 0) return kappa;
  const share = 1 - Math.abs(lambdaC) / (kappaFade * Math.sqrt(Math.abs(ct) / 2));
  return share <= 0 ? 1 : 1 + (kappa - 1) * share * share * (3 - 2 * share);
}

/** The search for one ring after the other. */
export class RingBalance {
  sweeps = 0;
  induced = 0;
  swirl = 0;
  slope = 1;
  private readonly ws: RotorWorkspace;
  private readonly state: RotorSweepState;
  private readonly spin: number;
  private readonly misses: (lambdaI: number) => number;
  private readonly disc: DiscFlow;
  private ring = 0;
  private sweptInduced = Number.NaN;
  private sweptSwirl = Number.NaN;
  private x = 0;
  private ringArea = 0;
  private factor = 1;
  private ct = 0;
  private shared = 0;
  private kappa = 1;

  constructor(ws: RotorWorkspace, state: RotorSweepState, spin: number, disc: DiscFlow) {
    this.ws = ws;
    this.state = state;
    this.spin = spin;
    this.disc = disc;
    this.misses = (lambdaI) => this.miss(lambdaI);
  }

  /** Sweeps a ring once: what is left over of its momentum and angular momentum at an induced and a swirl velocity. */
  leftOver(ring: number, induced: number, swirl: number): readonly [number, number] {
    this.begin(ring);
    this.swirl = swirl;
    return [this.miss(induced), this.angularMiss(induced)];
  }

  solve(ring: number, near: boolean): boolean {
    const { model } = this.ws;
    this.begin(ring);
    return (near && this.solveNear(model.swirl === true)) || this.solveCold(model.swirl === true);
  }

  private begin(ring: number): void {
    const { mesh } = this.ws;
    this.ring = ring;
    this.sweptInduced = Number.NaN;
    this.x = mesh.radiusFraction[ring] as number;
    if (this.disc.even > 0) this.shared = this.sharedInflow();
    this.ringArea = 2 * this.x * (mesh.width[ring] as number);
  }

  /** The disc's induced velocity, with the share of lift that the tip loses taken off by as much more flow down through the ring. */
  private sharedInflow(): number {
    const { ws, state, spin, disc, x } = this;
    const factor = prandtlFactor(ws, x, spin * x, state.lambdaC + disc.lambdaI, disc.lambdaI);
    const pitch = state.theta0 + (ws.mesh.twist[this.ring] as number);
    const without = spin * x * Math.tan(Math.min(Math.max(pitch, -steepestPitch), steepestPitch)) - state.lambdaC;
    return factor * disc.lambdaI + (1 - factor) * without;
  }

  private solveCold(swirls: boolean): boolean {
    this.swirl = 0;
    if (!swirls) return this.ended(this.cold(inducedTolerance));
    if (this.both(this.cold(looseTolerance), 0, true)) return true;
    this.swirl = 0;
    return this.ended(this.cold(inducedTolerance)) && this.solveSwirl();
  }

  private solveNear(swirls: boolean): boolean {
    const { induced, swirl, slopes } = this.ws.rings;
    this.induced = induced[this.ring] as number;
    this.swirl = swirl[this.ring] as number;
    this.slope = slopes[this.ring] as number;
    return swirls ? this.both(this.induced, this.swirl, false) : this.ended(this.warm(this.induced));
  }

  /** Momentum less thrust of the ring at an induced velocity. */
  private miss(lambdaI: number): number {
    const { ws, state, spin, ring } = this;
    this.sweeps += 1;
    this.sweptInduced = lambdaI;
    this.sweptSwirl = this.swirl;
    sweepRing(ws, state, spin, ring, lambdaI, this.swirl);
    this.factor = prandtlFactor(ws, this.x, spin * this.x - this.swirl, state.lambdaC + lambdaI, lambdaI);
    this.ct = (ws.rings.loads[ring * ringLoadWidth] as number) / (this.ringArea * this.factor);
    this.kappa = contractionFactor(ws.model.inducedPowerFactor, this.ct, state.lambdaC);
    const { disc } = this;
    const own = lambdaI * this.flow(lambdaI) - (this.kappa * this.ct) / 2;
    if (disc.even === 0) return own;
    return (1 - disc.even) * own + disc.even * disc.through * (lambdaI - this.shared);
  }

  /** Flow through the ring that carries its momentum [1]. */
  private flow(lambdaI: number): number {
    const { disc, state } = this;
    const { ringwise } = disc;
    if (ringwise === 0) return this.discFlow(lambdaI);
    const ring = flowThroughDisc({ ct: this.ct, mu: state.mu, lambdaC: state.lambdaC, kappa: this.kappa }, lambdaI);
    if (ringwise === 1) return ring;
    return Math.sqrt(ringwise * ring * ring + (1 - ringwise) * this.discFlow(lambdaI) ** 2);
  }

  /** Flow through the ring with the disc's law of descent [1]. */
  private discFlow(lambdaI: number): number {
    const total = this.state.lambdaC + lambdaI;
    return Math.sqrt(this.disc.fixed + this.disc.free * total * total);
  }

  /** Accepts an induced velocity and leaves the ring's loads at it. */
  private ended(lambdaI: number): boolean {
    if (Number.isNaN(lambdaI)) return false;
    this.induced = lambdaI;
    if (this.sweptInduced !== lambdaI || this.sweptSwirl !== this.swirl) this.miss(lambdaI);
    return true;
  }

  /** From nothing known: between no induced velocity and the one at which the ring's thrust is gone. */
  private cold(tolerance: number): number {
    const none = this.miss(0);
    if (none === 0) return 0;
    const side = none < 0 ? 1 : -1;
    const { lambdaC, theta0 } = this.state;
    const pitch = theta0 + (this.ws.mesh.twist[this.ring] as number);
    const turning = this.spin * this.x - this.swirl;
    const inflowAt = (angle: number): number => turning * Math.tan(Math.min(Math.max(angle, -steepestPitch), steepestPitch)) - lambdaC;
    let far = 0.999 * inflowAt(pitch);
    let farMiss = side * far > 1e-4 ? this.miss(far) : -side;
    for (let width = 0.02; side * farMiss < 0 && width < 30; width *= 2) {
      far = side * Math.max(side * far, width);
      farMiss = this.miss(far);
    }
    const stalled = inflowAt(pitch - side * Math.sign(turning) * (this.ws.rings.sections[this.ring]?.inner.stallAngle ?? 0));
    this.slope = (farMiss - none) / far;
    if (!(side * stalled > 0 && side * (far - stalled) > 0)) return bracketedRoot(this.misses, 0, none, far, farMiss, tolerance);
    let before = far;
    let beforeMiss = farMiss;
    for (let step = 0; step <= stalledSteps; step++) {
      const here = stalled * (1 - step / stalledSteps);
      const hereMiss = step === stalledSteps ? none : this.miss(here);
      if (side * hereMiss <= 0) return bracketedRoot(this.misses, here, hereMiss, before, beforeMiss, tolerance);
      before = here;
      beforeMiss = hereMiss;
    }
    return Number.NaN;
  }

  /** From a near guess by secants; the cold search where they do not end at once. */
  private warm(guess: number): number {
    let at = guess;
    let here = this.miss(at);
    let slope = this.slope;
    for (let step = 0; step < secantSteps; step++) {
      const move = -here / slope;
      if (!(Math.abs(move) < longestSecant)) break;
      if (Math.abs(move) < leastSecant) return at;
      const next = this.miss(at + move);
      if (Math.abs(move) < endingSecant) return at + move;
      if (!(Math.abs(next) < Math.abs(here))) break;
      slope = (next - here) / move;
      at += move;
      here = next;
      this.slope = slope;
    }
    return this.cold(inducedTolerance);
  }

  /**
   * Induced and swirl velocity at once from a near guess, with Broyden's updates of the slopes; false where that does not end at once.
   *
   * @param measured measure the slopes first; else the mixed ones start at nothing, for a guess that is very near
   */
  private both(guess: number, swirlGuess: number, measured: boolean): boolean {
    if (Number.isNaN(guess)) return false;
    let lambdaI = guess;
    this.swirl = swirlGuess;
    let r = this.miss(lambdaI);
    let q = this.angularMiss(lambdaI);
    let [a, b, c, d] = measured ? this.measuredSlopes(lambdaI, r, q) : this.guessedSlopes(lambdaI);
    for (let step = 0; step < bothSteps; step++) {
      const determinant = a * d - b * c;
      const move = (b * q - d * r) / determinant;
      const turn = (c * r - a * q) / determinant;
      const length = Math.abs(move) + Math.abs(turn);
      if (!(length < longestSecant + 0.2 * this.x)) return false;
      lambdaI += move;
      this.swirl += turn;
      const [rBefore, qBefore] = [r, q];
      r = this.miss(lambdaI);
      q = this.angularMiss(lambdaI);
      if (length < endingSecant) {
        this.induced = lambdaI;
        this.slope = a;
        return true;
      }
      if (!(Math.abs(r) + Math.abs(q) < 2 * (Math.abs(rBefore) + Math.abs(qBefore)))) return false;
      const squared = move * move + turn * turn;
      const rMissed = (r - rBefore - a * move - b * turn) / squared;
      const qMissed = (q - qBefore - c * move - d * turn) / squared;
      a += rMissed * move;
      b += rMissed * turn;
      c += qMissed * move;
      d += qMissed * turn;
    }
    return false;
  }

  /** Slopes of momentum and angular momentum over induced and swirl velocity at the place that was swept last, by differences. */
  private measuredSlopes(lambdaI: number, r: number, q: number): readonly [number, number, number, number] {
    const swirl = this.swirl;
    const a = (this.miss(lambdaI + differenceStep) - r) / differenceStep;
    const c = (this.angularMiss(lambdaI + differenceStep) - q) / differenceStep;
    this.swirl = swirl + differenceStep;
    const b = (this.miss(lambdaI) - r) / differenceStep;
    const d = (this.angularMiss(lambdaI) - q) / differenceStep;
    this.swirl = swirl;
    return [a, b, c, d];
  }

  private guessedSlopes(lambdaI: number): readonly [number, number, number, number] {
    return [this.slope, 0, 0, 2 * this.factor * this.flow(lambdaI) * this.x];
  }

  /** Angular momentum less torque of the ring at a swirl velocity, induced velocity balanced. */
  private swirlMiss(swirl: number): number {
    this.swirl = swirl;
    return this.ended(this.warm(this.induced)) ? this.angularMiss(this.induced) : Number.NaN;
  }

  /** Angular momentum less torque of the ring as it was swept last. */
  private angularMiss(lambdaI: number): number {
    const { loads } = this.ws.rings;
    const at = this.ring * ringLoadWidth;
    const liftTorque = loads[at + 8] as number;
    const dragTorque = (loads[at + 1] as number) - liftTorque;
    const flow = this.flow(lambdaI);
    const carriedOff = flow / Math.sqrt(flow * flow + (mixing * this.spin) ** 2 + 1e-300);
    return 2 * this.factor * this.swirl * flow * this.x - (liftTorque + carriedOff * dragTorque) / this.ringArea;
  }

  private solveSwirl(): boolean {
    const none = this.swirlMiss(0);
    if (none === 0) return true;
    const side = none < 0 ? 1 : -1;
    const scale = Math.hypot(this.spin * this.x, this.state.lambdaC, this.state.mu);
    let near = 0;
    let nearMiss = none;
    for (let share = 0.02; share < 3; share *= 2) {
      const far = side * share * scale;
      const farMiss = this.swirlMiss(far);
      if (Number.isNaN(farMiss)) return false;
      if (side * farMiss >= 0) {
        const swirl = bracketedRoot((at) => this.swirlMiss(at), near, nearMiss, far, farMiss, swirlTolerance);
        return !Number.isNaN(this.swirlMiss(swirl));
      }
      near = far;
      nearMiss = farMiss;
    }
    return false;
  }
}
