import type { FiniteWing } from "../../aerodynamics/wing/index.ts";
import { stallOf } from "../../aircraft/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenPart } from "../inputs/chosen-part.ts";
import { isProblem } from "../inputs/flight-conditions.ts";

/** A surface of an aircraft file by its polar. */
export interface AircraftSurface {
  readonly wing: FiniteWing;
  /** Largest lift coefficient that the file allows. */
  readonly largestLift: number;
  /** What was chosen for it here, in words; undefined where the file says everything. */
  readonly chosen: string | undefined;
}

/** A surface of an aircraft file: the wing when none is named. */
export function wingFromAircraft(view: ProjectView, path: string, part: string | undefined): AircraftSurface | Problem {
  const found = chosenPart(view, path, "surfaces", part, (_, roles) => roles?.wing);
  if (isProblem(found)) return found;
  const surface = found.part;
  const { area, aspectRatio, liftSlope, cd0, spanEfficiency, maximumLiftCoefficient } = surface;
  const { angle, sharpness, flatPlateCoefficient } = stallOf(surface);
  const span = aspectRatio === undefined ? surface.span : Math.sqrt(area * aspectRatio);
  const notes = [
    surface.stall === undefined
      ? `Of the ${surface.id} the file does not say what it does beyond stall (a flat plate is taken): common practice.`
      : "",
    surface.zeroLiftAngle === 0 ? "" : `Angles count from the zero-lift line of the ${surface.id}.`,
    surface.movables.length > 0 ? "Trailing edges are not deflected." : "",
  ].filter((note) => note !== "");
  return {
    wing: { area, span, liftSlope, cd0, spanEfficiency, stallSharpness: sharpness, flatPlateCoefficient, stallAngle: angle },
    largestLift: maximumLiftCoefficient,
    chosen: notes.length === 0 ? undefined : notes.join(" "),
  };
}
