import type { BatteryDefinition } from "../../aircraft/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenDefinition, isProblem } from "../inputs/flight-conditions.ts";

/** The battery of an aircraft file as the bench uses it. */
export type BatteryAircraft = Pick<
  BatteryDefinition,
  | "cell"
  | "seriesCells"
  | "parallelCells"
  | "packs"
  | "wiringResistance"
  | "continuousCurrent"
  | "shortCurrent"
  | "shortTime"
  | "thermalResistance"
  | "bayTemperatureRise"
>;

/** The battery of an aircraft file. */
export function batteryFromAircraft(view: ProjectView, path: string): BatteryAircraft | Problem {
  const chosen = chosenDefinition(view, path);
  return isProblem(chosen) ? chosen : chosen.definition.battery;
}
