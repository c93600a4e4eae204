import { type AircraftDefinition, takeoffMass } from "../../aircraft/index.ts";
import { type FullConditions, FullTrimmer } from "../../equilibrium/index.ts";
import type { Method, Problem, ProjectView, Warning } from "../contract.ts";
import { type Assumed, chosenDefinition, chosenLoading, givenAir, isProblem, massProblem } from "./flight-conditions.ts";

interface FlightGiven {
  readonly aircraft?: string | undefined;
  readonly loading: {
    readonly blocks?: number | undefined;
    readonly payload?: string | undefined;
    readonly payloadMass?: number | undefined;
  };
  readonly altitude: number;
  readonly temperature?: number | undefined;
  readonly temperatureOffset?: number | undefined;
  readonly relativeHumidity: number;
  readonly controls: "optimum" | "schedule";
  readonly losses: "component" | "constant";
  readonly lightsOn: boolean;
}

/** What a flight analysis at the trim level `full` works with. */
export interface FullFlight {
  readonly definition: AircraftDefinition;
  readonly conditions: FullConditions;
  readonly takeoffMass: number;
  readonly assumed: Assumed;
  trimmer(controls: FullConditions["controls"], groundHeight?: number): FullTrimmer;
}

/** Aircraft, loading and air of a question about the whole aircraft, or why there is none. */
export function fullFlight(project: ProjectView, given: FlightGiven): FullFlight | Problem {
  const chosen = chosenDefinition(project, given.aircraft);
  if (isProblem(chosen)) return chosen;
  const { definition } = chosen;
  const loaded = chosenLoading(definition, given.loading);
  if (isProblem(loaded)) return loaded;
  const air = givenAir(given);
  if (isProblem(air)) return air;
  const mass = takeoffMass(definition, loaded.loading);
  const tooHeavy = massProblem(definition, mass);
  if (tooHeavy) return tooHeavy;
  const conditions: FullConditions = {
    aircraft: definition,
    loading: loaded.loading,
    air,
    controls: given.controls,
    losses: given.losses,
    lightsOn: given.lightsOn,
  };
  return {
    definition,
    conditions,
    takeoffMass: mass,
    assumed: [...chosen.assumed, ...loaded.assumed],
    trimmer: (controls, groundHeight) =>
      new FullTrimmer({ ...conditions, controls, ...(groundHeight === undefined ? {} : { groundHeight }) }),
  };
}

/** A drive line that the aircraft does not have. */
export function unknownLine({ definition }: FullFlight, stopped: readonly string[]): Problem | undefined {
  const line = stopped.find((id) => !definition.driveLines.some((one) => one.id === id));
  if (line === undefined) return undefined;
  const known = definition.driveLines.map(({ id }) => id).join(", ") || "none";
  return { kind: "part-unknown", message: `No drive line is called "${line}"; the aircraft file has ${known}.` };
}

/** How six-component trims are made and what stands behind them. */
export const fullTrimMethod: Method = {
  summary:
    "Three forces and three moments of all parts in balance: rotors by blade elements over 24 azimuths and 16 radii with Glauert inflow in any wind, " +
    "propellers by momentum, surfaces by strips, bodies by drag areas, first-order motors; least electric power over the free controls within the limits.",
  sources: [
    "johnson-1980",
    "leishman-2006",
    "cheeseman-bennett-1955",
    "castles-deleeuw-1954",
    "drela-2007",
    "plett-2015",
    "nocedal-wright-2006",
  ],
  checks: [
    "naca-tr-434-aircraft",
    "naca-tr-523",
    "gyroplane-vertical-descent",
    "utility-helicopter-trim",
    "delivery-quadcopter",
    "quadcopter-oblique-flow",
    "compound-lift-share",
    "ground-effect-hover",
    "naca-tr-515",
    "glauert-inflow",
    "profile-power-factor",
  ],
};

export const fullTrimWarnings: readonly Warning[] = [
  {
    kind: "interference-one-way",
    grade: "note",
    message:
      "Rotors and propellers act on surfaces and bodies as the aircraft file says, not the other way round; the rotor's inflow knows no wing.",
  },
  {
    kind: "collective-uncertain",
    grade: "note",
    message: "Power at a given thrust can be trusted to 5 to 8 %, collective at a given thrust only to 1 to 1.5 degrees (common practice).",
  },
];
