import type { RotorModel } from "../../aerodynamics/rotor/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenAircraft, isProblem } from "../inputs/flight-conditions.ts";

/** A rotor as an aircraft file has it, without a mesh. */
export interface AircraftRotor {
  readonly model: Omit<RotorModel, "azimuths" | "radialElements">;
  /** Flapping relative to the body, either way [rad]. */
  readonly flapRange: number;
}

/**
 * The rotor of an aircraft file.
 *
 * @param sectionDragIncrement added to the drag coefficient of its section at every angle [1]
 */
export function rotorFromAircraft(view: ProjectView, path: string, sectionDragIncrement: number): AircraftRotor | Problem {
  const chosen = chosenAircraft(view, path);
  if (isProblem(chosen)) return chosen;
  const { rotor } = chosen.aircraft;
  const { section } = rotor;
  return {
    model: {
      radius: rotor.radius,
      bladeCount: rotor.blades,
      rootCutout: rotor.rootCutout,
      stations: rotor.stations,
      precone: rotor.precone,
      articulation: { kind: "teetering" },
      section:
        section.kind === "generic"
          ? { ...section, cd0: section.cd0 + sectionDragIncrement }
          : { ...section, dragIncrement: section.dragIncrement + sectionDragIncrement },
      tipLoss: rotor.tipLoss,
      inducedPowerFactor: rotor.inducedPowerFactor,
      inflow: rotor.inflow,
      radialFlow: rotor.radialFlow,
    },
    flapRange: rotor.flapRange,
  };
}
