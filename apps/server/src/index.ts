export { answeredDossier, type DossierRequest, dossierPdf } from "./dossier.ts";
export { resultSchema } from "./openapi.ts";
export { type ProjectEntry, projectEntry } from "./project-entry.ts";
export { createServer, listen, type ServerOptions } from "./server.ts";
