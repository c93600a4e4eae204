import { bladeAt, type RotorModel } from "./rotor-model.ts";

/** The blade cut into elements, in arrays for the sweep. */
export interface RotorMesh {
  /** Middle of each element over radius. */
  readonly radiusFraction: Float64Array;
  /** Δx of each element [1]. */
  readonly width: Float64Array;
  /** Pitch of each element above that at 0.75 R [rad]. */
  readonly twist: Float64Array;
  /** Chord of each element [m]. */
  readonly chord: Float64Array;
  /** N c Δx/(2π R) over the number of azimuths: makes sums over all elements coefficients on disc area and tip speed. */
  readonly weight: Float64Array;
  /** The same, times the part of the element that carries lift. */
  readonly liftWeight: Float64Array;
  readonly sine: Float64Array;
  readonly cosine: Float64Array;
  /** Solidity by the chord weighted with x² [1]. */
  readonly solidity: number;
}

/** Edges equally spaced in x^1.5: where the lift is. */
function placeForLift(rootCutout: number): (share: number) => number {
  const rootPower = rootCutout ** 1.5;
  return (share) => (rootPower + (1 - rootPower) * share) ** (2 / 3);
}

/** Close together at ends where Prandtl's function falls to zero with the root of the distance. */
function placeForTip(rootCutout: number, atRootToo: boolean): (share: number) => number {
  const risen = (share: number): number => (atRootToo ? (1 - Math.cos(Math.PI * share)) / 2 : Math.sin((Math.PI / 2) * share));
  return (share) => rootCutout + (1 - rootCutout) * risen(share);
}

/**
 * Elements with edges equally spaced in x^1.5 from the root cut-out, or towards the ends at which Prandtl's function acts, and
 * azimuths half a step off the axes, so that none lies on a line of symmetry. The element that a lift cut-off divides keeps its
 * share of lift.
 *
 * @derivation midpoint rule in both directions
 */
export function rotorMesh(model: RotorModel): RotorMesh {
  const { radialElements, azimuths, bladeCount, radius, rootCutout, tipLoss } = model;
  const radiusFraction = new Float64Array(radialElements);
  const width = new Float64Array(radialElements);
  const twist = new Float64Array(radialElements);
  const chord = new Float64Array(radialElements);
  const weight = new Float64Array(radialElements);
  const liftWeight = new Float64Array(radialElements);
  const liftEnd = tipLoss.kind === "lift-cutoff" ? tipLoss.liftRadiusFraction : 1;
  const collectiveTwist = bladeAt(model, 0.75).twist;
  const place = tipLoss.kind === "prandtl" ? placeForTip(rootCutout, model.rootLoss === true) : placeForLift(rootCutout);
  let weightedChord = 0;
  let weights = 0;
  for (let i = 0; i < radialElements; i++) {
    const inner = place(i / radialElements);
    const outer = place((i + 1) / radialElements);
    const middle = tipLoss.kind === "prandtl" ? place((i + 0.5) / radialElements) : (inner + outer) / 2;
    const blade = bladeAt(model, middle);
    radiusFraction[i] = middle;
    width[i] = outer - inner;
    twist[i] = blade.twist - collectiveTwist;
    chord[i] = blade.chord;
    const share = (bladeCount * blade.chord * (outer - inner)) / (2 * Math.PI * radius * azimuths);
    weight[i] = share;
    liftWeight[i] = share * Math.min(Math.max((liftEnd - inner) / (outer - inner), 0), 1);
    weightedChord += blade.chord * middle * middle * (outer - inner);
    weights += middle * middle * (outer - inner);
  }
  const angle = (index: number): number => ((index + 0.5) * 2 * Math.PI) / azimuths;
  return {
    radiusFraction,
    width,
    twist,
    chord,
    weight,
    liftWeight,
    sine: Float64Array.from({ length: azimuths }, (_, j) => Math.sin(angle(j))),
    cosine: Float64Array.from({ length: azimuths }, (_, j) => Math.cos(angle(j))),
    solidity: (bladeCount * weightedChord) / (weights * Math.PI * radius),
  };
}
