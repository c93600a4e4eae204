import type { FlightConditions, FlightPoint } from "./conditions.ts";
import { startingStates } from "./starting-states.ts";
import { type MarginSearch, objective, type TrimOutcome, trimFrom, withSearchedMargin } from "./trim.ts";
import type { TrimRotor } from "./trim-rotor.ts";

/** Climb rates are approached from level flight in steps of this [m/s]. */
const climbStep = 1;
/** Where a point is not reached, flights this much slower and faster are tried as stepping stones [m/s]. */
const speedStep = 2;

/**
 * Trims one point with nothing known: from every archetype of flight, in climb and descent also by way of level flight at the
 * same speed, and where none of these arrives by way of a slower and a faster flight. The cheapest is kept.
 */
export function trim(conditions: FlightConditions, point: FlightPoint, rotor: TrimRotor, margin: MarginSearch = "exact"): TrimOutcome {
  const direct = trimFrom(conditions, point, rotor, startingStates(conditions, point, rotor), "table");
  let best = direct;
  const offer = (outcome: TrimOutcome | undefined) => {
    if (outcome?.kind === "trimmed" && (best.kind !== "trimmed" || objective(outcome) < objective(best))) best = outcome;
  };
  if (point.mode !== "glide" && point.climbRate !== 0) offer(byWayOfLevel(conditions, point, rotor));
  if (best.kind !== "trimmed" && point.forwardSpeed > speedStep) {
    for (const change of [-speedStep, speedStep]) {
      const stone = { ...point, forwardSpeed: point.forwardSpeed + change };
      const there = trimFrom(conditions, stone, rotor, startingStates(conditions, stone, rotor), "table");
      if (there.kind === "trimmed") offer(trimFrom(conditions, point, rotor, [there.start], "table"));
    }
  }
  return margin === "exact" && best.kind === "trimmed" ? withSearchedMargin(conditions, best, rotor) : best;
}

function byWayOfLevel(conditions: FlightConditions, point: FlightPoint, rotor: TrimRotor): TrimOutcome | undefined {
  const steps = Math.ceil(Math.abs(point.climbRate) / climbStep);
  let here = trim(conditions, { ...point, climbRate: 0 }, rotor, "table");
  for (let i = 1; i <= steps && here.kind === "trimmed"; i++) {
    const next = { ...point, climbRate: (point.climbRate * i) / steps };
    here = trimFrom(conditions, next, rotor, [here.start], "table");
  }
  return here;
}
