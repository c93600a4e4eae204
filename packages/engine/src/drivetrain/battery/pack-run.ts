import type { LoadProfile } from "./load-profile.ts";
import { type LimitWatch, limitWatch, packCharge, type RunLimitName, type RunLimits, watchInstant, watchStep } from "./pack-limits.ts";
import { energyParts, type PackModel, restVoltage, stateSize } from "./pack-step.kernel.ts";
import { applyLoad, type PackEnd, type PackStepper, packStepper, repeatShorter, stepOnce } from "./pack-stepper.ts";

export interface RunPlan {
  readonly model: PackModel;
  readonly start: Float64Array;
  readonly profile: LoadProfile;
  /** Longest step and time between rows [s]. */
  readonly timeStep: number;
  readonly rowInterval: number;
  /** The run ends here at the latest [s]. */
  readonly longest: number;
  readonly limits: RunLimits;
  /** End at the first limit that is passed, not only where the pack can no more. */
  readonly endAtFirstLimit: boolean;
  /** The run is broken off after so many steps, or values in its rows. */
  readonly mostSteps: number;
  readonly mostRowValues: number;
}

/** What ends a run. */
export type RunEnd = PackEnd | "end of the load" | "longest time" | "too many steps" | "too many rows" | RunLimitName;

/** Columns of a row before those of the groups. */
export const rowHead = 6;
/** Columns of one group: cell current, state of charge, temperature. */
export const rowGroup = 3;

export interface RunRecord {
  /**
   * Flat rows: time, voltage, current, state of charge, rest voltage, largest power, then per group current of one cell, state of
   * charge and temperature.
   */
  readonly rows: Float64Array;
  readonly width: number;
  readonly duration: number;
  readonly end: RunEnd;
  /** Load that was on or asked for at the end, and since when. */
  readonly lastLoad: { readonly isPower: boolean; readonly value: number; readonly since: number };
  readonly watch: LimitWatch;
  readonly stepper: PackStepper;
  /** Energy at the terminals, and as in `PackScratch` [J]. */
  readonly energyOut: number;
  readonly energies: Float64Array;
  readonly chargeOut: number;
  /** Charge that blocks gave to their neighbours [C]. */
  readonly circulated: number;
  readonly steps: number;
}

interface Course {
  readonly plan: RunPlan;
  readonly stepper: PackStepper;
  readonly watch: LimitWatch;
  /** Filled up to `filled`. */
  rows: Float64Array;
  filled: number;
  readonly energies: Float64Array;
  time: number;
  /** The next row stands at this time, `rowCount` intervals from the start. */
  nextRow: number;
  rowCount: number;
  energyOut: number;
  chargeOut: number;
  circulated: number;
  steps: number;
  end: RunEnd | null;
  lastLoad: { isPower: boolean; value: number; since: number };
}

function startedCourse(plan: RunPlan): Course {
  return {
    plan,
    stepper: packStepper(plan.model, plan.start),
    watch: limitWatch(plan.limits),
    rows: new Float64Array(1024),
    filled: 0,
    energies: new Float64Array(energyParts),
    time: 0,
    nextRow: 0,
    rowCount: 0,
    energyOut: 0,
    chargeOut: 0,
    circulated: 0,
    steps: 0,
    end: null,
    lastLoad: { isPower: true, value: 0, since: 0 },
  };
}

/** Discharges a pack along a load profile. */
export function runPack(plan: RunPlan): RunRecord {
  const course = startedCourse(plan);
  const { stages, repeats } = plan.profile;
  let begin = 0;
  for (let repeat = 0; repeat < repeats && course.end === null; repeat++) {
    for (const { duration, kind, value } of stages) {
      if (begin >= plan.longest) course.end = "longest time";
      if (course.end !== null) break;
      runStage(course, kind === "power", value, begin, Math.min(begin + duration, plan.longest));
      begin += duration;
    }
  }
  if (course.end !== "longest time") course.end ??= course.time >= plan.longest ? "longest time" : "end of the load";
  if (rowTime(course) < course.time || course.filled === 0) addRow(course);
  const { energies, watch, stepper } = course;
  return {
    rows: course.rows.subarray(0, course.filled),
    width: rowHead + rowGroup * plan.model.groups,
    duration: course.time,
    end: course.end,
    lastLoad: course.lastLoad,
    watch,
    stepper,
    energyOut: course.energyOut,
    energies,
    chargeOut: course.chargeOut,
    circulated: course.circulated,
    steps: course.steps,
  };
}

function runStage(course: Course, isPower: boolean, load: number, begin: number, until: number): void {
  const { stepper, watch, plan } = course;
  course.time = begin;
  const before = course.lastLoad;
  course.lastLoad = { isPower, value: load, since: begin };
  if (!applyLoad(stepper, isPower, load)) {
    course.end = stepper.ended;
    // The last row stands under the load before this one; none at the very start.
    applyLoad(stepper, before.isPower, before.value);
    if (begin === 0) watchInstant(watch, stepper, begin);
    return;
  }
  watchInstant(watch, stepper, begin);
  while (course.time < until && course.end === null) {
    if (course.time >= course.nextRow - 1e-9) addRow(course);
    course.end = limitPassed(course) ?? brokenOff(course);
    if (course.end !== null) return;
    const target = Math.min(course.time + plan.timeStep, course.nextRow, until);
    let step = stepOnce(stepper, isPower, load, target - course.time);
    if (step > 0) watchStep(watch, stepper, isPower, load, step, course.time + step);
    const passed = limitPassed(course);
    if (passed !== null) {
      step = Math.max(0, Math.min(step, (watch.passed[passed] as number) - course.time));
      repeatShorter(stepper, isPower, load, step);
      course.end = passed;
    }
    course.time = step === target - course.time ? target : course.time + step;
    course.steps += 1;
    count(course, step);
    if (passed === null && stepper.ended !== null) course.end = stepper.ended;
  }
}

function brokenOff({ steps, filled, plan }: Course): RunEnd | null {
  if (steps >= plan.mostSteps) return "too many steps";
  return filled >= plan.mostRowValues ? "too many rows" : null;
}

/** The first limit that was passed, where a run is to end there. */
function limitPassed({ plan, watch }: Course): RunLimitName | null {
  if (!plan.endAtFirstLimit) return null;
  const first = Object.entries(watch.passed).sort(([, a], [, b]) => a - b)[0];
  return first ? (first[0] as RunLimitName) : null;
}

function count(course: Course, step: number): void {
  const { stepper, energies, plan } = course;
  const { model } = plan;
  for (let i = 0; i < energyParts; i++) energies[i] = (energies[i] as number) + (stepper.energies[i] as number);
  course.energyOut += stepper.meanVoltage * stepper.meanCurrent * step;
  course.chargeOut += stepper.meanCurrent * step;
  for (let g = 0; g < model.groups; g++) {
    const current = stepper.meanCurrents[g] as number;
    if (current < 0) course.circulated -= current * model.parallel * (model.counts[g] as number) * step;
  }
}

function rowTime({ rows, filled, plan }: Course): number {
  return rows[filled - rowHead - rowGroup * plan.model.groups] ?? -1;
}

function addRow(course: Course): void {
  const { stepper, plan } = course;
  const { model, state, scratch, currents } = stepper;
  const width = rowHead + rowGroup * model.groups;
  if (course.filled + width > course.rows.length) {
    const wider = new Float64Array(2 * (course.rows.length + width));
    wider.set(course.rows);
    course.rows = wider;
  }
  const { rows } = course;
  let at = course.filled;
  const largestPower = scratch.largestPower;
  rows[at++] = course.time;
  rows[at++] = stepper.voltage;
  rows[at++] = stepper.current;
  rows[at++] = packCharge(model, state);
  rows[at++] = restVoltageOf(stepper);
  rows[at++] = largestPower;
  for (let g = 0; g < model.groups; g++) {
    rows[at++] = currents[g] as number;
    rows[at++] = state[g * stateSize] as number;
    rows[at++] = state[g * stateSize + 4] as number;
  }
  course.filled = at;
  while (course.nextRow <= course.time + 1e-9) course.nextRow = ++course.rowCount * plan.rowInterval;
}

/** Voltage of the pack at rest, every gradient gone, the blocks apart: mean over blocks [V]. */
function restVoltageOf({ model, state, scratch }: PackStepper): number {
  let sum = 0;
  let blocks = 0;
  for (let g = 0; g < model.groups; g++) {
    const count = model.counts[g] as number;
    sum += count * restVoltage(model, state, g, scratch);
    blocks += count;
  }
  return (model.series * sum) / blocks;
}
