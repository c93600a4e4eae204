import { largestSteadyThrust } from "../../aerodynamics/rotor/index.ts";
import { solveLinearInPlace } from "../../numerics/index.ts";
import type { RotorQuestion } from "./givens.ts";
import type { NoRotorState, RotorBench, RotorState } from "./state.ts";
import type { FreeStream, RotorFlow } from "./stream.ts";

/** Residual over its scale at which steps end; residuals of coefficients that are accepted, and those that are where rings jump. */
const met = 1e-9;
const wellMet = { thrust: 1e-9, torque: 1e-11 } as const;
const roughlyMet = { thrust: 2e-5, torque: 3e-6 } as const;
/** Scales that make both residuals, and every unknown, numbers of order one. */
const scale = { thrust: 1e-3, torque: 1e-5, angle: 0.1 } as const;
const mostSteps = 14;
const largestStep = 0.5;
const difference = 1e-5;

/** What is sought of a state, as a vector, and the way back. */
interface Unknowns {
  readonly start: readonly number[];
  at(values: readonly number[]): RotorState | NoRotorState;
}

/**
 * The state of a bench near one that another bench was solved at: what was sought there is put right until thrust and torque are met
 * again. Undefined when that does not end, or on the stalled side.
 *
 * @derivation Broyden's method from measured slopes
 */
export function polishedState(bench: RotorBench, question: RotorQuestion, near: RotorState): RotorState | undefined {
  const unknowns = unknownsOf(bench, question, near);
  const residualsOf = (state: RotorState): number[] => [
    ...(question.thrust ? [bench.thrustMissing(state, question.thrust) / scale.thrust] : []),
    ...(question.torque ? [bench.torqueMissing(state, question.torque) / scale.torque] : []),
  ];
  const search = new Polish(unknowns, residualsOf);
  const found = search.run();
  if (!found) return undefined;
  const [first = 0, second = 0] = residualsOf(found).map(Math.abs);
  const thrust = question.thrust ? first * scale.thrust : 0;
  const torque = question.torque ? (question.thrust ? second : first) * scale.torque : 0;
  const accepted = bench.ws.annular ? roughlyMet : wellMet;
  if (thrust > accepted.thrust || torque > accepted.torque) return undefined;
  return question.collective === undefined && !unstalled(bench, found) ? undefined : found;
}

/** Collective beyond that of the first maximum of thrust by which a state may be wrong [rad]. */
const stallSlack = 1e-4;

/** Whether thrust still rises with collective there, and for the first time: beyond the stall it may rise again. */
export function unstalled(bench: RotorBench, state: RotorState): boolean {
  const { point, shaft } = state;
  // A bench of its own: a search that was given up takes nothing from the judgement of what it found.
  const more = bench.roughly().state(flowOf(state), point.tipSpeed, point.collective + 2e-3);
  if (more.kind !== "solved" || more.shaft.ct <= shaft.ct) return false;
  const largest = largestSteadyThrust(bench.ws, bench.condition(flowOf(state), point.tipSpeed));
  return largest.kind === "not-found" || state.rotor.ct <= 0 || point.collective <= largest.collective + stallSlack;
}

function flowOf({ point }: RotorState): RotorFlow {
  return { airspeed: point.airspeed, angle: { of: point.angle.kind, value: point.angle.value } };
}

/** What of the stream was sought, as the stream counts it. */
const soughtOf: Readonly<Record<FreeStream, (flow: RotorFlow) => number>> = {
  angle: ({ angle }) => angle.value,
  axial: ({ airspeed, angle }) => airspeed * Math.sign(angle.value),
  airspeed: ({ airspeed }) => airspeed,
  "in-plane": ({ airspeed, angle }) => airspeed * Math.cos(angle.value),
};

function unknownsOf(bench: RotorBench, question: RotorQuestion, near: RotorState): Unknowns {
  const { stream } = question;
  const flow = flowOf(near);
  const { tipSpeed, collective } = near.point;
  const speedScale = tipSpeed / 10;
  const starts: number[] = [];
  const add = (value: number): number => starts.push(value) - 1;
  const pitchAt = question.collective === undefined ? add(collective / scale.angle) : -1;
  const tipAt = question.tipSpeed === undefined ? add(tipSpeed / speedScale) : -1;
  const both = stream.free === "airspeed-and-angle";
  const angular = stream.free === "angle";
  const sought = stream.free === "nothing" || both ? undefined : soughtOf[stream.free](flow) / (angular ? scale.angle : speedScale);
  const streamAt = both ? add(flow.airspeed / speedScale) : sought === undefined ? -1 : add(sought);
  const angleAt = both ? add(flow.angle.value / scale.angle) : -1;
  return {
    start: starts,
    at(values) {
      const value = (place: number): number => values[place] ?? 0;
      const tip = tipAt < 0 ? tipSpeed : value(tipAt) * speedScale;
      const pitch = pitchAt < 0 ? collective : value(pitchAt) * scale.angle;
      if (!(tip > 0)) return { kind: "no-equilibrium", seek: "rotor speed", reason: "the rotor would stand" };
      const part = value(streamAt) * (angular ? scale.angle : speedScale);
      if (stream.free === "nothing") return bench.state(stream.at(tip), tip, pitch);
      if (both) return bench.state({ airspeed: part, angle: { of: "shaft", value: value(angleAt) * scale.angle } }, tip, pitch);
      if (part < 0 && (stream.free === "airspeed" || stream.free === "in-plane"))
        return { kind: "no-equilibrium", seek: "airspeed", reason: "the airspeed would be negative" };
      return bench.state(stream.at(tip, part), tip, pitch);
    },
  };
}

class Polish {
  private readonly unknowns: Unknowns;
  private readonly residualsOf: (state: RotorState) => number[];

  constructor(unknowns: Unknowns, residualsOf: (state: RotorState) => number[]) {
    this.unknowns = unknowns;
    this.residualsOf = residualsOf;
  }

  /** The best state met. */
  run(): RotorState | undefined {
    const { start } = this.unknowns;
    let values = [...start];
    let here = this.sample(values);
    if (!here) return undefined;
    let best = here;
    const slopes = this.slopes(values, here.residuals);
    if (!slopes) return undefined;
    for (let step = 0; step < mostSteps && best.size > met; step++) {
      const change = here.residuals.map((residual) => -residual);
      const vector = Float64Array.from(change);
      if (!solveLinearInPlace(Float64Array.from(slopes), vector, start.length)) break;
      const long = Math.max(...vector.map(Math.abs));
      const share = long > largestStep ? largestStep / long : 1;
      const moved = Array.from(vector, (part) => part * share);
      const next = values.map((value, i) => value + (moved[i] ?? 0));
      const there = this.sample(next);
      if (!there) break;
      update(slopes, moved, here.residuals, there.residuals);
      values = next;
      here = there;
      if (here.size < best.size) best = here;
    }
    return best.state;
  }

  private sample(values: readonly number[]) {
    const state = this.unknowns.at(values);
    if (state.kind !== "solved") return undefined;
    const residuals = this.residualsOf(state);
    return { state, residuals, size: Math.max(...residuals.map(Math.abs)) };
  }

  /** Row by row. */
  private slopes(values: readonly number[], residuals: readonly number[]): number[] | undefined {
    const size = values.length;
    const slopes = new Array<number>(size * size).fill(0);
    for (let column = 0; column < size; column++) {
      const there = this.sample(values.map((value, i) => (i === column ? value + difference : value)));
      if (!there) return undefined;
      for (let row = 0; row < size; row++) slopes[row * size + column] = ((there.residuals[row] ?? 0) - (residuals[row] ?? 0)) / difference;
    }
    return slopes;
  }
}

/** Broyden's update of slopes after a step. @source broyden-1965, unchecked */
function update(slopes: number[], moved: readonly number[], before: readonly number[], after: readonly number[]): void {
  const size = moved.length;
  const length = moved.reduce((sum, part) => sum + part * part, 0);
  if (length === 0) return;
  for (let row = 0; row < size; row++) {
    let missed = (after[row] ?? 0) - (before[row] ?? 0);
    for (let column = 0; column < size; column++) missed -= (slopes[row * size + column] ?? 0) * (moved[column] ?? 0);
    for (let column = 0; column < size; column++) {
      const at = row * size + column;
      slopes[at] = (slopes[at] ?? 0) + (missed * (moved[column] ?? 0)) / length;
    }
  }
}
