import { momentumSource, type PropellerSource } from "../../aerodynamics/propeller/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenAircraft, isProblem } from "../inputs/flight-conditions.ts";

/** The propeller of an aircraft file as flights are computed with it, one of them. */
export function propellerFromAircraft(view: ProjectView, path: string): PropellerSource | Problem {
  const chosen = chosenAircraft(view, path);
  return isProblem(chosen) ? chosen : momentumSource(chosen.aircraft.propellers);
}
