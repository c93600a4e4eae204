import type { PayloadRecord } from "./loading-records.ts";
import type { Place, Size } from "./placement.ts";
import type { AircraftDefinition } from "./reduced-aircraft.ts";

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
export function takeoffMass(aircraft: AircraftDefinition, loading: Loading): number {
  return aircraft.emptyMass + aircraft.battery.fixedMass + loading.blocks * aircraft.battery.blockMass + loading.payloadMass;
}

/** Payload [kg] that brings a pack of `blocks` to the largest take-off mass; negative when the pack alone is too heavy. */
export function largestPayload(aircraft: AircraftDefinition, blocks: number): number {
  return aircraft.limits.largestTakeoffMass - takeoffMass(aircraft, { blocks, payloadMass: 0, payloadPower: 0, payloadDragArea: 0 });
}

/** Power drawn at the pack terminals by everything that is not propulsion [W]. */
export function hotelPower(aircraft: AircraftDefinition, loading: Loading, lightsOn: boolean): number {
  const { avionicsPower, converterProportionalLoss, lightsPower } = aircraft.electrical;
  return avionicsPower + (loading.payloadPower + (lightsOn ? lightsPower : 0)) * (1 + converterProportionalLoss);
}
