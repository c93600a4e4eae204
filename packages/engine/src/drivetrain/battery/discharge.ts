import type { BatteryPack } from "./pack.ts";

/** What the terminals show while a power is drawn, or why they cannot give it. */
export type TerminalState =
  | { readonly kind: "delivers"; readonly current: number; readonly voltage: number }
  | {
      readonly kind: "not-deliverable";
      /** Largest power [W] that this state of charge can give above the cut-off voltage. */
      readonly largestPower: number;
      readonly because: "cut-off voltage" | "internal resistance";
    };

/**
 * Current [A] and voltage [V] when the terminals give `power` [W]: the smaller root of P = I (U − I R), which is the
 * stable one. Not deliverable when no root exists or the voltage would fall below cut-off.
 *
 * @source plett-2015, ch. 2, equivalent circuit with series resistance only, unchecked
 */
function terminalState(pack: BatteryPack, stateOfCharge: number, power: number): TerminalState {
  const rest = pack.openCircuitVoltage(stateOfCharge);
  const resistance = pack.resistance(stateOfCharge);
  const discriminant = rest * rest - 4 * resistance * power;
  const cutoff = pack.cutoffVoltage;
  const voltage = discriminant >= 0 ? (rest + Math.sqrt(discriminant)) / 2 : Number.NEGATIVE_INFINITY;
  if (voltage >= cutoff) return { kind: "delivers", current: power / voltage, voltage };
  const atCutoff = rest > cutoff ? (cutoff * (rest - cutoff)) / resistance : 0;
  const matched = rest * rest * 0.25;
  return rest / 2 > cutoff
    ? { kind: "not-deliverable", largestPower: matched / resistance, because: "internal resistance" }
    : { kind: "not-deliverable", largestPower: atCutoff, because: "cut-off voltage" };
}

export type StepOutcome =
  | { readonly kind: "stepped"; readonly stateOfCharge: number; readonly voltage: number; readonly current: number }
  | { readonly kind: "not-deliverable"; readonly largestPower: number; readonly because: "cut-off voltage" | "internal resistance" };

/**
 * State of charge after drawing a constant power [W] for `duration` [s]: explicit midpoint, second order in the step.
 * Voltage and current are those at the step's start.
 *
 * @derivation dz/dt = −I(z, P)/Q with I from `terminalState`.
 */
export function dischargeStep(pack: BatteryPack, stateOfCharge: number, power: number, duration: number): StepOutcome {
  const start = terminalState(pack, stateOfCharge, power);
  if (start.kind === "not-deliverable") return start;
  const middle = terminalState(pack, stateOfCharge - (start.current * duration) / (2 * pack.capacity), power);
  if (middle.kind === "not-deliverable") return middle;
  return {
    kind: "stepped",
    stateOfCharge: stateOfCharge - (middle.current * duration) / pack.capacity,
    voltage: start.voltage,
    current: start.current,
  };
}

/** How long a constant power lasts, and what ends it. */
export interface Endurance {
  /** [s] */
  readonly duration: number;
  readonly ends: "reserve" | "not-deliverable";
  readonly stateOfCharge: number;
  /** ∫ P dt at the terminals [J]. */
  readonly energy: number;
}

/**
 * Time from full to a state of charge, or to the first second at which the power is not deliverable above cut-off.
 * Steps of one second, the last one cut where the reserve is met (linear in the step).
 */
export function enduranceAt(pack: BatteryPack, power: number, reserve: number, from = 1): Endurance {
  let stateOfCharge = from;
  let duration = 0;
  const step = 1;
  if (!(power > 0)) throw new RangeError(`power must be > 0 W, got ${power}`);
  while (stateOfCharge > reserve) {
    const outcome = dischargeStep(pack, stateOfCharge, power, step);
    if (outcome.kind === "not-deliverable") return { duration, ends: "not-deliverable", stateOfCharge, energy: power * duration };
    if (outcome.stateOfCharge <= reserve) {
      duration += (step * (stateOfCharge - reserve)) / (stateOfCharge - outcome.stateOfCharge);
      stateOfCharge = reserve;
      break;
    }
    stateOfCharge = outcome.stateOfCharge;
    duration += step;
  }
  return { duration, ends: "reserve", stateOfCharge, energy: power * duration };
}
