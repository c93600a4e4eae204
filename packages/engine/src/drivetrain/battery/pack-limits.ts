import { type PackModel, stateSize } from "./pack-step.kernel.ts";
import { instantWithin, type PackStepper } from "./pack-stepper.ts";

/** Limits that do not stop a pack but must not be passed. null: none stated. Currents are of one block. */
export interface RunLimits {
  /** [A] */
  readonly continuousCurrent: number | null;
  readonly shortTimeCurrent: number | null;
  /** How long a current above the continuous one may flow without a break [s]. */
  readonly shortTime: number;
  /** [K] */
  readonly temperatureMinimum: number | null;
  readonly temperatureMaximum: number | null;
  /** State of charge to be kept [1]. */
  readonly lowestStateOfCharge: number | null;
}

export const runLimitNames = [
  "continuous current",
  "short-time current",
  "highest temperature",
  "lowest temperature",
  "lowest state of charge",
] as const;

export type RunLimitName = (typeof runLimitNames)[number];

/** Extremes of a run and when each limit was first passed. Changed in place. */
export interface LimitWatch {
  readonly limits: RunLimits;
  readonly passed: Partial<Record<RunLimitName, number>>;
  /** When a current above the continuous one began; null while there is none. */
  overSince: number | null;
  largestCurrent: number;
  /** Largest current that flows into a block from its neighbours, as a positive number [A]. */
  largestCharging: number;
  longestOver: number;
  hottest: number;
  coldest: number;
  lowestVoltage: number;
  lowestCharge: number;
}

export function limitWatch(limits: RunLimits): LimitWatch {
  return {
    limits,
    passed: {},
    overSince: null,
    largestCurrent: 0,
    largestCharging: 0,
    longestOver: 0,
    hottest: 0,
    coldest: Number.POSITIVE_INFINITY,
    lowestVoltage: Number.POSITIVE_INFINITY,
    lowestCharge: Number.POSITIVE_INFINITY,
  };
}

/** Largest block current of an instant [A]. */
function blockCurrent(model: PackModel, currents: Float64Array): number {
  let most = 0;
  for (let g = 0; g < model.groups; g++) most = Math.max(most, (currents[g] as number) * model.parallel);
  return most;
}

/** State of charge of the pack: charge left in its blocks over their charge when full. */
export function packCharge(model: PackModel, state: Float64Array): number {
  let left = 0;
  let full = 0;
  for (let g = 0; g < model.groups; g++) {
    const capacity = (model.counts[g] as number) * (model.capacities[g] as number);
    left += capacity * (state[g * stateSize] as number);
    full += capacity;
  }
  return left / full;
}

function temperature(model: PackModel, state: Float64Array, hottest: boolean): number {
  let found = state[4] as number;
  for (let g = 1; g < model.groups; g++) {
    const here = state[g * stateSize + 4] as number;
    found = hottest ? Math.max(found, here) : Math.min(found, here);
  }
  return found;
}

/** What is beyond a limit in a state with its currents; the continuous current is left to `overCurrent`. */
function beyond(name: RunLimitName, { limits }: LimitWatch, model: PackModel, state: Float64Array, currents: Float64Array): boolean {
  switch (name) {
    case "continuous current":
      return limits.continuousCurrent !== null && blockCurrent(model, currents) > limits.continuousCurrent;
    case "short-time current":
      return limits.shortTimeCurrent !== null && blockCurrent(model, currents) > limits.shortTimeCurrent;
    case "highest temperature":
      return limits.temperatureMaximum !== null && temperature(model, state, true) > limits.temperatureMaximum;
    case "lowest temperature":
      return limits.temperatureMinimum !== null && temperature(model, state, false) < limits.temperatureMinimum;
    case "lowest state of charge":
      return limits.lowestStateOfCharge !== null && packCharge(model, state) < limits.lowestStateOfCharge;
  }
}

function noteExtremes(watch: LimitWatch, stepper: PackStepper): void {
  const { model, state, currents } = stepper;
  watch.largestCurrent = Math.max(watch.largestCurrent, blockCurrent(model, currents));
  for (let g = 0; g < model.groups; g++) {
    watch.largestCharging = Math.max(watch.largestCharging, -(currents[g] as number) * model.parallel);
  }
  watch.hottest = Math.max(watch.hottest, temperature(model, state, true));
  watch.coldest = Math.min(watch.coldest, temperature(model, state, false));
  watch.lowestVoltage = Math.min(watch.lowestVoltage, stepper.voltage);
  watch.lowestCharge = Math.min(watch.lowestCharge, packCharge(model, state));
}

/** Looks at the instant at which a load comes on. */
export function watchInstant(watch: LimitWatch, stepper: PackStepper, time: number): void {
  noteExtremes(watch, stepper);
  for (const name of runLimitNames) {
    const over = beyond(name, watch, stepper.model, stepper.state, stepper.currents);
    if (name === "continuous current") followOver(watch, over, time);
    else if (over) watch.passed[name] ??= time;
  }
}

/** Looks at the step just made, which ended at `time`, and finds when inside it a limit was passed. */
export function watchStep(watch: LimitWatch, stepper: PackStepper, isPower: boolean, load: number, step: number, time: number): void {
  noteExtremes(watch, stepper);
  const { model } = stepper;
  for (const name of runLimitNames) {
    const continuous = name === "continuous current";
    if (!continuous && watch.passed[name] !== undefined) continue;
    const over = beyond(name, watch, model, stepper.state, stepper.currents);
    if (continuous ? over === (watch.overSince !== null) : !over) {
      if (continuous) followOver(watch, over, time);
      continue;
    }
    const within = instantWithin(
      stepper,
      isPower,
      load,
      step,
      (state, scratch) => beyond(name, watch, model, state, scratch.currents) === over,
    );
    if (continuous) followOver(watch, over, time - step + within);
    else watch.passed[name] = time - step + within;
  }
}

/** Counts how long the continuous current has been exceeded without a break. */
function followOver(watch: LimitWatch, over: boolean, time: number): void {
  const { limits, passed } = watch;
  const since = watch.overSince ?? (over ? time : null);
  if (since !== null) {
    watch.longestOver = Math.max(watch.longestOver, time - since);
    if (time - since >= limits.shortTime) passed["continuous current"] ??= since + limits.shortTime;
  }
  watch.overSince = over ? since : null;
}
