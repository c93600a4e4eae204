import type { AircraftDefinition } from "../../aircraft/index.ts";
import type { WrittenQuantity } from "../contract.ts";

/** A number with the half-width of its 95 % interval. */
export interface WithHalf {
  readonly value: number;
  readonly halfWidth: number;
}

/** A number of the file that is not sure. */
interface UnsureNumber {
  readonly pointer: string;
  readonly text: string;
  readonly value: number;
  readonly standardDeviation: number;
}

/** How far each unsure number moves each result, for one standard deviation. */
export interface Contribution {
  readonly pointer: string;
  readonly text: string;
  readonly shifts: readonly number[];
}

/** Half-width of 95 % of a normal distribution over its standard deviation. */
const coverage = 1.96;

/** Standard deviation of a number as written; undefined when it is written as sure. */
function deviationOf({ uncertainty }: WrittenQuantity): number | undefined {
  switch (uncertainty?.kind) {
    case undefined:
      return undefined;
    case "normal":
      return uncertainty.halfWidth / coverage;
    case "uniform":
      return (uncertainty.high - uncertainty.low) / Math.sqrt(12);
    case "triangular": {
      const { low: a, mode: b, high: c } = uncertainty;
      return Math.sqrt((a * a + b * b + c * c - a * b - a * c - b * c) / 18);
    }
  }
}

export function unsureNumbers(written: Readonly<Record<string, WrittenQuantity>>): readonly UnsureNumber[] {
  return Object.entries(written).flatMap(([pointer, one]) => {
    const standardDeviation = deviationOf(one);
    return standardDeviation === undefined ? [] : [{ pointer, text: one.text, value: one.value, standardDeviation }];
  });
}

/**
 * What a function of the aircraft makes of the unsure numbers of its file: linear propagation of independent inputs,
 * slopes by central differences over one standard deviation either way. Numbers without effect are left out.
 *
 * @source jcgm-100-2008, 5.1.2 and 5.1.3, from memory
 */
export function contributionsTo(
  aircraft: AircraftDefinition,
  numbers: readonly UnsureNumber[],
  results: (aircraft: AircraftDefinition) => readonly number[],
): readonly Contribution[] {
  return numbers.flatMap(({ pointer, text, value, standardDeviation }) => {
    const above = results(withNumber(aircraft, pointer, value + standardDeviation));
    const below = results(withNumber(aircraft, pointer, value - standardDeviation));
    const shifts = above.map((result, index) => (result - (below[index] as number)) / 2);
    return shifts.every((shift) => shift === 0) ? [] : [{ pointer, text, shifts }];
  });
}

/** Half-width of the 95 % interval of one result. */
export function halfWidthOf(contributions: readonly Contribution[], result: number): number {
  return coverage * Math.hypot(...contributions.map(({ shifts }) => shifts[result] as number));
}

/** Half-width that one number alone gives a result. */
export function ownHalfWidth({ shifts }: Contribution, result: number): number {
  return coverage * Math.abs(shifts[result] as number);
}

/** A copy of the aircraft with another number at a JSON Pointer; the same when nothing stands there. */
function withNumber(aircraft: AircraftDefinition, pointer: string, value: number): AircraftDefinition {
  const steps = pointer.split("/").slice(1);
  return replaced(aircraft, steps, value) as AircraftDefinition;
}

function replaced(node: unknown, steps: readonly string[], value: number): unknown {
  const [step, ...rest] = steps;
  if (step === undefined) return typeof node === "number" ? value : node;
  if (Array.isArray(node)) return node.map((item: unknown, index) => (String(index) === step ? replaced(item, rest, value) : item));
  if (typeof node !== "object" || node === null || !Object.hasOwn(node, step)) return node;
  return { ...node, [step]: replaced(Reflect.get(node, step), rest, value) };
}
