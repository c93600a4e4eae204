import { aircraftEntries } from "./aircraft-entries.ts";
import { crossChecks } from "./cross-checks.ts";

export type { AircraftDefinition } from "./aircraft-entries.ts";

/** What an aircraft is: parts, places, masses, energy and the controls it really has, and that they go together. SI after reading. */
export const aircraftDefinition = aircraftEntries.superRefine((aircraft, context) => {
  crossChecks(aircraft, (path, message) => context.addIssue({ code: "custom", path: [...path], message }));
});
