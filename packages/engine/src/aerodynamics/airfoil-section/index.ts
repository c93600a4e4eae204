export { builtInSectionProvenance, type SectionProvenance } from "./built-in-section.ts";
export { type SectionCharacteristics, sectionCharacteristics } from "./section-characteristics.ts";
export {
  type BuiltInSection,
  type BuiltInSectionName,
  builtInSectionNames,
  type CamberedSection,
  type GenericSection,
  type SectionDefinition,
  type SectionPolar,
  type TableSection,
} from "./section-definition.ts";
export {
  rootReynoldsStep,
  rootReynoldsSteps,
  type SectionCondition,
  type SectionLaw,
  sectionCoefficients,
  sectionLaw,
} from "./section-law.ts";
export { type SectionRow, sectionPolars } from "./section-polars.ts";
export { circleSteps, circleWidth, stepWidth } from "./section-table.ts";
