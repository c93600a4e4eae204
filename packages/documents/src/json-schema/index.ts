export { documentSchema } from "./document-schema.ts";
export { schemaFolder, writeSchemas } from "./write-schemas.ts";
