import { stiffStep, type TwoRates } from "./stiff-step.ts";

/** Where a motor's losses go: the winding alone, or winding and housing. SI. */
export interface MotorThermal {
  readonly heatCapacity: number;
  /** Winding to air, or to the housing where there is one [K/W]. */
  readonly thermalResistance: number;
  readonly housing?: { readonly heatCapacity: number; readonly thermalResistance: number } | undefined;
  /** Hottest permitted winding [K]. */
  readonly temperatureMaximum: number;
}

/** Losses that heat the motor at a temperature of its winding [W]. */
export interface MotorHeat {
  readonly copper: number;
  /** Iron, bearings, air: heats the housing where there is one. */
  readonly idle: number;
}

export type HeatAt = (temperature: number) => MotorHeat;

/** Above this nothing is looked for: every winding has long gone [K]. */
const hottest = 1e4;

/** Temperature of the winding in the long run with this heat, above that of the air [K]. */
function riseOf(thermal: MotorThermal, heat: MotorHeat): number {
  const { housing, thermalResistance } = thermal;
  if (!housing) return thermalResistance * (heat.copper + heat.idle);
  return housing.thermalResistance * (heat.copper + heat.idle) + thermalResistance * heat.copper;
}

/**
 * Temperature at which a winding stays [K], or null where it runs away: resistance then grows faster with temperature than
 * heat can leave.
 *
 * @derivation first place where heat in equals heat out, marched from the air's temperature in doubling steps, then halved
 */
export function steadyTemperature(thermal: MotorThermal, ambient: number, heatAt: HeatAt): number | null {
  const surplus = (temperature: number): number => ambient + riseOf(thermal, heatAt(temperature)) - temperature;
  let low = ambient;
  let step = 1;
  while (surplus(low + step) > 0) {
    low += step;
    step *= 1.5;
    if (low > hottest) return null;
  }
  let high = low + step;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (surplus(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export interface HeatingSample {
  readonly time: number;
  readonly winding: number;
  /** That of the air where there is no housing. */
  readonly housing: number;
}

export interface Heating {
  /** Until the winding reaches its limit [s]; null where it does not before `duration`. */
  readonly timeToLimit: number | null;
  readonly samples: readonly HeatingSample[];
}

/** Error allowed in one step [K]. */
const tolerance = 1e-5;
/** Most steps of a march; twenty times what was ever needed. */
const mostSteps = 20_000;

/** Rates of both temperatures [K/s]. */
function rates(thermal: MotorThermal, ambient: number, heatAt: HeatAt): (winding: number, housing: number) => TwoRates {
  const { heatCapacity, thermalResistance, housing: shell } = thermal;
  return (winding, housing) => {
    const { copper, idle } = heatAt(winding);
    if (!shell) return [(copper + idle - (winding - ambient) / thermalResistance) / heatCapacity, 0];
    const passed = (winding - housing) / thermalResistance;
    return [(copper - passed) / heatCapacity, (idle + passed - (housing - ambient) / shell.thermalResistance) / shell.heatCapacity];
  };
}

/** Slowest time constant of the network without the growth of resistance, or more [s]. */
export function slowestTime({ heatCapacity, thermalResistance, housing }: MotorThermal): number {
  if (!housing) return heatCapacity * thermalResistance;
  return heatCapacity * (thermalResistance + housing.thermalResistance) + housing.heatCapacity * housing.thermalResistance;
}

/**
 * How a motor heats from one temperature of all its parts, up to its limit or for a duration [s].
 *
 * @param start of winding and housing [K]
 */
export function heating(
  thermal: MotorThermal,
  at: { readonly ambient: number; readonly start: number; readonly duration: number },
  heatAt: HeatAt,
): Heating {
  const flow = rates(thermal, at.ambient, heatAt);
  const limit = thermal.temperatureMaximum;
  let here: HeatingSample = { time: 0, winding: at.start, housing: thermal.housing ? at.start : at.ambient };
  const samples = [here];
  if (at.start >= limit) return { timeToLimit: 0, samples };
  let step = Math.min(slowestTime(thermal) / 1000, at.duration / 50);
  for (let count = 0; count < mostSteps && here.time < at.duration; count++) {
    const taken = stiffStep(flow, [here.winding, here.housing], Math.min(step, at.duration - here.time), tolerance);
    step = taken.next;
    const next = { time: here.time + taken.step, winding: taken.state[0], housing: taken.state[1] };
    if (next.winding >= limit) {
      const share = limitShare(here.winding, next.winding, taken.step * taken.first[0], taken.step * taken.last[0], limit);
      const between = (a: number, b: number): number => a + (b - a) * share;
      const reached = { time: between(here.time, next.time), winding: limit, housing: between(here.housing, next.housing) };
      return { timeToLimit: reached.time, samples: [...samples, reached] };
    }
    here = next;
    samples.push(here);
  }
  return { timeToLimit: null, samples };
}

/** Share of a step at which a cubic with these ends and slopes reaches a value. */
function limitShare(from: number, to: number, slopeFrom: number, slopeTo: number, value: number): number {
  const cubic = (s: number): number =>
    from + s * slopeFrom + s * s * (3 * (to - from) - 2 * slopeFrom - slopeTo) + s * s * s * (2 * (from - to) + slopeFrom + slopeTo);
  let [low, high] = [0, 1];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (cubic(middle) < value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
