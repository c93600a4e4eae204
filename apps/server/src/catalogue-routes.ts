import type { Runner } from "@wingseed/runner";
import type { FastifyInstance } from "fastify";
import { refusal } from "./guard.ts";
import { openApi } from "./openapi.ts";
import type { ProjectEntry } from "./project-entry.ts";

export interface CatalogueOptions {
  readonly runner: Runner;
  readonly version: string;
  readonly pages: unknown;
  /** Asked anew each time, since files change. */
  readonly project: () => Promise<ProjectEntry>;
  readonly dossier: (signal: AbortSignal) => Promise<Uint8Array>;
  /** Content of the summary of the published checks; null when it is not shipped. */
  readonly validation: () => Promise<unknown | null>;
}

/** Everything that is only read. */
export function catalogueRoutes(server: FastifyInstance, options: CatalogueOptions): void {
  const { registry } = options.runner;
  server.get("/api/analyses", async () =>
    registry.analyses.map(({ name, question, method, example, quick }) => ({
      name,
      question,
      inputs: registry.inputSchema(name),
      outputs: registry.outputSchema(name),
      method,
      example,
      quick: quick === true,
    })),
  );
  server.get("/api/pages", async () => options.pages);
  server.get("/api/project", async () => options.project());
  server.get("/api/openapi.json", async () => openApi(registry, options.version));
  server.get("/api/validation", async (_request, reply) => {
    const summary = await options.validation();
    return summary ?? reply.code(404).send(refusal("not-found", "The summary of the published checks is not part of this installation."));
  });
  server.get("/api/dossier.pdf", async (_request, reply) => {
    const leaving = new AbortController();
    reply.raw.on("close", () => leaving.abort());
    const pdf = await options.dossier(leaving.signal);
    return reply.type("application/pdf").header("content-disposition", 'attachment; filename="dossier.pdf"').send(Buffer.from(pdf));
  });
}
