import { type FullTrimmer, fullObjective } from "../../equilibrium/index.ts";
import { type CorridorFlight, type CorridorPoint, type LineHooks, rotorSpeedRange, sharedRange } from "../../performance/index.ts";
import type { ModeLines } from "./meeting.ts";
import type { CorridorModeOutputs, CorridorRow, TransitionOutputs } from "./output-schema.ts";

/** Rotor speeds of level flight in both modes at every airspeed of the lines. */
export function corridorRows(trimmer: FullTrimmer, { closed, open }: ModeLines, hooks: LineHooks): CorridorRow[] {
  const flight = (outcome: CorridorFlight["outcome"]): CorridorFlight => ({
    outcome,
    range: outcome.kind === "trimmed" ? rotorSpeedRange(trimmer, outcome, hooks) : undefined,
  });
  return closed.map(({ airspeed, outcome }, i) => {
    const free = open[i]?.outcome;
    const point: CorridorPoint = {
      airspeed,
      modes: {
        "clutch-closed": flight(outcome),
        "clutch-open": free ? flight(free) : { outcome: { kind: "not-resolved", limit: "not resolved", family: "air" }, range: undefined },
      },
    };
    hooks.progress(i + 1, closed.length);
    return corridorRow(point, trimmer.airframe.rotors[0]?.part.radius ?? 1);
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
    slowest: range?.slowest ?? null,
    fastest: range?.fastest ?? null,
  };
}

/** Whether every speed from hover to cruise can be held. */
export function holdable(corridor: readonly CorridorRow[], cruise: number | null): TransitionOutputs["holdable"] {
  const between = corridor.filter(({ airspeed }) => airspeed <= (cruise ?? Number.POSITIVE_INFINITY));
  const gaps = between.filter(({ hold }) => hold === "not").map(({ airspeed }) => airspeed);
  const shared = corridor.filter(({ sharedSlowest }) => sharedSlowest !== null).map(({ airspeed }) => airspeed);
  return { everySpeed: between.length > 0 && gaps.length === 0, gaps, sharedFrom: shared[0] ?? null, sharedTo: shared.at(-1) ?? null };
}
