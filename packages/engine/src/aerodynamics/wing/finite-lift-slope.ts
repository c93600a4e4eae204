import { aspectRatio, halfChordSweep, type WingPlanform } from "./wing-planform.ts";

/**
 * Slope of lift of a wing [1/rad] from that of its section.
 *
 *     a = 2π A / (2 + √(4 + (A β/κ)² (1 + tan²Λ/β²)))     κ = a₀/2π, Λ at half chord
 *
 * Without sweep and for a₀ = 2π this is Helmbold's formula.
 *
 * @param sectionSlope a₀ at Mach 0 [1/rad]
 * @source hoak-finck-1978, sect. 4.1.3.2, from memory; helmbold-1942, unchecked
 */
export function finiteLiftSlope(wing: WingPlanform, sectionSlope: number, mach: number): number {
  const aspect = aspectRatio(wing);
  const beta2 = 1 - Math.min(mach * mach, 0.81);
  const kappa = sectionSlope / (2 * Math.PI);
  const tangent = Math.tan(halfChordSweep(wing));
  return (2 * Math.PI * aspect) / (2 + Math.sqrt(4 + (aspect / kappa) ** 2 * (beta2 + tangent * tangent)));
}
