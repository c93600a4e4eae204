import type { AircraftDefinition } from "./aircraft-entries.ts";
import type { Complain } from "./complaint.ts";
import { controlChecks } from "./control-checks.ts";
import { networkChecks } from "./network-checks.ts";
import { partChecks } from "./part-checks.ts";

/** Everything that only shows when the entries of an aircraft file are seen together. */
export function crossChecks(aircraft: AircraftDefinition, complain: Complain): void {
  partChecks(aircraft, complain);
  controlChecks(aircraft, complain);
  networkChecks(aircraft.electrical, complain);
}
