import {
  holdingTime,
  type RunRecord,
  rowGroup,
  rowHead,
  runLimitNames,
  stateSize,
  sustainedPower,
} from "../../drivetrain/battery/index.ts";
import { domainOfRows } from "../../published/index.ts";
import { limitReason } from "./limit-reason.ts";
import type { BatteryOutputs, BatteryRow } from "./output-schema.ts";
import type { BatterySetting } from "./setting.ts";

/** The answer of a run. */
export function batteryOutputsOf(setting: BatterySetting, run: RunRecord): BatteryOutputs {
  const { pack } = setting;
  const rows = rowsOf(setting, run);
  const [given = 0, ohmic = 0, relaxation = 0, diffusion = 0, isolators = 0, wiring = 0] = run.energies;
  const energyLost = ohmic + relaxation + diffusion + isolators + wiring;
  const { watch } = run;
  const { model } = setting.prepared;
  const onBus = pack.blocks.filter((block) => block !== null).length;
  const blockCapacity = pack.cell.capacity * pack.parallel;
  return {
    endedBy: run.end,
    duration: run.duration,
    timeToLimits: limitTimes(setting, run),
    energyOut: run.energyOut,
    energyLost,
    losses: { ohmic, relaxation, diffusion, isolators, wiring },
    capacityDelivered: run.chargeOut,
    stateOfChargeAtEnd: rows[rows.length - 1]?.stateOfCharge ?? 0,
    meanVoltage: run.chargeOut > 0 ? run.energyOut / run.chargeOut : null,
    startVoltage: rows[0]?.openCircuitVoltage ?? 0,
    lowestVoltage: watch.lowestVoltage,
    highestTemperature: watch.hottest,
    lowestTemperature: watch.coldest,
    largestBlockCurrent: watch.largestCurrent,
    largestChargingCurrent: watch.largestCharging,
    circulatedCharge: run.circulated,
    dip: dipOf(setting, rows),
    notDeliverable: notDeliverableOf(run),
    blocks: blocksOf(setting, run),
    conditions: conditionsOf(setting, run),
    bounds: setting.limits,
    energyBalance: balance(
      run.energyOut + energyLost - given,
      Math.max(Math.abs(given) + run.circulated * model.cutoffVoltage, 1e-12 * onBus * blockCapacity * model.cutoffVoltage),
    ),
    domain: domainOfRows("battery", extremes(rows, onBus * blockCapacity)),
    rows,
  };
}

/** What is missing over what went through; nothing where nothing did. */
function balance(difference: number, through: number): number {
  return through > 0 ? difference / through : 0;
}

function conditionsOf({ pack, prepared, title }: BatterySetting, run: RunRecord): BatteryOutputs["conditions"] {
  const onBus = pack.blocks.filter((block) => block !== null).length;
  const hours = run.duration / 3600;
  return {
    cell: title,
    capacity: pack.cell.capacity,
    series: pack.series,
    parallel: pack.parallel,
    blocks: onBus,
    cutoffVoltage: prepared.model.cutoffVoltage,
    wiringResistance: pack.wiringResistance,
    thermalResistance: pack.thermalResistance,
    bayTemperature: pack.bayTemperature,
    rate: hours > 0 ? run.chargeOut / hours / (onBus * pack.parallel * pack.cell.capacity) : 0,
  };
}

function rowsOf({ prepared, pack }: BatterySetting, { rows, width }: RunRecord): BatteryRow[] {
  const { groupOf, model } = prepared;
  const found: BatteryRow[] = [];
  for (let at = 0; at < rows.length; at += width) {
    const voltage = rows[at + 1] as number;
    const current = rows[at + 2] as number;
    let temperature = 0;
    for (let g = 0; g < model.groups; g++) temperature = Math.max(temperature, rows[at + rowHead + g * rowGroup + 2] as number);
    found.push({
      time: rows[at] as number,
      voltage,
      current,
      power: voltage * current,
      stateOfCharge: rows[at + 3] as number,
      temperature,
      openCircuitVoltage: rows[at + 4] as number,
      largestPower: rows[at + 5] as number,
      blockCurrents: groupOf.map((group) => (group === null ? 0 : (rows[at + rowHead + group * rowGroup] as number) * pack.parallel)),
    });
  }
  return found;
}

/** First, last, coldest and hottest row, and that of the largest current: where the run lies farthest out. */
function extremes(rows: readonly BatteryRow[], capacity: number) {
  const [first] = rows;
  const last = rows[rows.length - 1];
  if (!first || !last) return [];
  const most = (of: (row: BatteryRow) => number) => rows.reduce((best, row) => (of(row) > of(best) ? row : best), first);
  return [first, last, most((row) => row.temperature), most((row) => -row.temperature), most((row) => row.current)].map((row) => ({
    stateOfCharge: row.stateOfCharge,
    temperature: row.temperature,
    rate: (row.current * 3600) / capacity,
  }));
}

function limitTimes(setting: BatterySetting, run: RunRecord): BatteryOutputs["timeToLimits"] {
  const names = ["cut-off voltage", "internal resistance", "empty block", ...runLimitNames] as const;
  return names.map((name) => {
    const physical = name === "cut-off voltage" || name === "internal resistance" || name === "empty block";
    const time = physical ? (run.end === name ? run.duration : null) : (run.watch.passed[name] ?? null);
    return { name, time, reason: limitReason(name, setting, run, time !== null), endsRun: run.end === name };
  });
}

/** Shortest rise that counts as one [V per cell]. */
const leastRecovery = 1e-3;

/** The lowest voltage of a constant load before a rise, where that rise is the largest one. */
function dipOf({ plan, pack }: BatterySetting, rows: readonly BatteryRow[]): BatteryOutputs["dip"] {
  if (plan.profile.stages.length !== 1 || rows.length < 3) return null;
  let lowest = 0;
  let best: { readonly at: number; readonly recovery: number } | null = null;
  for (const [index, row] of rows.entries()) {
    const low = rows[lowest] as BatteryRow;
    if (row.voltage < low.voltage) lowest = index;
    else if (row.voltage - low.voltage > (best?.recovery ?? leastRecovery * pack.series))
      best = { at: lowest, recovery: row.voltage - low.voltage };
  }
  const row = best ? rows[best.at] : undefined;
  return best && row ? { time: row.time, voltage: row.voltage, recovery: best.recovery } : null;
}

/** Durations for which it is said what can still be held [s]. */
const heldFor = [10, 60, 300];
const longestHold = 3600;
/** The largest power itself is gone at once; of this share of it one can say how long it lasts. */
const nearlyLargest = 0.99;

function notDeliverableOf({ end, lastLoad, duration, stepper }: RunRecord): BatteryOutputs["notDeliverable"] {
  if (end !== "cut-off voltage" && end !== "internal resistance" && end !== "empty block") return null;
  const { model, state, scratch } = stepper;
  const { isPower, value, since } = lastLoad;
  const { largestPower, largestCurrent } = scratch;
  const empty = end === "empty block";
  return {
    time: duration,
    because: end,
    askedPower: isPower ? value : null,
    askedCurrent: isPower ? null : value,
    askedHeld: duration - since,
    largestPower: empty ? 0 : largestPower,
    largestPowerDuration: empty ? 0 : holdingTime(model, state, true, nearlyLargest * largestPower, longestHold),
    largestCurrent: empty ? 0 : largestCurrent,
    sustained: heldFor.map((held) => ({ duration: held, power: sustainedPower(model, state, held) })),
  };
}

function blocksOf({ prepared, pack, plan }: BatterySetting, { rows, width, stepper }: RunRecord): BatteryOutputs["blocks"] {
  const { state } = stepper;
  const largest = prepared.groupOf.map((group) => {
    let most = 0;
    if (group !== null) for (let at = rowHead + group * rowGroup; at < rows.length; at += width) most = Math.max(most, rows[at] ?? 0);
    return most * pack.parallel;
  });
  return prepared.groupOf.map((group, index) => ({
    block: index + 1,
    isolated: group === null,
    stateOfCharge: group === null ? (plan.start[0] ?? 0) : (state[group * stateSize] ?? 0),
    temperature: group === null ? pack.bayTemperature : (state[group * stateSize + 4] ?? 0),
    largestCurrent: largest[index] ?? 0,
  }));
}
