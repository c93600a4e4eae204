// Mass, centre of gravity and inertia counted part by part: empty aircraft, fixed part of the pack, blocks in their places, payload.
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { cross, less, scaled, sum, type Vector, vector } from "./plain-vectors.ts";

type Place = AircraftDefinition["payloadBay"];

/** What is on board. */
export interface PlainLoading {
  readonly blocks: number;
  readonly payloadMass: number;
  readonly payloadDragArea: number;
  readonly payloadPlace?: Place;
  readonly payloadSize?: Place;
}

export interface PlainMass {
  readonly mass: number;
  readonly centre: Vector;
  /** Inertia about the centre applied to a rate of turn [rad/s]: angular momentum [N m s]. */
  momentum(rate: Vector): Vector;
}

interface Lump {
  readonly mass: number;
  readonly at: Vector;
  /** About its own centre: moments of inertia about x, y, z [kg m²]. */
  readonly own: Vector;
}

/** A box of even density. */
function box(mass: number, at: Vector, { x, y, z }: Place = { x: 0, y: 0, z: 0 }): Lump {
  const share = mass / 12;
  return { mass, at, own: [share * (y * y + z * z), share * (z * z + x * x), share * (x * x + y * y)] };
}

function blocksOf({ battery }: AircraftDefinition, count: number): readonly Lump[] {
  const { bay } = battery;
  const length = (bay.front - bay.back) / bay.places;
  return Array.from({ length: count }, (_, i) => box(battery.blockMass, [bay.front - (i + 0.5) * length, 0, bay.z], battery.blockSize));
}

export function plainMass(aircraft: AircraftDefinition, loading: PlainLoading): PlainMass {
  const lumps: readonly Lump[] = [
    { mass: aircraft.emptyMass, at: vector(aircraft.emptyCentre), own: vector(aircraft.emptyInertia) },
    box(aircraft.battery.fixedMass, vector(aircraft.battery.fixedPlace)),
    ...blocksOf(aircraft, loading.blocks),
    box(loading.payloadMass, vector(loading.payloadPlace ?? aircraft.payloadBay), loading.payloadSize),
  ];
  const mass = lumps.reduce((total, lump) => total + lump.mass, 0);
  const centre = scaled(1 / mass, sum(...lumps.map((lump) => scaled(lump.mass, lump.at))));
  const { xy = 0, yz = 0, zx = 0 } = aircraft.emptyProducts ?? {};
  return {
    mass,
    centre,
    momentum: (rate) =>
      sum(
        [-xy * rate[1] - zx * rate[2], -xy * rate[0] - yz * rate[2], -zx * rate[0] - yz * rate[1]],
        ...lumps.map((lump) => {
          const arm = less(lump.at, centre);
          const own: Vector = [lump.own[0] * rate[0], lump.own[1] * rate[1], lump.own[2] * rate[2]];
          return sum(own, scaled(lump.mass, cross(arm, cross(rate, arm))));
        }),
      ),
  };
}
