import { z } from "zod";
import type { AircraftDefinition } from "../../aircraft/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { chosenDefinition, isProblem } from "./flight-conditions.ts";

/** Which part of an aircraft file is asked of, by its name there. */
export const partInput = (description: string) =>
  z
    .string()
    .min(1)
    .max(100)
    .optional()
    .meta({
      description: `${description} By its name in the file; the one that the trim level reduced counts, or the first, when absent.`,
    });

type Roles = NonNullable<AircraftDefinition["reduced"]>;
type Lists = "rotors" | "propellers" | "surfaces" | "driveLines";

const kinds: Readonly<Record<Lists, string>> = {
  rotors: "rotor",
  propellers: "propeller",
  surfaces: "surface",
  driveLines: "drive line",
};

/** A part of an aircraft file for a bench, whatever the aircraft is built of, or why there is none. */
export function chosenPart<List extends Lists>(
  view: ProjectView,
  path: string,
  list: List,
  asked: string | undefined,
  usual: (aircraft: AircraftDefinition, roles: Roles | undefined) => string | undefined,
): { readonly part: AircraftDefinition[List][number]; readonly aircraft: AircraftDefinition } | Problem {
  const chosen = chosenDefinition(view, path);
  if (isProblem(chosen)) return chosen;
  const aircraft = chosen.definition;
  const parts: readonly AircraftDefinition[List][number][] = aircraft[list];
  const wanted = asked ?? usual(aircraft, aircraft.reduced);
  const part = wanted === undefined ? parts[0] : parts.find(({ id }) => id === wanted);
  if (part !== undefined) return { part, aircraft };
  const known = parts.map(({ id }) => id).join(", ");
  const message =
    parts.length === 0 ? `${path} has no ${kinds[list]}.` : `${path} has no ${kinds[list]} called "${wanted}"; it has ${known}.`;
  return { kind: "part-unknown", message };
}
