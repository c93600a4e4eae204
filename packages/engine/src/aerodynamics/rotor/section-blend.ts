import { type SectionDefinition, type SectionLaw, sectionLaw } from "../airfoil-section/index.ts";
import type { RotorMesh } from "./rotor-mesh.ts";
import type { RotorModel } from "./rotor-model.ts";

/** The section of one blade element: one law, or two with the share of the second. */
export interface SectionBlend {
  readonly inner: SectionLaw;
  readonly outer: SectionLaw;
  /** 0: only `inner` counts [1]. */
  readonly outerShare: number;
}

/**
 * The section of every element: coefficients at equal angle run straight between the laws of neighbouring stations.
 *
 * @derivation linear interpolation
 */
export function sectionBlends(model: RotorModel, mesh: RotorMesh, main: SectionLaw): readonly SectionBlend[] {
  const laws = new Map<SectionDefinition, SectionLaw>([[model.section, main]]);
  const lawOf = (definition: SectionDefinition = model.section): SectionLaw => {
    const known = laws.get(definition) ?? sectionLaw(definition);
    laws.set(definition, known);
    return known;
  };
  const { stations } = model;
  return Array.from(mesh.radiusFraction, (x) => {
    const above = stations.findIndex((station) => station.radiusFraction >= x);
    const outer = stations[above < 0 ? stations.length - 1 : above];
    const inner = above > 0 ? stations[above - 1] : outer;
    if (!outer || !inner || outer.section === inner.section)
      return { inner: lawOf(outer?.section), outer: lawOf(outer?.section), outerShare: 0 };
    const outerShare = (x - inner.radiusFraction) / (outer.radiusFraction - inner.radiusFraction);
    return { inner: lawOf(inner.section), outer: lawOf(outer.section), outerShare };
  });
}
