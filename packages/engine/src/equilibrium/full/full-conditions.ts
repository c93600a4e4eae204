import type { AircraftDefinition, Loading } from "../../aircraft/index.ts";
import type { Airframe } from "../../airframe/index.ts";
import type { AirState } from "../../environment/atmosphere/index.ts";
import type { ControlUse, FlightMode, LossModel } from "../conditions.ts";

/** Everything that a six-component trim depends on but the flight itself. */
export interface FullConditions {
  readonly aircraft: AircraftDefinition;
  readonly loading: Loading;
  readonly air: AirState;
  readonly controls: ControlUse;
  readonly losses: LossModel;
  readonly lightsOn: boolean;
  /** Controls each on its own, or those of the mixing matrix only as its axes move them. @defaultValue each */
  readonly steering?: "each" | "mixed";
  /** Height of the first rotor's hub above even ground; far from it when absent [m]. */
  readonly groundHeight?: number;
}

/** A steady flight: straight or turning, level or not, with the air from any side. */
export interface FullPoint {
  readonly mode: FlightMode;
  /** Horizontal speed through the air [m/s]. */
  readonly airspeed: number;
  /** [m/s]; solved for in a glide. */
  readonly climbRate: number;
  /** Direction that the air comes from, to the right of the nose [rad]; absent: free. */
  readonly sideslip?: number;
  /** About the vertical, to the right [rad/s]. @defaultValue 0 */
  readonly turnRate?: number;
  /** Horizontal, along the heading: the flight as it stands at one instant of it [m/s²]. @defaultValue 0 */
  readonly acceleration?: number;
  /** Tip speed that all rotors have, whoever turns them [m/s]; absent: governors and free rotors find theirs. */
  readonly tipSpeed?: number;
  /** Drive lines that stand still beyond those of the mode, by id: a failed motor. */
  readonly stopped?: readonly string[];
  /** Controls that are stuck, by id, in SI. */
  readonly stuck?: Readonly<Record<string, number>>;
}

/** Which drive lines turn under their motors in a mode. @derivation not a formula */
export function runningLines(airframe: Airframe, { mode, stopped = [] }: FullPoint): readonly boolean[] {
  const rotors = new Set(airframe.rotors.map(({ part }) => part.id));
  return airframe.lines.map(({ id, drives, clutch }) => {
    if (mode === "glide" || stopped.includes(id)) return false;
    return !(mode === "clutch-open" && clutch === "one-way" && rotors.has(drives));
  });
}
