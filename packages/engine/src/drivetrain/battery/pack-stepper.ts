import {
  advancePack,
  energyParts,
  type PackModel,
  type PackScratch,
  packScratch,
  packTerminals,
  stateSize,
  surfaceCharge,
} from "./pack-step.kernel.ts";

/** What a pack cannot pass: the voltage floor, the most that its resistance lets through, or a block without charge. */
export type PackEnd = "cut-off voltage" | "internal resistance" | "empty block";

/** A pack on its way through time. Functions below change it in place. */
export interface PackStepper {
  readonly model: PackModel;
  readonly scratch: PackScratch;
  /** State now, before the last step, and one to try with. */
  state: Float64Array;
  previous: Float64Array;
  readonly probe: Float64Array;
  /** Currents of one cell per group at this instant [A]. */
  readonly currents: Float64Array;
  /** Step to try next [s]. */
  tryStep: number;
  /** Energies of the last step, as in `PackScratch` [J], and its mean total current [A] and voltage [V]. */
  readonly energies: Float64Array;
  meanCurrent: number;
  meanVoltage: number;
  readonly meanCurrents: Float64Array;
  /** Total current [A] and terminal voltage [V] at this instant. */
  current: number;
  voltage: number;
  ended: PackEnd | null;
}

export function packStepper(model: PackModel, start: Float64Array): PackStepper {
  return {
    model,
    scratch: packScratch(model.groups),
    state: Float64Array.from(start),
    previous: Float64Array.from(start),
    probe: new Float64Array(start.length),
    currents: new Float64Array(model.groups),
    tryStep: Number.POSITIVE_INFINITY,
    energies: new Float64Array(energyParts),
    meanCurrent: 0,
    meanVoltage: 0,
    meanCurrents: new Float64Array(model.groups),
    current: 0,
    voltage: 0,
    ended: null,
  };
}

/** Largest change of a group's current in one step over that current, and of temperature [K] and surface charge [1]. */
const currentTolerance = 0.02;
const temperatureTolerance = 0.5;
const chargeTolerance = 0.01;
/** Currents below this share of the capacity in an hour count as none. */
const smallRate = 0.02 / 3600;
const shortestStep = 1e-4;
const halvings = 50;

/** Why the pack in this state cannot give the load; null when it can. Leaves currents and voltage of the instant in the scratch. */
export function endOf({ model, scratch }: PackStepper, state: Float64Array, isPower: boolean, load: number): PackEnd | null {
  const first = model.table.states[0] as number;
  for (let g = 0; g < model.groups; g++) {
    if (surfaceCharge(model, state, g) < first) {
      packTerminals(model, state, isPower, load, scratch);
      return "empty block";
    }
  }
  if (!packTerminals(model, state, isPower, load, scratch)) return scratch.heldBy;
  return scratch.voltage < model.cutoffVoltage ? "cut-off voltage" : null;
}

/** Brings the load on: currents and voltage of this instant. False, with the reason in `ended`, when the pack cannot give it. */
export function applyLoad(stepper: PackStepper, isPower: boolean, load: number): boolean {
  stepper.ended = endOf(stepper, stepper.state, isPower, load);
  stepper.current = stepper.scratch.current;
  stepper.voltage = stepper.scratch.voltage;
  stepper.currents.set(stepper.scratch.currents);
  return stepper.ended === null;
}

/**
 * One step of at most `longest` [s] under a load that is on: shorter where currents, temperature or charge change much, and up to
 * the very instant at which the pack can no more. Returns its length.
 *
 * @derivation step halving on the change of the currents; the end of a discharge by bisection on the length of the step
 */
export function stepOnce(stepper: PackStepper, isPower: boolean, load: number, longest: number): number {
  let trial = stepper.tryStep;
  let step = Math.min(longest, trial);
  // No sliver at the end of a stretch.
  if (longest - step < 1e-9) step = longest;
  for (;;) {
    const end = tried(stepper, stepper.previous, isPower, load, step);
    if (end !== null) return lastStep(stepper, isPower, load, step);
    const change = roughness(stepper);
    if (change > 1 && step > shortestStep) {
      step /= 2;
      trial = step;
      continue;
    }
    stepper.tryStep = change < 0.3 && step >= trial ? 2 * step : trial;
    noteWarming(stepper, step);
    settle(stepper);
    return step;
  }
}

/** Tries a step into `target`; on success means are kept and the scratch holds the instant at its end. */
function tried(stepper: PackStepper, target: Float64Array, isPower: boolean, load: number, step: number): PackEnd | null {
  const { model, scratch } = stepper;
  scratch.currents.set(stepper.currents);
  if (!advancePack(model, stepper.state, target, isPower, load, step, scratch)) return scratch.heldBy;
  stepper.energies.set(scratch.energies);
  stepper.meanCurrent = scratch.current;
  stepper.meanVoltage = scratch.voltage;
  stepper.meanCurrents.set(scratch.currents);
  return endOf(stepper, target, isPower, load);
}

/** Largest change over the step by its tolerance; above 1 the step is too long. */
function roughness({ model, state, previous, currents, scratch }: PackStepper): number {
  let most = 0;
  for (let g = 0; g < model.groups; g++) {
    const before = currents[g] as number;
    const after = scratch.currents[g] as number;
    const size = Math.max(Math.abs(before), Math.abs(after), smallRate * (model.capacities[g] as number));
    const at = g * stateSize;
    const warming = Math.abs((previous[at + 4] as number) - (state[at + 4] as number));
    const drawn =
      Math.abs((previous[at] as number) - (state[at] as number)) + Math.abs((previous[at + 1] as number) - (state[at + 1] as number));
    most = Math.max(most, Math.abs(after - before) / size / currentTolerance, warming / temperatureTolerance, drawn / chargeTolerance);
  }
  return most;
}

/** Takes the last step back and makes a shorter one, down to none at all, in its place. */
export function repeatShorter(stepper: PackStepper, isPower: boolean, load: number, step: number): void {
  settle(stepper);
  stepper.ended = null;
  if (step > 0) tried(stepper, stepper.previous, isPower, load, step);
  else {
    stepper.previous.set(stepper.state);
    stepper.energies.fill(0);
    endOf(stepper, stepper.state, isPower, load);
  }
  settle(stepper);
}

/** How fast each group warmed over the step just tried: where the next one begins its search. */
function noteWarming({ scratch: { warming }, state, previous }: PackStepper, step: number): void {
  for (let g = 0; g < warming.length; g++) {
    const at = g * stateSize + 4;
    warming[g] = ((previous[at] as number) - (state[at] as number)) / step;
  }
}

function settle(stepper: PackStepper): void {
  const { state, previous } = stepper;
  stepper.state = previous;
  stepper.previous = state;
  stepper.current = stepper.scratch.current;
  stepper.voltage = stepper.scratch.voltage;
  stepper.currents.set(stepper.scratch.currents);
}

/** The part of a step that the pack can still give. */
function lastStep(stepper: PackStepper, isPower: boolean, load: number, step: number): number {
  let low = 0;
  let high = step;
  let because: PackEnd = "cut-off voltage";
  for (let i = 0; i < halvings && high - low > 1e-9; i++) {
    const middle = (low + high) / 2;
    const end = tried(stepper, stepper.previous, isPower, load, middle);
    if (end === null) low = middle;
    else {
      high = middle;
      because = end;
    }
  }
  if (low > 0) {
    tried(stepper, stepper.previous, isPower, load, low);
    settle(stepper);
  } else {
    stepper.energies.fill(0);
    endOf(stepper, stepper.state, isPower, load);
  }
  stepper.ended = because;
  return low;
}

/**
 * Length of the step after which something first holds, between nothing and the step just made, from the state before it.
 *
 * @param holds asked with the state, and the instant's currents and voltage in the scratch
 */
export function instantWithin(
  stepper: PackStepper,
  isPower: boolean,
  load: number,
  step: number,
  holds: (state: Float64Array, scratch: PackScratch) => boolean,
): number {
  const { model, scratch, previous, probe } = stepper;
  let low = 0;
  let high = step;
  for (let i = 0; i < halvings && high - low > 1e-9; i++) {
    const middle = (low + high) / 2;
    scratch.currents.set(stepper.currents);
    const met = advancePack(model, previous, probe, isPower, load, middle, scratch) && packTerminals(model, probe, isPower, load, scratch);
    if (!met || holds(probe, scratch)) high = middle;
    else low = middle;
  }
  return high;
}
