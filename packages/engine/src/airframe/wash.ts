import type { AircraftDefinition } from "../aircraft/index.ts";

/** Air from another part: its number among its kind, and how strongly. */
export interface Wash {
  readonly kind: "rotor-downwash" | "slipstream" | "wing-downwash";
  readonly from: number;
  readonly strength: number;
}

/** A share of a part's area and the air of others that reaches it. */
export interface Exposure {
  readonly share: number;
  readonly washes: readonly Wash[];
}

/**
 * A part cut by the air that reaches it: what covers all of it reaches every piece, what covers a share makes a piece of its own.
 *
 * @derivation shares taken as side by side
 */
export function exposures(washes: readonly (Wash & { readonly share: number })[]): readonly Exposure[] {
  const everywhere = washes.filter(({ share }) => share >= 1);
  const partial = washes.filter(({ share }) => share < 1);
  const rest = 1 - partial.reduce((sum, { share }) => sum + share, 0);
  return [
    ...(rest > 0 ? [{ share: rest, washes: everywhere }] : []),
    ...partial.map((wash) => ({ share: wash.share, washes: [...everywhere, wash] })),
  ];
}

/** An order in which every surface follows those whose wake it meets; the file is checked to have no circles. */
export function orderByWake(washes: readonly (readonly Wash[])[]): readonly number[] {
  const order: number[] = [];
  const visit = (index: number, path: readonly number[]) => {
    if (order.includes(index) || path.includes(index)) return;
    for (const { kind, from } of washes[index] ?? []) if (kind === "wing-downwash") visit(from, [...path, index]);
    order.push(index);
  };
  for (let index = 0; index < washes.length; index++) visit(index, []);
  return order;
}

/** A velocity has so many. */
export const flowNumbers = 3;

/** Pieces of a part by the wakes that they stand in, those that are switched on. @derivation not a formula */
export function exposuresOf(aircraft: AircraftDefinition, on: string): readonly Exposure[] {
  const sources = { "rotor-downwash": aircraft.rotors, slipstream: aircraft.propellers, "wing-downwash": aircraft.surfaces };
  return exposures(
    aircraft.interference
      .flatMap((entry) => (entry.kind === "propeller-wake" ? [] : [{ ...entry, kind: entry.kind }]))
      .filter((entry) => entry.active && entry.on === on && entry.factor * entry.share !== 0)
      .map(({ kind, from, factor, share }) => ({
        kind,
        from: sources[kind].findIndex(({ id }) => id === from),
        strength: factor,
        share,
      })),
  );
}
