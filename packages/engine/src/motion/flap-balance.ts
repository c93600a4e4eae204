import { solveLinearInPlace } from "../numerics/index.ts";
import { type MovingLoads, rotorStateCount } from "./moving-aircraft.ts";

/** Angles of a disc that follow at once: back, right, coning. */
const angles = 3;
const probe = 1e-4;
/** A correction that shrinks less than this asks for fresh slopes. */
const slowest = 0.3;
const mostRounds = 12;

/**
 * Flapping that follows at once: the disc angles of all rotors at which no flap moment is left, by Newton steps with slopes that are kept from
 * step to step and taken afresh when they no longer serve. Starts from where the last states point to (a parabola through three).
 *
 * Rotors do not feel one another's flapping here, so three more evaluations give the slopes of all.
 */
export class FlapBalance {
  readonly #count: number;
  readonly #slopes: Float64Array;
  readonly #past: [Float64Array, Float64Array, Float64Array];
  #known = 0;
  #fresh = false;
  /** Angles left over at which a balance counts as met [rad]. */
  tolerance: number;
  /** Rounds in which a balance was not met within the tolerance. */
  missed = 0;

  constructor(rotors: number, tolerance: number) {
    this.#count = rotors;
    this.#slopes = new Float64Array(rotors * angles * angles);
    const size = rotors * angles;
    this.#past = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
    this.tolerance = tolerance;
  }

  /** Slopes and states before are forgotten. */
  restart(): void {
    this.#known = 0;
  }

  /**
   * Finds the angles in `rotorStates`, in place, and answers the loads there.
   *
   * @param evaluate loads with the `rotorStates` as they stand
   */
  solve(rotorStates: Float64Array, evaluate: () => MovingLoads): MovingLoads {
    this.#predict(rotorStates);
    let loads = evaluate();
    let before = Number.POSITIVE_INFINITY;
    let left = largestResidual(loads);
    for (let round = 0; left > this.tolerance; round++) {
      if (round === mostRounds) {
        this.missed += 1;
        break;
      }
      if (!this.#fresh || left > slowest * before) {
        this.#takeSlopes(rotorStates, loads, evaluate);
      }
      this.#correct(rotorStates, loads);
      loads = evaluate();
      before = left;
      left = largestResidual(loads);
    }
    this.#remember(rotorStates, loads);
    return loads;
  }

  #predict(rotorStates: Float64Array): void {
    if (this.#known < 3) return;
    const [first, second, third] = this.#past;
    for (let i = 0; i < this.#count * angles; i++)
      rotorStates[place(i)] = 3 * (first[i] as number) - 3 * (second[i] as number) + (third[i] as number);
  }

  /** The angles of this balance for the next prediction, with what was left over taken off by the slopes: no evaluation is spent on it. */
  #remember(rotorStates: Float64Array, loads: MovingLoads): void {
    const [first, second, third] = this.#past;
    this.#past[0] = third;
    this.#past[1] = first;
    this.#past[2] = second;
    const worthwhile = this.#fresh && largestResidual(loads) > this.tolerance / 50;
    const left = worthwhile ? this.#steps(loads) : undefined;
    for (let i = 0; i < this.#count * angles; i++) third[i] = (rotorStates[place(i)] as number) - (left?.[i] ?? 0);
    this.#known += 1;
  }

  #takeSlopes(rotorStates: Float64Array, at: MovingLoads, evaluate: () => MovingLoads): void {
    const base = residuals(at);
    for (let k = 0; k < angles; k++) {
      for (let rotor = 0; rotor < this.#count; rotor++)
        rotorStates[place(rotor * angles + k)] = (rotorStates[place(rotor * angles + k)] as number) + probe;
      const moved = residuals(evaluate());
      for (let rotor = 0; rotor < this.#count; rotor++) {
        rotorStates[place(rotor * angles + k)] = (rotorStates[place(rotor * angles + k)] as number) - probe;
        for (let i = 0; i < angles; i++) {
          const slope = ((moved[rotor * angles + i] as number) - (base[rotor * angles + i] as number)) / probe;
          this.#slopes[(rotor * angles + i) * angles + k] = slope;
        }
      }
    }
    this.#fresh = true;
  }

  #correct(rotorStates: Float64Array, loads: MovingLoads): void {
    this.#steps(loads).forEach((step, i) => {
      rotorStates[place(i)] = (rotorStates[place(i)] as number) - Math.min(Math.max(step, -largestStep), largestStep);
    });
  }

  /** Newton's steps of all angles [rad]. */
  #steps(loads: MovingLoads): Float64Array {
    const left = residuals(loads);
    for (let rotor = 0; rotor < this.#count; rotor++) {
      const matrix = this.#slopes.slice(rotor * angles * angles, (rotor + 1) * angles * angles);
      const step = left.subarray(rotor * angles, (rotor + 1) * angles);
      // An angle that nothing depends on (coning of a blade that cannot cone) stays where it is.
      for (let i = 0; i < angles; i++) if (idle(matrix, i)) matrix[i * angles + i] = 1;
      if (!solveLinearInPlace(matrix, step, angles)) step.fill(0);
    }
    return left;
  }
}

/** Longest Newton step [rad]. */
const largestStep = 0.1;

function idle(matrix: Float64Array, i: number): boolean {
  for (let k = 0; k < angles; k++) if (matrix[i * angles + k] !== 0) return false;
  return true;
}

function place(index: number): number {
  return Math.trunc(index / angles) * rotorStateCount + 2 + (index % angles);
}

function residuals({ rotors }: MovingLoads): Float64Array {
  const all = new Float64Array(rotors.length * angles);
  rotors.forEach(({ flapResidualCosine, flapResidualSine, coningResidual }, i) => {
    all[i * angles] = flapResidualCosine;
    all[i * angles + 1] = flapResidualSine;
    all[i * angles + 2] = coningResidual;
  });
  return all;
}

function largestResidual({ rotors }: MovingLoads): number {
  let most = 0;
  for (const { flapResidualCosine, flapResidualSine, coningResidual } of rotors)
    most = Math.max(most, Math.abs(flapResidualCosine), Math.abs(flapResidualSine), Math.abs(coningResidual));
  return most;
}
