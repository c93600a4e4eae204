export { type ChangedReading, changedDocument, type DocumentChange } from "./changed-document.ts";
export { currentFormat, type DocumentKind, documentKinds, type Migration } from "./document-kinds.ts";
export { type DocumentReading, type DocumentText, type PlacedReference, readYamlDocument } from "./read-document.ts";
