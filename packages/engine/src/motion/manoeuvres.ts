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

/**
 * Time from `from` until everything is within the band for good [s]; null when it is not by the end. Rotor speed counts only where
 * `withRotor`: a rotor whose drive has stopped has no speed to come back to.
 */
export function recoveryTime(
  samples: readonly FlightSample[],
  from: number,
  withRotor = true,
  band: RecoveryBand = usualBand,
): number | null {
  const [first] = samples;
  if (!first) return null;
  for (let k = samples.length - 1; k >= 0; k--) {
    const sample = samples[k] as FlightSample;
    if (isBack(sample, first, withRotor, band)) continue;
    if (k === samples.length - 1) return null;
    return Math.max(0, (samples[k + 1] as FlightSample).time - from);
  }
  return 0;
}

function isBack(now: FlightSample, first: FlightSample, withRotor: boolean, band: RecoveryBand): boolean {
  const turned = Math.max(Math.abs(now.attitude.roll - first.attitude.roll), Math.abs(now.attitude.pitch - first.attitude.pitch));
  const rates = Math.max(...now.rates.map((rate, i) => Math.abs(rate - (first.rates[i] as number))));
  const rotors = withRotor ? now.rotorRates.map((rate, i) => Math.abs(rate / (first.rotorRates[i] as number) - 1)) : [];
  return (
    turned <= band.attitude &&
    rates <= band.rates &&
    Math.abs(now.loadFactor - first.loadFactor) <= band.loadFactor &&
    Math.max(0, ...rotors) <= band.rotorRate
  );
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
