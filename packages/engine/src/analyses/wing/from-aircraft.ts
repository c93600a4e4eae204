import type { FiniteWing } from "../../aerodynamics/wing/index.ts";
import { stallOf } from "../../aircraft/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenAircraft, isProblem } from "../inputs/flight-conditions.ts";

/** A surface of an aircraft file by its polar. */
export interface AircraftSurface {
  readonly wing: FiniteWing;
  /** Largest lift coefficient that the file allows. */
  readonly largestLift: number;
  /** What was chosen for it here, in words; undefined where the file says everything. */
  readonly chosen: string | undefined;
}

/** Wing, tailplane or fin of an aircraft file. */
export function wingFromAircraft(view: ProjectView, path: string, part: "wing" | "tailplane" | "fin"): AircraftSurface | Problem {
  const chosen = chosenAircraft(view, path);
  if (isProblem(chosen)) return chosen;
  const { wing, tailplane, fin } = chosen.aircraft;
  if (part === "wing") return { wing, largestLift: wing.maximumLiftCoefficient, chosen: undefined };
  const own = part === "tailplane" ? { ...tailplane } : { ...fin, span: Math.sqrt(fin.area * fin.aspectRatio) };
  const { area, span, liftSlope, cd0, spanEfficiency, maximumLiftCoefficient, stall } = own;
  const { angle, sharpness, flatPlateCoefficient } = stallOf(own);
  return {
    wing: { area, span, liftSlope, cd0, spanEfficiency, stallSharpness: sharpness, flatPlateCoefficient, stallAngle: angle },
    largestLift: maximumLiftCoefficient,
    chosen:
      stall === undefined
        ? `Of the ${part} the file does not say what it does beyond stall (a flat plate is taken): common practice.`
        : undefined,
  };
}
