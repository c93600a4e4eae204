import { type BatteryPack, dischargeStep } from "../drivetrain/battery/index.ts";
import type { ModeRule, PoweredMode } from "../performance/index.ts";
import type { FlightPath } from "./flight-path.ts";
import type { FlightState, FlightStep } from "./flight-state.ts";
import type { FlightSteps } from "./flight-steps.ts";
import { emptyBattery, type FlightStop, lostTrack, noEquilibrium, notDeliverable } from "./flight-stop.ts";
import type { Phase, PhaseKind } from "./phases.ts";
import type { ModeChoice, PowerTable } from "./power-table.ts";

/** One moment of the flight and the step that begins there; at the end of the flight there is none. */
export interface FlightRow {
  readonly state: FlightState;
  readonly phase: PhaseKind;
  readonly name: string;
  /** Number of the leg, counted from 1. */
  readonly leg: number | undefined;
  readonly stateOfCharge: number;
  readonly step:
    | {
        /** [s] */
        readonly duration: number;
        readonly mode: PoweredMode | "on-ground";
        /** At the pack's terminals, constant over the step [W]. */
        readonly power: number;
        readonly rotorShaftPower: number;
        /** At the start of the step [V], [A]. */
        readonly voltage: number;
        readonly current: number;
        readonly stallMargin: number | undefined;
        readonly shares: readonly number[] | undefined;
      }
    | undefined;
}

export interface FlownFlight {
  readonly rows: readonly FlightRow[];
  readonly stop?: FlightStop;
  /** ∫ P dt at the pack's terminals [J]. */
  readonly energyUsed: number;
}

export interface FlightRequest {
  readonly path: FlightPath;
  readonly steps: FlightSteps;
  readonly table: PowerTable;
  readonly modes: ModeRule;
  readonly pack: BatteryPack;
  /** State of charge at the start [1]. */
  readonly stateOfCharge: number;
  /** Power drawn on the ground with a loading [W]. */
  readonly groundPower: (loading: number) => number;
}

/** Which modes a step may use: legs by the rule, hovers and changes of speed driven where that flies. */
export function modeChoice(step: FlightStep, rule: ModeRule): ModeChoice {
  if (step.query?.part === "maneuver")
    return { modes: rule === "clutch-closed" ? ["clutch-closed"] : ["clutch-closed", "clutch-open"], take: "first" };
  return { modes: rule === "cheaper" ? ["clutch-closed", "clutch-open"] : [rule], take: "cheapest" };
}

/**
 * Flies the steps one after the other: power from the table, charge from the pack at constant power over each step. Ends at
 * the first limit met. A state of charge below the reserve is not such a limit: the flight goes on and is judged after.
 *
 * @derivation Energy is the sum of power times duration; charge follows the pack's own discharge law.
 */
export function flyMission(request: FlightRequest): FlownFlight {
  const { steps, pack, table } = request;
  const rows: FlightRow[] = [];
  let stateOfCharge = request.stateOfCharge;
  let energyUsed = 0;
  const ended = (stop: FlightStop, step: FlightStep): FlownFlight => {
    rows.push(rowAt(step.start, step.phase, stateOfCharge, undefined));
    return { rows, stop, energyUsed };
  };
  for (const step of steps.steps) {
    const price = step.query ? table.at(step.query, modeChoice(step, request.modes)) : undefined;
    if (price?.kind === "no-equilibrium") return ended(noEquilibrium(step, price.limit), step);
    const power = price ? price.electricPower : request.groundPower(step.phase.loading);
    const drawn = dischargeStep(pack, stateOfCharge, power, step.duration);
    if (drawn.kind === "not-deliverable") return ended(notDeliverable(step, power, drawn), step);
    if (drawn.stateOfCharge <= 0) return ended(emptyBattery(step), step);
    rows.push(
      rowAt(step.start, step.phase, stateOfCharge, {
        duration: step.duration,
        mode: price ? price.mode : "on-ground",
        power,
        rotorShaftPower: price ? price.rotorShaftPower : 0,
        voltage: drawn.voltage,
        current: drawn.current,
        stallMargin: price?.stallMargin,
        shares: price?.shares,
      }),
    );
    energyUsed += power * step.duration;
    stateOfCharge = drawn.stateOfCharge;
  }
  const last = steps.steps.at(-1)?.phase ?? (request.path.phases[0] as Phase);
  rows.push(rowAt(steps.end, last, stateOfCharge, undefined));
  const { lost } = request.path;
  const stop = steps.barred ?? (lost ? lostTrack(lost, steps.end) : undefined);
  return stop ? { rows, stop, energyUsed } : { rows, energyUsed };
}

function rowAt(state: FlightState, phase: Phase, stateOfCharge: number, step: FlightRow["step"]): FlightRow {
  const { kind, name, leg } = phase;
  return { state, phase: kind, name, leg: leg?.number, stateOfCharge, step };
}
