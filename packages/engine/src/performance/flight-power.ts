import type { AircraftDefinition, Loading } from "../aircraft/index.ts";
import type { AirState } from "../environment/atmosphere/index.ts";
import { type ControlUse, createTrimRotor, type FlightConditions, type LossModel, type TrimRotor } from "../equilibrium/index.ts";
import { bestSpeed } from "./best-speeds.ts";
import { cheapestFlight, type ModeRule, type PoweredMode, poweredModes, type WarmStarts } from "./cheapest-flight.ts";
import { type LinePoint, speedLine } from "./speed-line.ts";

export interface FlightPowerOptions {
  readonly controls: ControlUse;
  readonly losses: LossModel;
  readonly lightsOn: boolean;
  readonly modeRule: ModeRule;
}

/** A speed through air of one state. */
export interface FlightSpeed {
  /** Horizontal part of the velocity through the air [m/s]. */
  readonly airspeed: number;
  /** Positive upward [m/s]. */
  readonly climbRate: number;
  readonly air: AirState;
}

export type FlightPower =
  | {
      readonly kind: "flies";
      readonly mode: PoweredMode;
      /** At the pack's terminals [W]. */
      readonly electricPower: number;
      readonly rotorShaftPower: number;
      readonly stallMargin: number;
    }
  | { readonly kind: "no-equilibrium"; readonly limit: string };

/** Electric power of one aircraft and loading at any speed: exact trims, kept by what they depend on. */
export interface FlightPowerModel {
  power(speed: FlightSpeed): FlightPower;
  /** Airspeed of least power or of least energy per distance in still air; undefined when nothing flies level. */
  bestAirspeed(rule: "minimum-power" | "best-range", air: AirState): number | undefined;
}

const searchSpeeds = [8, 11, 14, 17, 20, 23, 26, 29, 32, 35];

/**
 * A power model for one aircraft and loading. Each point is trimmed from nothing but its own values, so the order of asking
 * changes no bit; rotors (with their stall tables) are kept by air.
 */
export function flightPowerModel(aircraft: AircraftDefinition, loading: Loading, options: FlightPowerOptions): FlightPowerModel {
  const rotors = new Map<string, TrimRotor>();
  const known = new Map<string, FlightPower>();
  const airKey = (air: AirState) => `${air.density},${air.speedOfSound},${air.dynamicViscosity}`;
  const rotorIn = (air: AirState): TrimRotor => {
    const key = airKey(air);
    let rotor = rotors.get(key);
    if (rotor === undefined) {
      rotor = createTrimRotor(aircraft, air);
      rotors.set(key, rotor);
    }
    return rotor;
  };
  const conditionsIn = (air: AirState): FlightConditions => ({
    aircraft,
    loading,
    air,
    controls: options.controls,
    losses: options.losses,
    lightsOn: options.lightsOn,
  });
  const noWarmStarts: WarmStarts = {};
  return {
    power(speed) {
      const key = `${speed.airspeed},${speed.climbRate},${airKey(speed.air)}`;
      const before = known.get(key);
      if (before) return before;
      const flight = cheapestFlight(
        conditionsIn(speed.air),
        { forward: speed.airspeed, climb: speed.climbRate },
        rotorIn(speed.air),
        options.modeRule,
        noWarmStarts,
      );
      const found: FlightPower =
        flight.kind === "flies"
          ? {
              kind: "flies",
              mode: flight.mode,
              electricPower: flight.trimmed.evaluation.power.electric,
              rotorShaftPower: flight.trimmed.evaluation.power.rotorShaft,
              stallMargin: flight.trimmed.stallMargin,
            }
          : { kind: "no-equilibrium", limit: flight.limit };
      known.set(key, found);
      return found;
    },
    bestAirspeed(rule, air) {
      const conditions = conditionsIn(air);
      const rotor = rotorIn(air);
      const quiet = { progress: () => {}, cancelled: () => {} };
      const modes = options.modeRule === "cheaper" ? poweredModes : [options.modeRule];
      const lines = Object.fromEntries(
        poweredModes.map((mode) => [mode, modes.includes(mode) ? speedLine(conditions, mode, searchSpeeds, rotor, quiet) : []]),
      ) as Record<PoweredMode, LinePoint[]>;
      const cost = (electric: number, airspeed: number) => (rule === "minimum-power" ? electric : electric / airspeed);
      return bestSpeed(conditions, lines, rotor, (trimmed) => cost(trimmed.evaluation.power.electric, trimmed.evaluation.airspeed))?.airspeed;
    },
  };
}
