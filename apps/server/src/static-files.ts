import { readFile } from "node:fs/promises";
import { extname, join, normalize } from "node:path";
import type { FastifyInstance } from "fastify";
import { refusal } from "./guard.ts";

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".txt": "text/plain; charset=utf-8",
};

/** Serves the built web app. Only files of the known types and inside the folder exist for it. */
export function serveStaticFiles(server: FastifyInstance, folder: string): void {
  server.get("/*", async (request, reply) => {
    const asked = (request.params as { "*": string })["*"] || "index.html";
    const path = normalize(join("/", asked));
    const type = types[extname(path)];
    const content = type && !path.includes("\0") ? await readFile(join(folder, path)).catch(() => null) : null;
    if (content === null || type === undefined) return reply.code(404).send(refusal("not-found", `There is no page "/${asked}".`));
    // Names under assets/ carry the hash of their content.
    const lasting = path.startsWith("/assets/") ? "public, max-age=31536000, immutable" : "no-cache";
    return reply.header("cache-control", lasting).type(type).send(content);
  });
}
