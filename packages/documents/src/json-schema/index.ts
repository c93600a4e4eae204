export { documentSchema, schemaFileName, schemaFiles } from "./document-schema.ts";
export { schemaFolder, writeSchemas } from "./write-schemas.ts";
