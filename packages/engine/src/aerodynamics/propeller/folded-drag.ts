/** Drag of blades lying along the stream over their area on one side [1]. From memory: both sides rubbed by turbulent flow at small scale. */
const foldedDragCoefficient = 0.02;

/**
 * Drag area of folded blades, without hub and spinner [m²].
 *
 * @param bladeArea of all blades, one side [m²]
 * @derivation skin friction on both sides, from memory
 */
export function foldedDragArea(bladeArea: number): number {
  return foldedDragCoefficient * bladeArea;
}
