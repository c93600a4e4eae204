import type { RotorRow } from "./output-schema.ts";

/** What places a point among published measurements. */
export type DomainFields = Pick<RotorRow, "advanceRatio" | "reynoldsNumber" | "bladeLoading" | "torqueLoading" | "tipMach" | "axialRatio">;

/** Where a point lies among published measurements. */
export function domainCoordinates(point: DomainFields): DomainFields {
  const { advanceRatio, reynoldsNumber, bladeLoading, torqueLoading, tipMach, axialRatio } = point;
  return { advanceRatio, reynoldsNumber, bladeLoading, torqueLoading, tipMach, axialRatio };
}
