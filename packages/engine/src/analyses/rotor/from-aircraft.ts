import type { RotorModel } from "../../aerodynamics/rotor/index.ts";
import { withDragIncrement } from "../../aircraft/index.ts";
import { aircraftRotor } from "../../airframe/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenPart } from "../inputs/chosen-part.ts";
import { isProblem } from "../inputs/flight-conditions.ts";

/** A rotor as an aircraft file has it. */
export interface AircraftRotor {
  readonly model: RotorModel;
  /** Flapping relative to the body, either way [rad]. */
  readonly flapRange: number;
}

/**
 * A rotor of an aircraft file: the one that the trim level reduced counts, or the first, when none is named.
 *
 * @param of.sectionDragIncrement added to the drag coefficient of its section at every angle [1]
 * @param of.density of the air [kg/m³], for the Lock number of hinged blades
 */
export function rotorFromAircraft(
  view: ProjectView,
  of: { readonly aircraft: string; readonly part?: string | undefined; readonly sectionDragIncrement: number; readonly density: number },
  mesh: { readonly azimuths: number; readonly radialElements: number },
): AircraftRotor | Problem {
  const chosen = chosenPart(view, of.aircraft, "rotors", of.part, (_, roles) => roles?.rotor);
  if (isProblem(chosen)) return chosen;
  const { part } = chosen;
  const section = withDragIncrement(part.section, of.sectionDragIncrement);
  return { model: aircraftRotor({ ...part, section }, { density: of.density }, mesh), flapRange: part.flapRange };
}
