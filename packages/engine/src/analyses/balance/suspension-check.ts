import {
  type AircraftDefinition,
  hangingAttitude,
  hangingCentre,
  type Loading,
  massProperties,
  recordLoading,
} from "../../aircraft/index.ts";
import { contributionsTo, halfWidthOf, type unsureNumbers } from "./intervals.ts";
import type { SuspensionRow } from "./output-schema.ts";

function hungLoading(aircraft: AircraftDefinition, { blocks, payload }: AircraftDefinition["suspension"][number]): Loading {
  const record = aircraft.payloads.find(({ name }) => name === payload);
  return record ? recordLoading(blocks, record) : { blocks, payloadMass: 0, payloadPower: 0, payloadDragArea: 0 };
}

/** Measured angle, computed angle, their difference [rad]; centres of gravity by file, by angle, and of the empty aircraft by angle [m]. */
function results(aircraft: AircraftDefinition, index: number): readonly number[] {
  const hung = aircraft.suspension[index];
  if (hung === undefined) throw new RangeError(`there is no suspension measurement ${index}`);
  const { mass, centre } = massProperties(aircraft, hungLoading(aircraft, hung));
  const computed = hangingAttitude(hung.from, centre).noseUp;
  const meant = hangingCentre(hung.from, centre.z, hung.noseUp);
  const empty = aircraft.emptyCentre.x + ((meant - centre.x) * mass) / aircraft.emptyMass;
  return [hung.noseUp, computed, hung.noseUp - computed, centre.x, meant, empty];
}

/** Each measurement of the hanging aircraft against the masses of the file, and what it means for the centre of gravity. */
export function suspensionRows(aircraft: AircraftDefinition, numbers: ReturnType<typeof unsureNumbers>): readonly SuspensionRow[] {
  return aircraft.suspension.map(({ id, blocks, payload }, index) => {
    const contributions = contributionsTo(aircraft, numbers, (other) => results(other, index));
    const found = results(aircraft, index).map((value, result) => ({ value, halfWidth: halfWidthOf(contributions, result) }));
    const [measured, computed, difference, centre, measuredCentre, emptyCentre] = found as [Half, Half, Half, Half, Half, Half];
    return {
      id,
      blocks,
      payload: payload ?? null,
      measured,
      measuredStated: measured.halfWidth > 0,
      computed,
      difference,
      agrees: Math.abs(difference.value) <= difference.halfWidth,
      centre,
      measuredCentre,
      emptyCentre,
    };
  });
}

interface Half {
  readonly value: number;
  readonly halfWidth: number;
}
