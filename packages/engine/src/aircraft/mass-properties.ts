import type { AircraftDefinition } from "./definition.ts";
import type { Loading } from "./loading.ts";
import type { Place, Size } from "./placement.ts";

/** Something on board with its mass, its place and how its own mass is spread. */
export interface MassItem {
  readonly kind: "empty" | "pack-fixed" | "block" | "payload";
  /** Counts blocks from the front, from 1. */
  readonly number: number;
  readonly mass: number;
  readonly place: Place;
  /** Inertia tensor about its own centre, by rows [kg m²]. */
  readonly inertia: Float64Array;
}

/** Mass [kg], centre of gravity [m, body axes from the datum] and inertia about it. */
export interface MassProperties {
  readonly mass: number;
  readonly centre: Place;
  /** Tensor about the centre of gravity, by rows [kg m²]: off the diagonal stand the products of inertia, sign turned. */
  readonly inertia: Float64Array;
}

const point: Size = { x: 0, y: 0, z: 0 };

/** A rectangular solid of even density about its centre; a point when its size is zero. */
function solidInertia(mass: number, { x, y, z }: Size): Float64Array {
  const square = { x: x * x, y: y * y, z: z * z };
  return Float64Array.of(
    (mass * (square.y + square.z)) / 12,
    0,
    0,
    0,
    (mass * (square.x + square.z)) / 12,
    0,
    0,
    0,
    (mass * (square.x + square.y)) / 12,
  );
}

/** Where the block at a place of the bay sits, places counted from the front from 0. */
export function blockPlace(bay: AircraftDefinition["battery"]["bay"], index: number): Place {
  return { x: bay.front - ((index + 0.5) * (bay.front - bay.back)) / bay.places, y: 0, z: bay.z };
}

/** Everything on board, one by one. Blocks stand in the places of the bay from the front on. */
export function massItems(aircraft: AircraftDefinition, loading: Loading): readonly MassItem[] {
  const { battery, emptyInertia: diagonal, emptyProducts: products } = aircraft;
  const { xy, yz, zx } = products ?? { xy: 0, yz: 0, zx: 0 };
  const empty: MassItem = {
    kind: "empty",
    number: 1,
    mass: aircraft.emptyMass,
    place: aircraft.emptyCentre,
    inertia: Float64Array.of(diagonal.x, -xy, -zx, -xy, diagonal.y, -yz, -zx, -yz, diagonal.z),
  };
  const item = (kind: MassItem["kind"], number: number, mass: number, place: Place, size: Size): MassItem => ({
    kind,
    number,
    mass,
    place,
    inertia: solidInertia(mass, size),
  });
  const blocks = Array.from({ length: loading.blocks }, (_, index) =>
    item("block", index + 1, battery.blockMass, blockPlace(battery.bay, index), battery.blockSize ?? point),
  );
  return [
    empty,
    item("pack-fixed", 1, battery.fixedMass, battery.fixedPlace, point),
    ...blocks,
    item("payload", 1, loading.payloadMass, loading.payloadPlace ?? aircraft.payloadBay, loading.payloadSize ?? point),
  ];
}

/** Sum of things: parallel axes carry each one's own inertia to the common centre of gravity. */
export function combinedMass(items: readonly Pick<MassItem, "mass" | "place" | "inertia">[]): MassProperties {
  let mass = 0;
  const moment = { x: 0, y: 0, z: 0 };
  for (const item of items) {
    mass += item.mass;
    moment.x += item.mass * item.place.x;
    moment.y += item.mass * item.place.y;
    moment.z += item.mass * item.place.z;
  }
  const centre = { x: moment.x / mass, y: moment.y / mass, z: moment.z / mass };
  const inertia = new Float64Array(9);
  for (const item of items) addCarried(inertia, item, centre);
  return { mass, centre, inertia };
}

function addCarried(sum: Float64Array, item: Pick<MassItem, "mass" | "place" | "inertia">, centre: Place): void {
  const arm = [item.place.x - centre.x, item.place.y - centre.y, item.place.z - centre.z] as const;
  const square = arm[0] * arm[0] + arm[1] * arm[1] + arm[2] * arm[2];
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      const at = 3 * row + column;
      const carried = (row === column ? square : 0) - (arm[row] as number) * (arm[column] as number);
      sum[at] = (sum[at] as number) + (item.inertia[at] as number) + item.mass * carried;
    }
  }
}

/** Mass, centre of gravity and inertia of an aircraft as it is loaded. */
export function massProperties(aircraft: AircraftDefinition, loading: Loading): MassProperties {
  return combinedMass(massItems(aircraft, loading));
}
