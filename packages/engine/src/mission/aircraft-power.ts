import type { AircraftDefinition, Loading } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";
import {
  type ControlUse,
  createTrimRotor,
  type FlightConditions,
  type LossModel,
  type TrimRotor,
  trimLimits,
} from "../equilibrium/index.ts";
import { cheapestFlight } from "../performance/index.ts";
import type { PowerSource } from "./power-source.ts";

/** An aircraft in the air of a day, with each loading that a flight has in turn. */
export interface AircraftOfTheDay {
  readonly aircraft: AircraftDefinition;
  readonly loadings: readonly Loading[];
  /** Air at a height above mean sea level [m]. */
  readonly air: (altitude: number) => AirState;
  readonly controls: ControlUse;
  readonly losses: LossModel;
  readonly lightsOn: boolean;
}

/** The rotor and the conditions of a loading at a height; the rotor is made once a height. */
export function dayConditions(
  day: AircraftOfTheDay,
): (loading: number, altitude: number) => { readonly conditions: FlightConditions; readonly rotor: TrimRotor } {
  const known = new Map<number, { readonly air: AirState; readonly rotor: TrimRotor }>();
  return (loading, altitude) => {
    let here = known.get(altitude);
    if (here === undefined) {
      const air = day.air(altitude);
      here = { air, rotor: createTrimRotor(day.aircraft, air) };
      known.set(altitude, here);
    }
    const { aircraft, controls, losses, lightsOn } = day;
    return {
      conditions: { aircraft, loading: day.loadings[loading] as Loading, air: here.air, controls, losses, lightsOn },
      rotor: here.rotor,
    };
  };
}

/** Exact trims of the aircraft as the mission's source of power. A trace is the solver's vector at a neighbouring flight. */
export function aircraftPower(day: AircraftOfTheDay): PowerSource {
  const at = dayConditions(day);
  return {
    limits: trimLimits,
    power({ loading, altitude, forward, climb, mode }, trace) {
      const { conditions, rotor } = at(loading, altitude);
      const warm = trace instanceof Float64Array ? { [mode]: trace } : {};
      const found = cheapestFlight(conditions, { forward, climb }, rotor, mode, warm);
      if (found.kind === "no-equilibrium") return { kind: "no-equilibrium", limit: { name: found.limit, family: found.family } };
      const { evaluation, stallMargin, limits, vector } = found.trimmed;
      return {
        kind: "flies",
        electricPower: evaluation.power.electric,
        rotorShaftPower: evaluation.power.rotorShaft,
        stallMargin,
        shares: limits.map(({ share }) => share),
        trace: vector,
      };
    },
  };
}
