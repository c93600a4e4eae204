import type { AircraftDefinition } from "../aircraft/index.ts";
import { dot, type Vector } from "./axes.ts";
import { type PropellerLoads, thrustAxis } from "./thrust-propeller.ts";
import { WakeTable } from "./wake-table.ts";

/** A propeller in the wake of another. */
interface Link {
  readonly from: number;
  readonly on: number;
  readonly strength: number;
  /** From the one that makes the wake to the other, in the plane of its disc; of length 1, or 0 where they share an axis. */
  readonly direction: Vector;
  readonly table: WakeTable;
}

const settledWithin = 1e-11;
const mostPasses = 60;
/** Below this speed in the plane of the disc the wake has no direction, and needs none [m/s]. */
const leastSpeed = 1e-9;

/**
 * What the wakes of propellers do to other propellers, both ways at once: every thrust makes a downwash at the others, which changes what they
 * need. Discs are taken as parallel to the one that makes the wake; tilts of an axis in flight do not move the wake.
 *
 * @derivation repeated until no wash changes any more, always from still air, so that an answer does not depend on the one before
 */
export class PropellerWakes {
  readonly #links: readonly Link[];
  readonly #count: number;

  constructor(aircraft: AircraftDefinition) {
    const { propellers } = aircraft;
    this.#count = propellers.length;
    const tables = new Map<string, WakeTable>();
    const number = (id: string) => propellers.findIndex((part) => part.id === id);
    this.#links = aircraft.interference
      .filter(({ kind, active, factor, share }) => kind === "propeller-wake" && active && factor * share !== 0)
      .map(({ from, on, factor, share }) => linkOf(propellers, number(from), number(on), factor * share, tables));
  }

  /**
   * @param answer of a propeller with a wash of others, backwards along its axis [m/s]
   */
  settled<Answer extends { readonly loads: PropellerLoads }>(answer: (propeller: number, wash: number) => Answer): readonly Answer[] {
    const wash = new Float64Array(this.#count);
    const all = () => Array.from({ length: this.#count }, (_, i) => answer(i, wash[i] as number));
    let answers = all();
    if (this.#links.length === 0) return answers;
    for (let pass = 0; pass < mostPasses; pass++) {
      const next = this.#washes(answers);
      const change = next.reduce((most, value, i) => Math.max(most, Math.abs(value - (wash[i] as number))), 0);
      wash.set(next);
      answers = all();
      if (change < settledWithin) break;
    }
    return answers;
  }

  #washes(answers: readonly { readonly loads: PropellerLoads }[]): Float64Array {
    const wash = new Float64Array(this.#count);
    for (const { from, on, strength, direction, table } of this.#links) {
      const { inPlane, through, inducedVelocity } = (answers[from] as { readonly loads: PropellerLoads }).loads;
      if (inducedVelocity === 0) continue;
      const across = Math.hypot(inPlane[0], inPlane[1], inPlane[2]);
      // The air goes where the disc comes from.
      const along = across > leastSpeed ? -dot(inPlane, direction) / across : 1;
      const bearing = Math.acos(Math.min(1, Math.max(-1, along)));
      const skew = Math.atan2(across, Math.max(through, 0));
      wash[on] = (wash[on] as number) + strength * inducedVelocity * table.read(skew, bearing);
    }
    return wash;
  }
}

function linkOf(
  propellers: AircraftDefinition["propellers"],
  from: number,
  on: number,
  strength: number,
  tables: Map<string, WakeTable>,
): Link {
  const maker = propellers[from] as AircraftDefinition["propellers"][number];
  const other = propellers[on] as AircraftDefinition["propellers"][number];
  const axis = thrustAxis(maker, 0, 0);
  const apart: Vector = [other.place.x - maker.place.x, other.place.y - maker.place.y, other.place.z - maker.place.z];
  const above = dot(apart, axis);
  const flat: Vector = [apart[0] - above * axis[0], apart[1] - above * axis[1], apart[2] - above * axis[2]];
  const distance = Math.hypot(flat[0], flat[1], flat[2]);
  const pair = { distance, above, radius: other.diameter / 2, ownRadius: maker.diameter / 2 };
  const key = [distance.toFixed(9), above.toFixed(9), pair.radius, pair.ownRadius].join(" ");
  const table = tables.get(key) ?? new WakeTable(pair);
  tables.set(key, table);
  const scale = distance > 0 ? 1 / distance : 0;
  return { from, on, strength, direction: [flat[0] * scale, flat[1] * scale, flat[2] * scale], table };
}
