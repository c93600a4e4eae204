import type { Loading, ReducedAircraft } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";
import {
  type ControlUse,
  createTrimRotor,
  type FlightConditions,
  type FlightPoint,
  type LossModel,
  type TrimOutcome,
  type TrimRotor,
  type TrimStart,
  trim,
  trimFrom,
  trimLimits,
} from "../equilibrium/index.ts";
import type { PowerAnswer, PowerRequest, PowerSource } from "./power-source.ts";

/** An aircraft in the air of a day, with each loading that a flight has in turn. */
export interface AircraftOfTheDay {
  readonly aircraft: ReducedAircraft;
  readonly loadings: readonly Loading[];
  /** Air at a height above mean sea level [m]. */
  readonly air: (altitude: number) => AirState;
  readonly controls: ControlUse;
  readonly losses: LossModel;
  readonly lightsOn: boolean;
}

/** Conditions of a loading at a height [m] above mean sea level, with the rotor ready to be trimmed in that air. */
export type DayConditions = (loading: number, altitude: number) => { readonly conditions: FlightConditions; readonly rotor: TrimRotor };

/** The conditions of a day; each height's rotor is made once. */
export function dayConditions(day: AircraftOfTheDay): DayConditions {
  const known = new Map<number, { readonly air: AirState; readonly rotor: TrimRotor }>();
  return (loading, altitude) => {
    let here = known.get(altitude);
    if (here === undefined) {
      const air = day.air(altitude);
      here = { air, rotor: createTrimRotor(day.aircraft, air) };
      known.set(altitude, here);
    }
    const { aircraft, controls, losses, lightsOn } = day;
    const conditions = { aircraft, loading: day.loadings[loading] as Loading, air: here.air, controls, losses, lightsOn };
    return { conditions, rotor: here.rotor };
  };
}

/** Exact trims of the aircraft as the mission's source of power. A trace is the solver's end at a neighbouring flight. */
export function aircraftPower(at: DayConditions): PowerSource {
  const pointOf = ({ mode, forward, climb }: PowerRequest): FlightPoint => ({ mode, forwardSpeed: forward, climbRate: climb });
  const powerFrom = (request: PowerRequest, trace: unknown): PowerAnswer => {
    const { conditions, rotor } = at(request.loading, request.altitude);
    return answerOf(trimFrom(conditions, pointOf(request), rotor, [trace as TrimStart]));
  };
  return {
    limits: trimLimits,
    powerFrom,
    power(request, trace) {
      const { conditions, rotor } = at(request.loading, request.altitude);
      const cold = answerOf(trim(conditions, pointOf(request), rotor));
      return trace === undefined ? cold : cheaper(cold, powerFrom(request, trace));
    },
  };
}

/** Starts from nothing and from a neighbour lead to different local optima at some speeds. */
function cheaper(first: PowerAnswer, second: PowerAnswer): PowerAnswer {
  if (second.kind === "no-equilibrium") return first;
  return first.kind === "no-equilibrium" || second.electricPower < first.electricPower ? second : first;
}

function answerOf(outcome: TrimOutcome): PowerAnswer {
  if (outcome.kind === "no-equilibrium") return { kind: "no-equilibrium", limit: { name: outcome.limit, family: outcome.family } };
  const { evaluation, stallMargin, limits, start } = outcome;
  return {
    kind: "flies",
    electricPower: evaluation.power.electric,
    rotorShaftPower: evaluation.power.rotorShaft,
    stallMargin,
    shares: limits.map(({ share }) => share),
    trace: start,
  };
}
