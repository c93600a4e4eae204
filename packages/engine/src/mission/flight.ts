import { type BatteryPack, dischargeStep } from "../drivetrain/battery/index.ts";
import type { ModeRule, PoweredMode } from "../performance/index.ts";
import type { FlightPath } from "./flight-path.ts";
import type { FlightState, FlightStep, FlightSteps } from "./flight-steps.ts";
import type { PhaseKind } from "./phases.ts";
import type { NamedLimit } from "./power-source.ts";
import type { ModeChoice, PowerTable } from "./power-table.ts";

/** Why a flight does not reach its end. */
export interface FlightStop {
  readonly limit: NamedLimit;
  readonly message: string;
  readonly time: number;
}

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
  /** Highest permitted height above mean sea level [m]. */
  readonly altitudeMaximum: number;
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
    rows.push(rowAt(step.start, step, stateOfCharge, undefined));
    return { rows, stop, energyUsed };
  };
  for (const step of steps.steps) {
    const barred = barrier(step, request);
    if (barred) return ended(barred, step);
    const price = step.query ? table.at(step.query, modeChoice(step, request.modes)) : undefined;
    if (price?.kind === "no-equilibrium") return ended(noEquilibrium(step, price.limit), step);
    const power = price ? price.electricPower : request.groundPower(step.phase.loading);
    const drawn = dischargeStep(pack, stateOfCharge, power, step.duration);
    if (drawn.kind === "not-deliverable") return ended(notDeliverable(step, power, drawn), step);
    if (drawn.stateOfCharge <= 0) return ended(stopped(step, { name: "empty battery", family: "power" }, "the battery is empty"), step);
    rows.push(
      rowAt(step.start, step, stateOfCharge, {
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
  const last = steps.steps.at(-1) as FlightStep;
  rows.push(rowAt(steps.end, last, stateOfCharge, undefined));
  const { lost } = request.path;
  return lost ? { rows, stop: lostTrack(lost, steps.end), energyUsed } : { rows, energyUsed };
}

function rowAt(state: FlightState, step: FlightStep, stateOfCharge: number, taken: FlightRow["step"]): FlightRow {
  const { kind, name, leg } = step.phase;
  return { state, phase: kind, name, leg: leg?.number, stateOfCharge, step: taken };
}

/** Numerical width of the ground [m]: landings end on it. */
const groundTolerance = 0.01;

function barrier(step: FlightStep, request: FlightRequest): FlightStop | undefined {
  const next = step.end;
  if (next.height < next.ground - groundTolerance) {
    return stopped(
      step,
      { name: "ground contact", family: "rule" },
      `the ground rises to ${next.ground.toFixed(0)} m above sea where ${next.height.toFixed(0)} m are flown`,
    );
  }
  if (next.height > request.altitudeMaximum) {
    return stopped(
      step,
      { name: "altitude", family: "rule" },
      `${next.height.toFixed(0)} m above sea are needed, ${request.altitudeMaximum.toFixed(0)} m are permitted`,
    );
  }
  return undefined;
}

function stopped(step: FlightStep, limit: NamedLimit, because: string): FlightStop {
  const { start, phase } = step;
  return { limit, message: `${phase.name}, ${phase.kind}, after ${(start.distance / 1000).toFixed(1)} km: ${because}`, time: start.time };
}

function noEquilibrium(step: FlightStep, limit: NamedLimit): FlightStop {
  const { airspeed, climbRate } = step.start;
  const climbing =
    Math.abs(climbRate) < 0.05 ? "level" : `${climbRate > 0 ? "climbing" : "descending"} at ${Math.abs(climbRate).toFixed(1)} m/s`;
  return stopped(step, limit, `no equilibrium at ${airspeed.toFixed(1)} m/s ${climbing}: ${limit.name}`);
}

function notDeliverable(step: FlightStep, power: number, drawn: { readonly largestPower: number; readonly because: string }): FlightStop {
  const limit = { name: "power not deliverable", family: "power" } as const;
  return stopped(
    step,
    limit,
    `${power.toFixed(0)} W are needed, the pack gives at most ${drawn.largestPower.toFixed(0)} W (${drawn.because})`,
  );
}

function lostTrack(lost: NonNullable<FlightPath["lost"]>, at: FlightState): FlightStop {
  const wind = lost.because === "cross-wind" ? "cross wind" : "head wind";
  const message =
    `${lost.leg.name}, after ${(at.distance / 1000).toFixed(1)} km: cannot hold the track, the ${wind} asks for more than ` +
    `${lost.airspeedNeeded.toFixed(1)} m/s, ${lost.leg.airspeed.toFixed(1)} m/s are commanded`;
  return { limit: { name: "cannot hold the track", family: "air" }, message, time: at.time };
}
