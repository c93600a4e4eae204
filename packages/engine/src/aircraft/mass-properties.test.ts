import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AircraftDefinition } from "./definition.ts";
import type { Loading } from "./loading.ts";
import { combinedMass, type MassItem, massItems, massProperties } from "./mass-properties.ts";
import { hangingAttitude, hangingCentre } from "./suspension.ts";

const bare: Loading = { blocks: 0, payloadMass: 0, payloadPower: 0, payloadDragArea: 0 };

/** What mass properties read of an aircraft: an empty mass, a bay of three places with blocks of 1 kg, nothing else fixed. */
function aircraftOf(change: Partial<AircraftDefinition> = {}): AircraftDefinition {
  return {
    emptyMass: 8,
    emptyCentre: { x: -0.05, y: 0, z: 0 },
    emptyInertia: { x: 0.5, y: 1, z: 1.2 },
    payloadBay: { x: 0.1, y: 0, z: 0.2 },
    battery: {
      blockMass: 1,
      blockSize: { x: 0.06, y: 0.12, z: 0.24 },
      fixedMass: 0,
      fixedPlace: { x: 0, y: 0, z: 0 },
      bay: { front: 0.2, back: -0.1, z: 0.1, places: 3 },
    },
    ...change,
  } as AircraftDefinition;
}

describe("mass, centre of gravity and inertia", () => {
  it("of the empty aircraft are the file's", () => {
    const { mass, centre, inertia } = massProperties(aircraftOf(), bare);
    expect(mass).toBe(8);
    expect(centre).toEqual({ x: -0.05, y: 0, z: 0 });
    expect([...inertia]).toEqual([0.5, 0, 0, 0, 1, 0, 0, 0, 1.2]);
  });

  it("with two blocks and a payload are what one finds by hand", () => {
    // Blocks at x = 0.15 and 0.05, z = 0.1; payload 2 kg at (0.1, 0, 0.2): 12 kg in all.
    const { mass, centre, inertia } = massProperties(aircraftOf(), { ...bare, blocks: 2, payloadMass: 2 });
    expect(mass).toBe(12);
    // (8 × −0.05 + 0.15 + 0.05 + 2 × 0.1) / 12 and (2 × 0.1 + 2 × 0.2) / 12
    expect(centre.x).toBeCloseTo(0, 15);
    expect(centre.z).toBeCloseTo(0.05, 15);
    // A block about its own centre: (0.12² + 0.24²) / 12 = 0.006, (0.06² + 0.24²) / 12 = 0.0051, (0.06² + 0.12²) / 12 = 0.0015.
    expect(inertia[0]).toBeCloseTo(0.5 + 2 * 0.006 + 8 * 0.05 ** 2 + 2 * 0.05 ** 2 + 2 * 0.15 ** 2, 14);
    const y = 1 + 2 * 0.0051 + 8 * (0.05 ** 2 + 0.05 ** 2) + (0.15 ** 2 + 0.05 ** 2) + (0.05 ** 2 + 0.05 ** 2) + 2 * (0.1 ** 2 + 0.15 ** 2);
    expect(inertia[4]).toBeCloseTo(y, 14);
    expect(inertia[8]).toBeCloseTo(1.2 + 2 * 0.0015 + 8 * 0.05 ** 2 + 0.15 ** 2 + 0.05 ** 2 + 2 * 0.1 ** 2, 14);
    // Minus the sum of m x z about the centre: −(8 × −0.05 × −0.05 + 0.15 × 0.05 + 0.05 × 0.05 + 2 × 0.1 × 0.15).
    expect(inertia[2]).toBeCloseTo(-(8 * 0.05 * 0.05 + 0.15 * 0.05 + 0.05 * 0.05 + 2 * 0.1 * 0.15), 14);
    expect([1, 3, 5, 7].map((index) => Math.abs(inertia[index] as number))).toEqual([0, 0, 0, 0]);
  });

  it("count blocks into the bay from the front, and the payload where its record says", () => {
    const items = massItems(aircraftOf(), {
      ...bare,
      blocks: 3,
      payloadMass: 1,
      payloadPlace: { x: 0.3, y: -0.1, z: 0.4 },
      payloadSize: { x: 0, y: 0, z: 0.6 },
    });
    const blocks = items.filter(({ kind }) => kind === "block").map(({ place }) => place.x);
    for (const [index, x] of [0.15, 0.05, -0.05].entries()) expect(blocks[index]).toBeCloseTo(x, 15);
    const payload = items.at(-1);
    expect(payload?.place).toEqual({ x: 0.3, y: -0.1, z: 0.4 });
    expect([payload?.inertia[0], payload?.inertia[4], payload?.inertia[8]]).toEqual([0.03, 0.03, 0]);
  });

  it("take the file's products of inertia with the sign turned", () => {
    const { inertia } = massProperties(aircraftOf({ emptyProducts: { xy: 0.01, yz: -0.02, zx: 0.03 } }), bare);
    expect([...inertia]).toEqual([0.5, -0.01, -0.03, -0.01, 1, 0.02, -0.03, 0.02, 1.2]);
  });
});

const number = (size: number) => fc.double({ min: -size, max: size, noNaN: true, noDefaultInfinity: true });
const item = fc.record({
  mass: fc.double({ min: 0.01, max: 10, noNaN: true }),
  place: fc.record({ x: number(2), y: number(2), z: number(2) }),
});
const items = fc.array(item, { minLength: 1, maxLength: 8 }).map((list) => list.map((one) => ({ ...one, inertia: new Float64Array(9) })));

type Item = Pick<MassItem, "mass" | "place" | "inertia">;
const moved = (list: readonly Item[], change: (place: Item["place"]) => Item["place"]) =>
  list.map((one) => ({ ...one, place: change(one.place) }));
const close = (found: ArrayLike<number>, wanted: ArrayLike<number>) => {
  for (let i = 0; i < 9; i++) expect(Math.abs((found[i] as number) - (wanted[i] as number))).toBeLessThan(1e-10);
};

describe("of any set of masses", () => {
  it("a shift of all moves the centre and leaves the inertia", () => {
    fc.assert(
      fc.property(items, number(3), (list, by) => {
        const at = combinedMass(list);
        const shifted = combinedMass(moved(list, (place) => ({ x: place.x + by, y: place.y - by, z: place.z + 2 * by })));
        expect(shifted.centre.x - at.centre.x).toBeCloseTo(by, 10);
        expect(shifted.centre.z - at.centre.z).toBeCloseTo(2 * by, 10);
        close(shifted.inertia, at.inertia);
      }),
    );
  });

  it("a mirror to the other side turns y and the two products that hold it", () => {
    fc.assert(
      fc.property(items, (list) => {
        const at = combinedMass(list);
        const other = combinedMass(moved(list, (place) => ({ ...place, y: -place.y })));
        expect(other.centre.y).toBeCloseTo(-at.centre.y, 12);
        close(
          other.inertia,
          at.inertia.map((value, index) => ([1, 3, 5, 7].includes(index) ? -value : value)),
        );
      }),
    );
  });

  it("the whole is the same however it is put together", () => {
    fc.assert(
      fc.property(items, items, (first, second) => {
        const parts = [combinedMass(first), combinedMass(second)].map(({ mass, centre, inertia }) => ({ mass, place: centre, inertia }));
        const together = combinedMass([...first, ...second]);
        const joined = combinedMass(parts);
        expect(joined.mass).toBeCloseTo(together.mass, 10);
        expect(joined.centre.y).toBeCloseTo(together.centre.y, 10);
        close(joined.inertia, together.inertia);
      }),
    );
  });
});

describe("an aircraft that hangs from a point", () => {
  it("has its centre of gravity below that point: 3 cm behind and 40 cm under it is 4.289 degrees nose up", () => {
    const { noseUp, rightDown } = hangingAttitude({ x: 0, y: 0, z: -0.35 }, { x: -0.03, y: 0, z: 0.05 });
    expect((noseUp * 180) / Math.PI).toBeCloseTo(4.289, 3);
    expect(rightDown).toBe(0);
  });

  it("drops the side on which its centre of gravity lies", () => {
    expect(hangingAttitude({ x: 0, y: 0, z: 0 }, { x: 0, y: 0.1, z: 0.1 }).rightDown).toBeCloseTo(Math.PI / 4, 15);
  });

  it("tells from its angle where the centre of gravity lies", () => {
    fc.assert(
      fc.property(number(0.3), number(0.2), (x, depth) => {
        const from = { x: 0.01, y: 0, z: -0.35 };
        const { noseUp } = hangingAttitude(from, { x, y: 0, z: depth });
        expect(hangingCentre(from, depth, noseUp)).toBeCloseTo(x, 12);
      }),
    );
  });
});
