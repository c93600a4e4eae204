export { builtInSectionProvenance, type SectionProvenance } from "./built-in-section.ts";
export {
  type BuiltInSection,
  type BuiltInSectionName,
  builtInSectionNames,
  type GenericSection,
  type SectionDefinition,
} from "./section-definition.ts";
export {
  rootReynoldsStep,
  rootReynoldsSteps,
  type SectionCondition,
  type SectionLaw,
  sectionCoefficients,
  sectionLaw,
} from "./section-law.ts";
export { circleSteps, circleWidth, stepWidth } from "./section-table.ts";
