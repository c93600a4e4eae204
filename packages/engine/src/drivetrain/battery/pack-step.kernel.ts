import { type CellTable, cellColumns } from "./cell-table.ts";

/** Values per group of a state: state of charge, surface lag, two pair voltages [V], temperature [K]. */
export const stateSize = 5;

/** Energies of a step [J] in `energies`: given by the cells, then lost in ohmic parts, pairs, diffusion, isolators, wiring. */
export const energyParts = 6;

/** A pack made flat for the stepper: blocks that are alike make one group. */
export interface PackModel {
  readonly table: CellTable;
  readonly groups: number;
  readonly series: number;
  readonly parallel: number;
  /** Blocks of each group. */
  readonly counts: Float64Array;
  /** Charge of one cell of the group, aged [C]. */
  readonly capacities: Float64Array;
  /** Growth of resistance of the group [1]. */
  readonly resistanceFactors: Float64Array;
  /** In series with each block [Ω]. */
  readonly isolatorResistance: number;
  /** In series with all blocks [Ω]. */
  readonly wiringResistance: number;
  /** Of one block [J/K]. */
  readonly heatCapacity: number;
  /** One block to bay air [K/W]. */
  readonly thermalResistance: number;
  /** [K] */
  readonly bayTemperature: number;
  /** Lowest permitted voltage at the terminals [V]. */
  readonly cutoffVoltage: number;
}

/** What the stepper writes into; one per run, since it is used again at every step. */
export interface PackScratch {
  /** Current of one cell of each group [A]: of the last `terminals`, or the mean of the last step. */
  readonly currents: Float64Array;
  readonly energies: Float64Array;
  /** Total current [A] and terminal voltage [V], likewise. */
  current: number;
  voltage: number;
  /** After `terminals`: largest power that the terminals can give now [W], and what forbids more. */
  largestPower: number;
  largestCurrent: number;
  heldBy: "cut-off voltage" | "internal resistance";
  readonly previous: Float64Array;
  /** Mean temperature of the step, the one that its coefficients were made with, and how fast each group warms [K/s]. */
  readonly temperatures: Float64Array;
  readonly used: Float64Array;
  readonly warming: Float64Array;
  readonly steady: Float64Array;
  readonly sources: Float64Array;
  readonly resistances: Float64Array;
  readonly node: Float64Array;
  readonly places: Int32Array;
}

export function packScratch(groups: number): PackScratch {
  return {
    currents: new Float64Array(groups),
    energies: new Float64Array(energyParts),
    current: 0,
    voltage: 0,
    largestPower: 0,
    largestCurrent: 0,
    heldBy: "cut-off voltage",
    previous: new Float64Array(groups),
    temperatures: new Float64Array(groups),
    used: new Float64Array(groups),
    warming: new Float64Array(groups),
    steady: new Float64Array(groups * coefficientCount),
    sources: new Float64Array(groups),
    resistances: new Float64Array(groups),
    node: new Float64Array(cellColumns + 1),
    places: new Int32Array(groups),
  };
}

/** Most rounds of the search for the currents; two where rest voltage is straight over the step. */
const mostRounds = 30;
/** Coefficients are made anew with a better mean temperature while that is off by more than this [K]. */
const temperatureSlack = 2e-3;
const mostPasses = 6;
const roundTolerance = 1e-11;
const voltageRounding = 1e-15;
const reference = 298.15;

/** Interval of `states` around a value, searched from where it was last. */
function placeOf(states: Float64Array, at: number, from: number): number {
  const last = states.length - 2;
  let place = from;
  while (place > 0 && at < (states[place] as number)) place--;
  while (place < last && at >= (states[place + 1] as number)) place++;
  return place;
}

/** Index of the lower temperature row and the weight of the upper one are packed as index + weight. */
function temperaturePlace(temperatures: Float64Array, at: number): number {
  const last = temperatures.length - 1;
  if (last === 0 || at <= (temperatures[0] as number)) return 0;
  if (at >= (temperatures[last] as number)) return last;
  let row = 0;
  while (at >= (temperatures[row + 1] as number)) row++;
  const low = temperatures[row] as number;
  // Short of 1 by rounding at most: the row stays the lower one.
  return row + Math.min((at - low) / ((temperatures[row + 1] as number) - low), 1 - 1e-12);
}

/** All columns at a surface state and temperature into `node`; the slope of rest voltage over state of charge behind them. */
function lookUp(table: CellTable, place: number, at: number, row: number, node: Float64Array): void {
  const { states, nodes } = table;
  const low = states[place] as number;
  const width = (states[place + 1] as number) - low;
  const share = at <= low ? 0 : at >= low + width ? 1 : (at - low) / width;
  const lower = Math.floor(row);
  const weight = row - lower;
  const stride = states.length * cellColumns;
  const first = lower * stride + place * cellColumns;
  for (let column = 0; column < cellColumns; column++) {
    const a = nodes[first + column] as number;
    const b = nodes[first + cellColumns + column] as number;
    let value = a + (b - a) * share;
    if (weight > 0) {
      const c = nodes[first + stride + column] as number;
      const d = nodes[first + stride + cellColumns + column] as number;
      value += (c + (d - c) * share - value) * weight;
    }
    node[column] = value;
  }
  let rise = (nodes[first + cellColumns] as number) - (nodes[first] as number);
  if (weight > 0) {
    const above = (nodes[first + stride + cellColumns] as number) - (nodes[first + stride] as number);
    rise += (above - rise) * weight;
  }
  node[cellColumns] = share > 0 && share < 1 ? rise / width : 0;
}

/** Rest voltage at a state of charge into node[0], its slope into node[1]. */
function restAt(table: CellTable, place: number, at: number, row: number, node: Float64Array): number {
  const { states, nodes } = table;
  const low = states[place] as number;
  const width = (states[place + 1] as number) - low;
  const share = at <= low ? 0 : at >= low + width ? 1 : (at - low) / width;
  const lower = Math.floor(row);
  const first = (lower * states.length + place) * cellColumns;
  let value = nodes[first] as number;
  let rise = (nodes[first + cellColumns] as number) - value;
  const weight = row - lower;
  if (weight > 0) {
    const above = first + states.length * cellColumns;
    const other = nodes[above] as number;
    const otherRise = (nodes[above + cellColumns] as number) - other;
    value += (other - value) * weight;
    rise += (otherRise - rise) * weight;
  }
  value += rise * share;
  node[0] = value;
  node[1] = share > 0 && share < 1 ? rise / width : 0;
  return value;
}

/** Mean rest voltage between two states of charge: a sum over the straight pieces between them, so nothing cancels. */
function meanRest(table: CellTable, from: number, a: number, b: number, row: number, node: Float64Array): number {
  const { states } = table;
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  let place = placeOf(states, low, from);
  const last = states.length - 2;
  if (low >= (states[place] as number) && high <= (states[place + 1] as number)) return restAt(table, place, (low + high) / 2, row, node);
  let sum = 0;
  let at = low;
  while (at < high) {
    const first = states[place] as number;
    const end = states[place + 1] as number;
    const until = at < first ? Math.min(first, high) : at < end ? Math.min(end, high) : high;
    sum += restAt(table, place, (at + until) / 2, row, node) * (until - at);
    at = until;
    if (place < last && at >= end) place++;
  }
  return high > low ? sum / (high - low) : restAt(table, place, low, row, node);
}

/** Share of the charge that can be drawn at a temperature. */
function availableShare(table: CellTable, temperature: number): number {
  const { shareTemperatures, shares } = table;
  const last = shares.length - 1;
  if (last < 0) return 1;
  if (temperature <= (shareTemperatures[0] as number)) return shares[0] as number;
  if (temperature >= (shareTemperatures[last] as number)) return shares[last] as number;
  let i = 0;
  while (temperature >= (shareTemperatures[i + 1] as number)) i++;
  const low = shareTemperatures[i] as number;
  const y = shares[i] as number;
  return y + (((shares[i + 1] as number) - y) * (temperature - low)) / ((shareTemperatures[i + 1] as number) - low);
}

/** State of charge at the surface of the electrodes of a group: what rest voltage and resistance go by. */
export function surfaceCharge(model: PackModel, state: Float64Array, group: number): number {
  const at = group * stateSize;
  return 1 - (1 - (state[at] as number)) / availableShare(model.table, state[at + 4] as number) - (state[at + 1] as number);
}

/** Rest voltage of one cell of a group at its mean state of charge, every gradient gone [V]. */
export function restVoltage(model: PackModel, state: Float64Array, group: number, scratch: PackScratch): number {
  const { table } = model;
  const at = group * stateSize;
  const temperature = state[at + 4] as number;
  const charge = 1 - (1 - (state[at] as number)) / availableShare(table, temperature);
  lookUp(table, placeOf(table.states, charge, 0), charge, temperaturePlace(table.temperatures, temperature), scratch.node);
  return scratch.node[0] as number;
}

/**
 * The whole pack as one source: groups in parallel, wiring behind. Writes currents; false when the load has no answer.
 *
 * @derivation Kirchhoff's laws for linear sources U = A − B I side by side; smaller root of P = I (E − I R)
 * @source plett-2015, ch. 2, equivalent circuit with relaxation pairs, unchecked
 */
function shareLoad(model: PackModel, scratch: PackScratch, isPower: boolean, load: number): boolean {
  const { counts, groups, parallel, wiringResistance, cutoffVoltage } = model;
  const { sources, resistances, currents } = scratch;
  let conductance = 0;
  let drive = 0;
  for (let g = 0; g < groups; g++) {
    const share = (counts[g] as number) / (resistances[g] as number);
    conductance += share;
    drive += share * (sources[g] as number);
  }
  const source = drive / conductance;
  const resistance = 1 / conductance + wiringResistance;
  const matched = source / 2 > cutoffVoltage;
  scratch.heldBy = matched ? "internal resistance" : "cut-off voltage";
  scratch.largestCurrent = Math.max(0, (source - cutoffVoltage) / resistance);
  scratch.largestPower = matched
    ? (source * source) / (4 * resistance)
    : Math.max(0, (cutoffVoltage * (source - cutoffVoltage)) / resistance);
  let total = load;
  if (isPower) {
    const discriminant = source * source - 4 * resistance * load;
    if (discriminant < 0) return false;
    total = (2 * load) / (source + Math.sqrt(discriminant));
  }
  const bus = source - total / conductance;
  for (let g = 0; g < groups; g++) currents[g] = ((sources[g] as number) - bus) / (resistances[g] as number) / parallel;
  scratch.current = total;
  scratch.voltage = source - total * resistance;
  return true;
}

/** What the terminals show at this instant under a load [W or A]; false when they cannot give it at all. */
export function packTerminals(model: PackModel, state: Float64Array, isPower: boolean, load: number, scratch: PackScratch): boolean {
  const { table, groups, series, parallel, resistanceFactors, isolatorResistance } = model;
  const { node, places } = scratch;
  for (let g = 0; g < groups; g++) {
    const at = g * stateSize;
    const temperature = state[at + 4] as number;
    const surface = surfaceCharge(model, state, g);
    const place = placeOf(table.states, surface, places[g] as number);
    places[g] = place;
    lookUp(table, place, surface, temperaturePlace(table.temperatures, temperature), node);
    const ohmic =
      (node[1] as number) *
      (resistanceFactors[g] as number) *
      Math.exp((table.activation[0] as number) * (1 / temperature - 1 / reference));
    scratch.sources[g] = series * ((node[0] as number) - (state[at + 2] as number) - (state[at + 3] as number));
    scratch.resistances[g] = (series * ohmic) / parallel + isolatorResistance;
  }
  return shareLoad(model, scratch, isPower, load);
}

/** Coefficients of a group over one step: constant while its current is sought. */
const coefficients = {
  chargeStart: 0,
  drawn: 1,
  lagKept: 2,
  lagGain: 3,
  ohmic: 4,
  kept: 5,
  relaxing: 6,
  row: 7,
  mean: 8,
  meanSurface: 9,
  fading: 10,
  pairResistance: 12,
} as const;
const coefficientCount = 14;

/**
 * Everything of a step that does not depend on its current, at the group's temperature in `scratch.temperatures` and at the
 * surface charge that the current sought so far makes on the mean.
 */
function prepareGroup(model: PackModel, from: Float64Array, step: number, scratch: PackScratch, g: number): void {
  const { table } = model;
  const { activation, pairs, diffusionTime } = table;
  const { node, places, steady } = scratch;
  const at = g * stateSize;
  const c = g * coefficientCount;
  const temperature = scratch.temperatures[g] as number;
  const capacity = model.capacities[g] as number;
  const current = scratch.currents[g] as number;
  const cold = 1 / temperature - 1 / reference;
  const share = availableShare(table, temperature);
  const chargeStart = 1 - (1 - (from[at] as number)) / share;
  const drawn = step / (capacity * share);
  const lag = from[at + 1] as number;
  let lagKept = 1;
  let lagGain = 0;
  if (diffusionTime > 0) {
    const time = diffusionTime * Math.exp(table.diffusionActivation * cold);
    const gone = -Math.expm1(-step / time);
    lagKept = 1 - gone;
    lagGain = (gone * time) / capacity;
  }
  const row = temperaturePlace(table.temperatures, temperature);
  const surface = chargeStart - lag + (lag * (1 - lagKept) - current * (drawn + lagGain)) / 2;
  const place = placeOf(table.states, surface, places[g] as number);
  places[g] = place;
  lookUp(table, place, surface, row, node);
  const growth = model.resistanceFactors[g] as number;
  const ohmicB = activation[0] as number;
  const ohmicFactor = Math.exp(ohmicB * cold);
  let kept = 0;
  let relaxing = 0;
  for (let pair = 0; pair < pairs; pair++) {
    const b = activation[1 + pair] as number;
    const factor = b === ohmicB ? ohmicFactor : Math.exp(b * cold);
    const resistance = (node[2 + 2 * pair] as number) * growth * factor;
    const times = step / ((node[3 + 2 * pair] as number) * factor);
    const fading = -Math.expm1(-times);
    const held = fading / times;
    kept += (from[at + 2 + pair] as number) * held;
    relaxing += resistance * (1 - held);
    steady[c + coefficients.fading + pair] = fading;
    steady[c + coefficients.pairResistance + pair] = resistance;
  }
  steady[c + coefficients.chargeStart] = chargeStart;
  steady[c + coefficients.drawn] = drawn;
  steady[c + coefficients.lagKept] = lagKept;
  steady[c + coefficients.lagGain] = lagGain;
  steady[c + coefficients.ohmic] = (node[1] as number) * growth * ohmicFactor;
  steady[c + coefficients.kept] = kept;
  steady[c + coefficients.relaxing] = relaxing;
  steady[c + coefficients.row] = row;
}

/** The group as a linear source over the step, around its current so far: mean rest voltage exactly, its slope for the search. */
function linearSource(model: PackModel, from: Float64Array, scratch: PackScratch, g: number): void {
  const { table, series, parallel } = model;
  const { steady, places, node } = scratch;
  const c = g * coefficientCount;
  const current = scratch.currents[g] as number;
  const chargeStart = steady[c + coefficients.chargeStart] as number;
  const drawn = steady[c + coefficients.drawn] as number;
  const lagGain = steady[c + coefficients.lagGain] as number;
  const row = steady[c + coefficients.row] as number;
  const place = places[g] as number;
  const chargeEnd = chargeStart - current * drawn;
  const mean = meanRest(table, place, chargeStart, chargeEnd, row, node);
  let meanSurface = mean;
  if (table.diffusionTime > 0) {
    const lag = from[g * stateSize + 1] as number;
    const lagEnd = lag * (steady[c + coefficients.lagKept] as number) + lagGain * current;
    meanSurface = meanRest(table, place, chargeStart - lag, chargeEnd - lagEnd, row, node);
  }
  // Only speeds the search; never negative, so that the source stays one.
  const slope = Math.max(0, 0.5 * (node[1] as number) * (drawn + lagGain));
  steady[c + coefficients.mean] = mean;
  steady[c + coefficients.meanSurface] = meanSurface;
  scratch.sources[g] = series * (meanSurface + slope * current - (steady[c + coefficients.kept] as number));
  scratch.resistances[g] =
    (series * ((steady[c + coefficients.ohmic] as number) + (steady[c + coefficients.relaxing] as number) + slope)) / parallel +
    model.isolatorResistance;
}

/** State at the end of the step, and what was given and lost on the way. */
function finishGroup(
  model: PackModel,
  from: Float64Array,
  to: Float64Array,
  step: number,
  scratch: PackScratch,
  g: number,
  gone: number,
): void {
  const { series, parallel, table } = model;
  const { steady, energies, temperatures } = scratch;
  const at = g * stateSize;
  const c = g * coefficientCount;
  const cells = series * parallel;
  const current = scratch.currents[g] as number;
  const charge = current * step;
  to[at] = (from[at] as number) - charge / (model.capacities[g] as number);
  to[at + 1] =
    (from[at + 1] as number) * (steady[c + coefficients.lagKept] as number) + (steady[c + coefficients.lagGain] as number) * current;
  for (let pair = 0; pair < table.pairs; pair++) {
    const voltage = from[at + 2 + pair] as number;
    const settled = (steady[c + coefficients.pairResistance + pair] as number) * current;
    to[at + 2 + pair] = voltage + (settled - voltage) * (steady[c + coefficients.fading + pair] as number);
  }
  const mean = steady[c + coefficients.mean] as number;
  const lostOhmic = (steady[c + coefficients.ohmic] as number) * current * charge;
  const lostRelaxing = ((steady[c + coefficients.kept] as number) + (steady[c + coefficients.relaxing] as number) * current) * charge;
  const lostLag = (mean - (steady[c + coefficients.meanSurface] as number)) * charge;
  const heat = (cells * (lostOhmic + lostRelaxing + lostLag)) / step;
  const warm = model.bayTemperature + model.thermalResistance * heat;
  to[at + 4] = (from[at + 4] as number) + (warm - (from[at + 4] as number)) * gone;
  temperatures[g] = 0.5 * ((from[at + 4] as number) + (to[at + 4] as number));
  const count = model.counts[g] as number;
  const all = count * cells;
  const block = current * parallel;
  energies[0] = (energies[0] as number) + mean * charge * all;
  energies[1] = (energies[1] as number) + lostOhmic * all;
  energies[2] = (energies[2] as number) + lostRelaxing * all;
  energies[3] = (energies[3] as number) + lostLag * all;
  energies[4] = (energies[4] as number) + model.isolatorResistance * block * block * step * count;
}

/** Currents of all groups with which the load is met on the mean of the step; false when there are none. */
function findCurrents(model: PackModel, from: Float64Array, isPower: boolean, load: number, scratch: PackScratch): boolean {
  const { groups } = model;
  const { currents, previous, sources, resistances } = scratch;
  for (let round = 0; round < mostRounds; round++) {
    for (let g = 0; g < groups; g++) {
      linearSource(model, from, scratch, g);
      previous[g] = currents[g] as number;
    }
    if (!shareLoad(model, scratch, isPower, load)) return false;
    let close = true;
    for (let g = 0; g < groups; g++) {
      const change = Math.abs((currents[g] as number) - (previous[g] as number));
      // Either settled, or moving by no more than the rounding of the voltages that drive it.
      const rounding = (voltageRounding * (sources[g] as number)) / (resistances[g] as number);
      close = close && change <= roundTolerance * Math.abs(currents[g] as number) + rounding;
    }
    if (close) return true;
  }
  return true;
}

/**
 * One step of constant load: `from` into `to`, mean currents and energies into the scratch. The current of each group is constant
 * over the step and such that the load is met on the mean of the step; with that current charge, pairs, diffusion and temperature
 * are integrated exactly, and rest voltage is its mean over the charge drawn. So second order in the step, and energy given equals
 * energy at the terminals plus losses to round-off. `scratch.currents` is where the search begins; `scratch.warming` says how fast
 * each group warmed last [K/s]. False when the load cannot be met.
 *
 * @derivation own scheme: mean-value form of the equivalent circuit with surface lag
 * @source bernardi-1985, heat of a cell without its entropy part, from memory
 */
export function advancePack(
  model: PackModel,
  from: Float64Array,
  to: Float64Array,
  isPower: boolean,
  load: number,
  step: number,
  scratch: PackScratch,
): boolean {
  const { groups } = model;
  const { temperatures, warming, energies } = scratch;
  const cooling = model.heatCapacity * model.thermalResistance;
  const gone = -Math.expm1(-step / cooling);
  for (let g = 0; g < groups; g++) temperatures[g] = (from[g * stateSize + 4] as number) + 0.5 * step * (warming[g] as number);
  for (let pass = 0; pass < mostPasses; pass++) {
    for (let g = 0; g < groups; g++) {
      prepareGroup(model, from, step, scratch, g);
      scratch.used[g] = temperatures[g] as number;
    }
    if (!findCurrents(model, from, isPower, load, scratch)) return false;
    energies.fill(0);
    let far = 0;
    for (let g = 0; g < groups; g++) {
      finishGroup(model, from, to, step, scratch, g, gone);
      far = Math.max(far, Math.abs((temperatures[g] as number) - (scratch.used[g] as number)));
    }
    if (far <= temperatureSlack) break;
  }
  energies[5] = model.wiringResistance * scratch.current * scratch.current * step;
  return true;
}
