import type { AddressInfo } from "node:net";
import Fastify, { type FastifyInstance } from "fastify";
import { type CatalogueOptions, catalogueRoutes } from "./catalogue-routes.ts";
import { guard, refusal } from "./guard.ts";
import { RunBook } from "./run-book.ts";
import { failure, runRoutes } from "./run-routes.ts";
import { serveStaticFiles } from "./static-files.ts";

export interface ServerOptions extends CatalogueOptions {
  /** Folder of the built web app. */
  readonly webFolder: string;
}

/** The web app and the interface for programs, for this machine only. */
export function createServer(options: ServerOptions): FastifyInstance {
  const server = Fastify({ bodyLimit: 4 * 1024 * 1024, requestTimeout: 30_000, forceCloseConnections: true });
  // A form of another page may send text without asking; JSON it may not.
  server.removeContentTypeParser("text/plain");
  guard(server);
  server.setErrorHandler((error, _request, reply) => {
    const { status, body } = failure(error);
    return reply.code(status).send(body);
  });
  server.setNotFoundHandler((request, reply) =>
    reply.code(404).send(refusal("not-found", `There is nothing at ${request.method} ${request.url}.`)),
  );
  server.addHook("onSend", async (request, reply) => {
    if (request.url.startsWith("/api/")) reply.header("cache-control", "no-store");
  });
  const book = new RunBook(options.runner);
  server.addHook("preClose", async () => book.stopAll());
  catalogueRoutes(server, options);
  runRoutes(server, options.runner, book);
  serveStaticFiles(server, options.webFolder);
  return server;
}

/** Listens on this machine only. @returns the address with the port that was taken */
export async function listen(server: FastifyInstance, port: number): Promise<string> {
  await server.listen({ host: "127.0.0.1", port });
  return `http://127.0.0.1:${(server.server.address() as AddressInfo).port}/`;
}
