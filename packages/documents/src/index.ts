export { type DocumentKind, documentKinds } from "./document/index.ts";
export { type DocumentProblem, inReadingOrder, problemLine } from "./document-problem.ts";
export { documentSchema, schemaFolder, writeSchemas } from "./json-schema/index.ts";
export { changedProject, type ListedFile, openProject, type Project, type ProjectChange, type Reading } from "./project/index.ts";
export {
  type InputReading,
  type InputTextReading,
  type ProblemKind,
  readInputs,
  readInputText,
  type ValueProblem,
} from "./schema/index.ts";
export { parseQuantity, type QuantityReading } from "./units/index.ts";
