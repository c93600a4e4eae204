import { type SectionDefinition, type SectionLaw, sectionCoefficients, sectionLaw } from "../airfoil-section/index.ts";
import type { RotorMesh } from "./rotor-mesh.ts";
import type { RotorModel } from "./rotor-model.ts";

/** The section of one blade element: one law, or two with the share of the second. */
export interface SectionBlend {
  readonly inner: SectionLaw;
  readonly outer: SectionLaw;
  /** 0: only `inner` counts [1]. */
  readonly outerShare: number;
  /** Slope of lift [1/rad] and angle of no lift [rad] of the blend, at Mach 0. */
  readonly liftSlope: number;
  readonly zeroLift: number;
}

/**
 * The section of every element: coefficients at equal angle run straight between the laws of neighbouring stations. Tables that know
 * several Mach numbers are read at the element's own, where the model names that of the tip.
 *
 * @derivation linear interpolation
 */
export function sectionBlends(model: RotorModel, mesh: RotorMesh, main: SectionLaw): readonly SectionBlend[] {
  const laws = new Map<SectionDefinition, SectionLaw>([[model.section, main]]);
  const lawOf = (definition: SectionDefinition, x: number): SectionLaw => {
    if (model.sectionTipMach !== undefined && knowsMach(definition)) return sectionLaw(definition, { mach: x * model.sectionTipMach });
    const known = laws.get(definition) ?? sectionLaw(definition);
    laws.set(definition, known);
    return known;
  };
  const { stations } = model;
  return Array.from(mesh.radiusFraction, (x) => {
    const above = stations.findIndex((station) => station.radiusFraction >= x);
    const outer = stations[above < 0 ? stations.length - 1 : above];
    const inner = above > 0 ? stations[above - 1] : outer;
    const outside = lawOf(outer?.section ?? model.section, x);
    if (!outer || !inner || outer.section === inner.section) return blend(outside, outside, 0);
    const share = (x - inner.radiusFraction) / (outer.radiusFraction - inner.radiusFraction);
    return blend(lawOf(inner.section ?? model.section, x), outside, share);
  });
}

function knowsMach(definition: SectionDefinition): boolean {
  return definition.kind === "table" && definition.polars.some((polar) => polar.machNumber !== definition.polars[0]?.machNumber);
}

function blend(inner: SectionLaw, outer: SectionLaw, outerShare: number): SectionBlend {
  const between = (of: (law: SectionLaw) => number): number => (1 - outerShare) * of(inner) + outerShare * of(outer);
  return { inner, outer, outerShare, liftSlope: between((law) => law.liftSlope), zeroLift: between(zeroLiftAngle) };
}

/** The angle of no lift by the slope at zero angle, from the middle Reynolds number [rad]. */
function zeroLiftAngle(law: SectionLaw): number {
  const reynolds = law.reynolds[Math.floor(law.reynolds.length / 2)] ?? 0;
  return -sectionCoefficients(law, { angleOfAttack: 0, mach: 0, reynolds }).lift / Math.max(law.liftSlope, 1e-9);
}
