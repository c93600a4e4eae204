import type { Wind } from "../environment/wind/index.ts";
import type { ModeRule } from "../performance/index.ts";
import { flightAxes } from "./axes.ts";
import { modeChoice } from "./flight.ts";
import type { FlightPath } from "./flight-path.ts";
import { type FlightSteps, flightSteps } from "./flight-steps.ts";
import type { SpeedLimits } from "./ground-speed.ts";
import type { PowerQuery } from "./power-lookup.ts";
import type { PowerSource } from "./power-source.ts";
import { type ModeChoice, type PowerTable, powerTable } from "./power-table.ts";

/** A flight cut into steps, with the table of everything it will ask. */
export interface PreparedFlight {
  readonly steps: FlightSteps;
  readonly table: PowerTable;
  /** A hover over the place where the flight ends, as the table knows it. */
  readonly finalHover: { readonly query: PowerQuery; readonly choice: ModeChoice };
}

export interface PreparationRequest {
  readonly path: FlightPath;
  readonly wind: Wind;
  readonly limits: SpeedLimits;
  readonly modes: ModeRule;
  /** Longest step [s]. */
  readonly step: number;
  /** Highest permitted height above mean sea level [m]. */
  readonly altitudeMaximum: number;
  readonly source: PowerSource;
  readonly progress: (done: number, total: number) => void;
}

/** Cuts the flight into steps and trims what they need. Where the aircraft is does not depend on power, so both can come first. */
export function preparedFlight(request: PreparationRequest): PreparedFlight {
  const steps = flightSteps(request.path, request.wind, request.step, request.altitudeMaximum);
  const { end } = steps;
  const hover = {
    part: "maneuver",
    loading: request.path.phases.at(-1)?.loading ?? 0,
    speed: end.windSpeed,
    climb: 0,
    altitude: end.height,
  } as const;
  const axes = flightAxes(steps.steps, request.limits, hover);
  const finalHover = { query: hover, choice: { modes: ["clutch-closed", "clutch-open"], take: "first" } } as const;
  const expected = steps.steps.flatMap((step) => (step.query ? [{ query: step.query, choice: modeChoice(step, request.modes) }] : []));
  return { steps, finalHover, table: powerTable(request.source, axes, [...expected, finalHover], request.progress) };
}
