export { nearName } from "./near-name.ts";
export { boundsInWords } from "./number-value.ts";
export { type ChangeReading, readChange } from "./read-change.ts";
export { type InputReading, type InputTextReading, readInputs, readInputText } from "./read-inputs.ts";
export { readValue, type ValueReading } from "./read-value.ts";
export type { FileReference, ReadingMode, WrittenNumber } from "./reading.ts";
export { type SchemaNode, schemaNode } from "./schema-node.ts";
export { dotted, type PathStep, type ProblemKind, pointer, shown, type ValueProblem } from "./value-problem.ts";
