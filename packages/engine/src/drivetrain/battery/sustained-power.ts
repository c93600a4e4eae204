import type { PackModel } from "./pack-step.kernel.ts";
import { applyLoad, packStepper, stepOnce } from "./pack-stepper.ts";

/** How long a pack in some state holds a load [s], at most `longest`. */
export function holdingTime(model: PackModel, state: Float64Array, isPower: boolean, load: number, longest: number): number {
  const stepper = packStepper(model, state);
  if (!applyLoad(stepper, isPower, load)) return 0;
  let time = 0;
  while (time < longest && stepper.ended === null) time += stepOnce(stepper, isPower, load, Math.min(longestStep, longest - time));
  return Math.min(time, longest);
}

const longestStep = 10;
const halvings = 40;

/** Largest power that a pack in some state holds for a duration [W]; to a millionth of what it gives at once. */
export function sustainedPower(model: PackModel, state: Float64Array, duration: number): number {
  const stepper = packStepper(model, state);
  applyLoad(stepper, true, 0);
  if (stepper.ended !== null) return 0;
  const largest = stepper.scratch.largestPower;
  const holds = (power: number) => holdingTime(model, state, true, power, duration) >= duration;
  let low = 0;
  let high = largest;
  for (let i = 0; i < halvings && high - low > 1e-6 * largest; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
