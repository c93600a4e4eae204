import { type BatteryPack, dischargeStep } from "../drivetrain/battery/index.ts";
import type { ReservePolicy } from "../performance/index.ts";
import type { FlightRow, FlownFlight } from "./flight.ts";

/** A leg or a stop: what it took. SI. */
export interface FlightStage {
  readonly name: string;
  readonly what: string;
  readonly duration: number;
  readonly distance: number;
  readonly meanHeadwind: number;
  readonly meanGroundSpeed: number;
  readonly energy: number;
  readonly stateOfChargeAtEnd: number;
  readonly lowestHeightAboveGround: number;
  /** Share of the time with the clutch open [1]. */
  readonly clutchOpenShare: number;
}

/** Rows of one leg, or of one stop, gathered into a stage each. */
export function flightStages(flight: FlownFlight): readonly FlightStage[] {
  const stages: FlightStage[] = [];
  const { rows } = flight;
  let from = 0;
  for (let index = 1; index < rows.length; index++) {
    const first = rows[from] as FlightRow;
    const here = rows[index] as FlightRow;
    const last = index === rows.length - 1;
    if (!last && here.leg === first.leg && (here.leg !== undefined || (here.phase === first.phase && here.name === first.name))) continue;
    stages.push(stageOf(rows.slice(from, index + 1)));
    from = index;
  }
  return stages;
}

/** One stage; the last row only closes it. */
function stageOf(rows: readonly FlightRow[]): FlightStage {
  const first = rows[0] as FlightRow;
  const end = rows.at(-1) as FlightRow;
  let energy = 0;
  let headwind = 0;
  let open = 0;
  let lowest = Number.POSITIVE_INFINITY;
  for (const { step, state } of rows.slice(0, -1)) {
    lowest = Math.min(lowest, state.height - state.ground);
    if (step === undefined) continue;
    energy += step.power * step.duration;
    headwind += state.headwind * step.duration;
    if (step.mode === "clutch-open") open += step.duration;
  }
  const duration = end.state.time - first.state.time;
  const distance = end.state.distance - first.state.distance;
  const mean = (sum: number) => (duration > 0 ? sum / duration : 0);
  return {
    name: first.name,
    what: first.leg === undefined ? first.phase : "leg",
    duration,
    distance,
    meanHeadwind: mean(headwind),
    meanGroundSpeed: mean(distance),
    energy,
    stateOfChargeAtEnd: end.stateOfCharge,
    lowestHeightAboveGround: Math.max(0, Math.min(lowest, end.leg === first.leg ? end.state.height - end.state.ground : lowest)),
    clutchOpenShare: mean(open),
  };
}

/** How a flight ends against its reserve. */
export interface ReserveJudgement {
  /** Undefined when the flight does not land. */
  readonly landingStateOfCharge: number | undefined;
  readonly reserveMargin: number | undefined;
  /** What the policy's hover would leave; undefined when none is asked for, or it is not possible. */
  readonly afterHover: number | undefined;
  readonly kept: boolean;
  /** When the state of charge falls below the smallest permitted [s]. */
  readonly reachedAt: number | undefined;
}

/**
 * Judges a flight by its reserve: the smallest state of charge at landing, and on top of that a hover that must still be
 * possible (common practice: a fifth of the charge and no hover).
 *
 * @param hoverPower Power of a hover at the place of landing [W]; undefined when there is none.
 */
export function reserveJudgement(
  flight: FlownFlight,
  policy: ReservePolicy,
  pack: BatteryPack,
  hoverPower: number | undefined,
): ReserveJudgement {
  const landed = flight.stop === undefined;
  const last = flight.rows.at(-1) as FlightRow;
  const landing = landed ? last.stateOfCharge : undefined;
  const margin = landing === undefined ? undefined : landing - policy.minimumStateOfCharge;
  const hovering = policy.hoverTime > 0;
  const afterHover = landing === undefined || !hovering ? undefined : hoverLeaves(pack, landing, hoverPower, policy.hoverTime);
  const hoverKept = !hovering || (afterHover !== undefined && afterHover >= policy.minimumStateOfCharge);
  return {
    landingStateOfCharge: landing,
    reserveMargin: margin,
    afterHover,
    kept: margin !== undefined && margin >= 0 && hoverKept,
    reachedAt: reserveCrossing(flight.rows, policy.minimumStateOfCharge),
  };
}

function hoverLeaves(pack: BatteryPack, from: number, power: number | undefined, duration: number): number | undefined {
  if (power === undefined) return undefined;
  let stateOfCharge = from;
  for (let time = 0; time < duration; time += 1) {
    const drawn = dischargeStep(pack, stateOfCharge, power, Math.min(1, duration - time));
    if (drawn.kind === "not-deliverable" || drawn.stateOfCharge <= 0) return undefined;
    stateOfCharge = drawn.stateOfCharge;
  }
  return stateOfCharge;
}

function reserveCrossing(rows: readonly FlightRow[], minimum: number): number | undefined {
  const index = rows.findIndex((row) => row.stateOfCharge < minimum);
  const after = rows[index];
  const before = rows[index - 1];
  if (after === undefined) return undefined;
  if (before === undefined) return after.state.time;
  const share = (before.stateOfCharge - minimum) / (before.stateOfCharge - after.stateOfCharge);
  return before.state.time + share * (after.state.time - before.state.time);
}
