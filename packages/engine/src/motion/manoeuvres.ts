import type { EulerAngles } from "./attitude.ts";
import type { FlightSample } from "./flight-simulation.ts";

/**
 * An excursion of pitch that is asked for: down and back (push-over) or up and back (pull-up), in the shape of 1 − cosine.
 *
 * @param amplitude largest change of pitch, nose up positive [rad]
 * @param from, duration [s]
 */
export function pitchExcursion(start: EulerAngles, amplitude: number, from: number, duration: number): (time: number) => EulerAngles {
  return (time) => {
    const share = (time - from) / duration;
    if (share <= 0 || share >= 1) return start;
    return { ...start, pitch: start.pitch + (amplitude * (1 - Math.cos(2 * Math.PI * share))) / 2 };
  };
}

/** When a flight counts as what it was: near enough to its first sample in attitude, rotor speed, load and rates. */
export interface RecoveryBand {
  /** [rad] */
  readonly attitude: number;
  /** Of the first [1]. */
  readonly rotorRate: number;
  readonly loadFactor: number;
  /** [rad/s] */
  readonly rates: number;
}

/** Two degrees, two hundredths of rotor speed, a twentieth of weight, three degrees per second: common practice, by eye. */
export const usualBand: RecoveryBand = { attitude: 0.035, rotorRate: 0.02, loadFactor: 0.05, rates: 0.05 };

/** What a flight should come back to. */
export interface RecoveryGoal {
  readonly roll: number;
  readonly pitch: number;
  readonly loadFactor: number;
  /** [rad/s] */
  readonly rates: readonly [number, number, number];
  /** [rad/s]; none where the rotors' speed does not matter. */
  readonly rotorRates: readonly number[];
}

/** The state of a sample as a goal. */
export function goalOf({ attitude, loadFactor, rates, rotorRates }: FlightSample): RecoveryGoal {
  return { roll: attitude.roll, pitch: attitude.pitch, loadFactor, rates, rotorRates };
}

/** Time from `from` until everything is within the band of the goal for good [s]; null when it is not by the end. */
export function recoveryTime(
  samples: readonly FlightSample[],
  from: number,
  goal: RecoveryGoal,
  band: RecoveryBand = usualBand,
): number | null {
  for (let k = samples.length - 1; k >= 0; k--) {
    if (outsideBand(samples[k] as FlightSample, goal, band).length === 0) continue;
    return k === samples.length - 1 ? null : Math.max(0, (samples[k + 1] as FlightSample).time - from);
  }
  return samples.length > 0 ? 0 : null;
}

/** What of a sample is outside the band, in words. */
export function outsideBand(now: FlightSample, goal: RecoveryGoal, band: RecoveryBand = usualBand): readonly string[] {
  const rates = Math.max(...now.rates.map((rate, i) => Math.abs(rate - (goal.rates[i] as number))));
  const rotors = goal.rotorRates.map((rate, i) => Math.abs((now.rotorRates[i] ?? 0) / rate - 1));
  return [
    ...(Math.abs(now.attitude.roll - goal.roll) > band.attitude ? ["roll"] : []),
    ...(Math.abs(now.attitude.pitch - goal.pitch) > band.attitude ? ["pitch"] : []),
    ...(rates > band.rates ? ["rates"] : []),
    ...(Math.abs(now.loadFactor - goal.loadFactor) > band.loadFactor ? ["load factor"] : []),
    ...(Math.max(0, ...rotors) > band.rotorRate ? ["rotor speed"] : []),
  ];
}

/** Smallest and largest of something over a flight, with the time of each. */
export function extremesOf(
  samples: readonly FlightSample[],
  value: (sample: FlightSample) => number,
): { readonly lowest: number; readonly highest: number; readonly lowestAt: number; readonly highestAt: number } {
  let [lowest, highest, lowestAt, highestAt] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0];
  for (const sample of samples) {
    const now = value(sample);
    if (now < lowest) [lowest, lowestAt] = [now, sample.time];
    if (now > highest) [highest, highestAt] = [now, sample.time];
  }
  return { lowest, highest, lowestAt, highestAt };
}
