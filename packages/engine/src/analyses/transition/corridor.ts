import { type FullTrimmer, fullObjective } from "../../equilibrium/index.ts";
import {
  type CorridorEnd,
  type CorridorFlight,
  type CorridorPoint,
  type LineHooks,
  rotorSpeedRange,
  sharedRange,
  widenedRanges,
} from "../../performance/index.ts";
import type { ModeLines } from "./meeting.ts";
import type { CorridorModeOutputs, CorridorRow, TransitionOutputs } from "./output-schema.ts";

/** Rotor speeds of level flight in both modes at every airspeed of the lines. */
export function corridorRows(trimmer: FullTrimmer, { closed, open }: ModeLines, hooks: LineHooks): CorridorRow[] {
  const total = closed.length + open.length;
  const flights = (line: ModeLines["closed"], before: number): CorridorFlight[] => {
    const ranges = line.map(({ outcome }, i) => {
      hooks.progress(before + i, total);
      return outcome.kind === "trimmed" ? rotorSpeedRange(trimmer, outcome, hooks) : undefined;
    });
    const wide = widenedRanges(trimmer, ranges, hooks);
    return line.map(({ outcome }, i) => ({ outcome, range: wide[i] }));
  };
  const [driven, free] = [flights(closed, 0), flights(open, closed.length)];
  const radius = trimmer.airframe.rotors[0]?.part.radius ?? 1;
  return closed.map(({ airspeed }, i) => {
    const [one, other] = [driven[i] as CorridorFlight, free[i] as CorridorFlight];
    return corridorRow({ airspeed, modes: { "clutch-closed": one, "clutch-open": other } }, radius);
  });
}

function corridorRow(point: CorridorPoint, radius: number): CorridorRow {
  const shared = sharedRange(point);
  const closed = modeOutputs(point.modes["clutch-closed"], radius);
  const open = modeOutputs(point.modes["clutch-open"], radius);
  const dear = Number.POSITIVE_INFINITY;
  const cheaper = (open.electricPower ?? dear) < (closed.electricPower ?? dear) ? "clutch open" : "clutch closed";
  const holdPower = cheaper === "clutch open" ? open.electricPower : closed.electricPower;
  return {
    airspeed: point.airspeed,
    closed,
    open,
    sharedSlowest: shared?.slowest ?? null,
    sharedFastest: shared?.fastest ?? null,
    hold: holdPower === null ? "not" : cheaper,
    holdPower,
  };
}

function modeOutputs({ outcome, range }: CorridorFlight, radius: number): CorridorModeOutputs {
  if (outcome.kind !== "trimmed") {
    const { limit, family } = outcome;
    return { electricPower: null, tipSpeed: null, shaftPower: null, limit, family, slowest: null, fastest: null };
  }
  return {
    electricPower: fullObjective(outcome),
    tipSpeed: outcome.evaluation.rotorStates[0] ?? null,
    shaftPower: ((outcome.evaluation.loads.rotors[0]?.torque ?? 0) * (outcome.evaluation.rotorStates[0] ?? 0)) / radius,
    limit: null,
    family: null,
    slowest: range ? endOutputs(range.slowest) : null,
    fastest: range ? endOutputs(range.fastest) : null,
  };
}

function endOutputs({ tipSpeed, limit, family }: CorridorEnd): NonNullable<CorridorModeOutputs["slowest"]> {
  return { tipSpeed, limit, family };
}

/** Whether every speed from hover to cruise can be held. */
export function holdable(corridor: readonly CorridorRow[], cruise: number | null): TransitionOutputs["holdable"] {
  const between = corridor.filter(({ airspeed }) => airspeed <= (cruise ?? Number.POSITIVE_INFINITY));
  const gaps = between.filter(({ hold }) => hold === "not").map(({ airspeed }) => airspeed);
  const shared = corridor.filter(({ sharedSlowest }) => sharedSlowest !== null).map(({ airspeed }) => airspeed);
  return { everySpeed: between.length > 0 && gaps.length === 0, gaps, sharedFrom: shared[0] ?? null, sharedTo: shared.at(-1) ?? null };
}
