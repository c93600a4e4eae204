import type { AircraftDefinition } from "./definition.ts";
import type { PayloadRecord } from "./loading-records.ts";
import { terminalPower } from "./network-power.ts";
import type { Place, Size } from "./placement.ts";

type Weighed = Pick<AircraftDefinition, "emptyMass"> & { readonly battery: Pick<AircraftDefinition["battery"], "fixedMass" | "blockMass"> };
type Limited = Weighed & { readonly limits: Pick<AircraftDefinition["limits"], "largestTakeoffMass"> };
type Electrified = Pick<AircraftDefinition, "electrical">;

/** What is put into the aircraft before a flight. */
export interface Loading {
  readonly blocks: number;
  readonly payloadMass: number;
  /** At 12 V, before the converter [W]. */
  readonly payloadPower: number;
  readonly payloadDragArea: number;
  /** Where the payload sits; in the payload bay when absent. */
  readonly payloadPlace?: Place;
  /** Edges of the payload as a solid of even density; a point when absent. */
  readonly payloadSize?: Size;
}

export const standardGravity = 9.80665;

/** Loading by a payload record. */
export function recordLoading(blocks: number, record: PayloadRecord): Loading {
  const { mass, power, dragArea, place, size } = record;
  return {
    blocks,
    payloadMass: mass,
    payloadPower: power,
    payloadDragArea: dragArea,
    ...(place ? { payloadPlace: place } : {}),
    ...(size ? { payloadSize: size } : {}),
  };
}

/** Mass ready to take off [kg]. */
export function takeoffMass(aircraft: Weighed, loading: Loading): number {
  return aircraft.emptyMass + aircraft.battery.fixedMass + loading.blocks * aircraft.battery.blockMass + loading.payloadMass;
}

/** Payload [kg] that brings a pack of `blocks` to the largest take-off mass; negative when the pack alone is too heavy. */
export function largestPayload(aircraft: Limited, blocks: number): number {
  return aircraft.limits.largestTakeoffMass - takeoffMass(aircraft, { blocks, payloadMass: 0, payloadPower: 0, payloadDragArea: 0 });
}

/** Power drawn at the pack terminals by everything that is not propulsion, servos at rest [W]. */
export function hotelPower(aircraft: Electrified, loading: Loading, lightsOn: boolean): number {
  return terminalPower(aircraft.electrical, { lightsOn, manoeuvring: false, payloadPower: loading.payloadPower });
}
