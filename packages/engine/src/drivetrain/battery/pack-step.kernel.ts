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
  readonly temperatures: Float64Array;
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
    sources: new Float64Array(groups),
    resistances: new Float64Array(groups),
    node: new Float64Array(cellColumns + 1),
    places: new Int32Array(groups),
  };
}

/** Most rounds of the implicit step; each gains about four digits. */
const mostRounds = 30;
const roundTolerance = 1e-11;
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

/** Rest voltage integrated from the first state of the table [V]. */
function restIntegral(table: CellTable, place: number, at: number, row: number): number {
  const { states, restIntegral: integral } = table;
  const lower = Math.floor(row);
  const weight = row - lower;
  const value = restIntegralAt(table, place, at, lower);
  return weight > 0 && integral.length > (lower + 1) * states.length
    ? value + (restIntegralAt(table, place, at, lower + 1) - value) * weight
    : value;
}

function restIntegralAt(table: CellTable, place: number, at: number, row: number): number {
  const { states, nodes, restIntegral: integral } = table;
  const node = row * states.length + place;
  const low = states[place] as number;
  const a = nodes[node * cellColumns] as number;
  const beyond = at - low;
  if (beyond <= 0) return (integral[node] as number) + a * beyond;
  const width = (states[place + 1] as number) - low;
  const b = nodes[(node + 1) * cellColumns] as number;
  if (beyond >= width) return (integral[node + 1] as number) + b * (beyond - width);
  return (integral[node] as number) + beyond * (a + ((b - a) * beyond) / width / 2);
}

/** Mean rest voltage between two states of charge; exact for straight pieces. */
function meanRest(table: CellTable, from: number, a: number, b: number, row: number, node: Float64Array): number {
  const placeA = placeOf(table.states, a, from);
  const placeB = placeOf(table.states, b, placeA);
  if (placeA === placeB || Math.abs(a - b) < 1e-12) {
    lookUp(table, placeA, (a + b) / 2, row, node);
    const low = table.states[placeA] as number;
    const high = table.states[placeA + 1] as number;
    const inside = Math.min(a, b) >= low && Math.max(a, b) <= high;
    if (inside || Math.abs(a - b) < 1e-12) return node[0] as number;
  }
  return (restIntegral(table, placeA, a, row) - restIntegral(table, placeB, b, row)) / (a - b);
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
  scratch.largestCurrent = Math.max(0, (source - (matched && isPower ? source / 2 : cutoffVoltage)) / resistance);
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

/**
 * One step of constant load: `from` into `to`, mean currents and energies into the scratch. The current of each group is constant
 * over the step and such that the load is met on the mean of the step; with that current charge, pairs, diffusion and temperature
 * are integrated exactly, and rest voltage is its mean over the charge drawn. So second order in the step, and energy given equals
 * energy at the terminals plus losses to round-off. `scratch.currents` is where the search begins. False when the load cannot be met.
 *
 * @derivation own scheme: mean-value form of the equivalent circuit with surface lag
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
  const { table, groups, series, parallel, counts, capacities, resistanceFactors, isolatorResistance } = model;
  const { currents, previous, temperatures, sources, resistances, node, places, energies } = scratch;
  const { activation, diffusionTime, diffusionActivation, pairs } = table;
  const cells = series * parallel;
  const cooling = model.heatCapacity * model.thermalResistance;
  const left = Math.exp(-step / cooling);
  const gone = -Math.expm1(-step / cooling);
  for (let g = 0; g < groups; g++) temperatures[g] = from[g * stateSize + 4] as number;
  for (let round = 0; round < mostRounds; round++) {
    energies.fill(0);
    for (let g = 0; g < groups; g++) {
      const at = g * stateSize;
      const temperature = temperatures[g] as number;
      const current = currents[g] as number;
      const capacity = capacities[g] as number;
      const cold = 1 / temperature - 1 / reference;
      const row = temperaturePlace(table.temperatures, temperature);
      const share = availableShare(table, temperature);
      const charge0 = 1 - (1 - (from[at] as number)) / share;
      const drawn = step / (capacity * share);
      const charge1 = charge0 - current * drawn;
      let lag1 = from[at + 1] as number;
      let lagGain = 0;
      if (diffusionTime > 0) {
        const time = diffusionTime * Math.exp(diffusionActivation * cold);
        lagGain = (-Math.expm1(-step / time) * time) / capacity;
        lag1 = lag1 * Math.exp(-step / time) + lagGain * current;
      }
      const surface0 = charge0 - (from[at + 1] as number);
      const surface1 = charge1 - lag1;
      const place = placeOf(table.states, (surface0 + surface1) / 2, places[g] as number);
      places[g] = place;
      const mean = meanRest(table, place, charge0, charge1, row, node);
      const meanSurface = diffusionTime > 0 ? meanRest(table, place, surface0, surface1, row, node) : mean;
      lookUp(table, place, (surface0 + surface1) / 2, row, node);
      // Only speeds the search; never negative, so that the source stays one.
      const slope = Math.max(0, 0.5 * (node[cellColumns] as number) * (drawn + lagGain));
      const growth = resistanceFactors[g] as number;
      const ohmic = (node[1] as number) * growth * Math.exp((activation[0] as number) * cold);
      let kept = 0;
      let relaxing = 0;
      for (let pair = 0; pair < pairs; pair++) {
        const factor = Math.exp((activation[1 + pair] as number) * cold);
        const resistance = (node[2 + 2 * pair] as number) * growth * factor;
        const share2 = step / ((node[3 + 2 * pair] as number) * factor);
        const fading = -Math.expm1(-share2);
        const voltage = from[at + 2 + pair] as number;
        const held = fading / share2;
        kept += voltage * held;
        relaxing += resistance * (1 - held);
        to[at + 2 + pair] = voltage + (resistance * current - voltage) * fading;
      }
      sources[g] = series * (meanSurface + slope * current - kept);
      resistances[g] = (series * (ohmic + relaxing + slope)) / parallel + isolatorResistance;
      to[at] = (from[at] as number) - (current * step) / capacity;
      to[at + 1] = lag1;
      const count = counts[g] as number;
      const charge = current * step;
      const lostOhmic = ohmic * current * charge;
      const lostRelaxing = (kept + relaxing * current) * charge;
      const lostLag = (mean - meanSurface) * charge;
      const heat = (cells * (lostOhmic + lostRelaxing + lostLag)) / step;
      const warm = model.bayTemperature + model.thermalResistance * heat;
      to[at + 4] = warm * gone + (from[at + 4] as number) * left;
      temperatures[g] = 0.5 * ((from[at + 4] as number) + (to[at + 4] as number));
      const all = count * cells;
      energies[0] = (energies[0] as number) + mean * charge * all;
      energies[1] = (energies[1] as number) + lostOhmic * all;
      energies[2] = (energies[2] as number) + lostRelaxing * all;
      energies[3] = (energies[3] as number) + lostLag * all;
      const block = current * parallel;
      energies[4] = (energies[4] as number) + isolatorResistance * block * block * step * count;
    }
    for (let g = 0; g < groups; g++) previous[g] = currents[g] as number;
    if (!shareLoad(model, scratch, isPower, load)) return false;
    let change = 0;
    let size = 0;
    for (let g = 0; g < groups; g++) {
      change = Math.max(change, Math.abs((currents[g] as number) - (previous[g] as number)));
      size = Math.max(size, Math.abs(currents[g] as number));
    }
    if (round > 0 && change <= roundTolerance * size) break;
  }
  energies[5] = model.wiringResistance * scratch.current * scratch.current * step;
  return true;
}
