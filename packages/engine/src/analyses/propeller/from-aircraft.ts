import { momentumSource, type PropellerSource } from "../../aerodynamics/propeller/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenPart } from "../inputs/chosen-part.ts";
import { isProblem } from "../inputs/flight-conditions.ts";

/** A propeller of an aircraft file as flights are computed with it. */
export function propellerFromAircraft(view: ProjectView, path: string, part: string | undefined): PropellerSource | Problem {
  const chosen = chosenPart(view, path, "propellers", part, (_, roles) => roles?.rightPropeller);
  return isProblem(chosen) ? chosen : momentumSource(chosen.part);
}
