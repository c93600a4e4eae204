export type { ProjectEntry } from "./catalogue-routes.ts";
export { resultSchema } from "./openapi.ts";
export { createServer, listen, type ServerOptions } from "./server.ts";
