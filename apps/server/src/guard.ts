import type { FastifyInstance } from "fastify";

const localNames: ReadonlySet<string> = new Set(["127.0.0.1", "localhost", "[::1]"]);

const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
].join("; ");

/**
 * Lets only pages of this very server talk to it. Another name for this machine (a rebound DNS name) is refused by its
 * Host, another page in the same browser by its Origin.
 */
export function guard(server: FastifyInstance): void {
  server.addHook("onRequest", async (request, reply) => {
    reply.headers({
      "content-security-policy": policy,
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
      "cross-origin-opener-policy": "same-origin",
      "cross-origin-resource-policy": "same-origin",
    });
    const host = request.headers.host ?? "";
    if (!localNames.has(host.replace(/:\d+$/, ""))) {
      return reply.code(421).send(refusal("wrong-host", `This server answers to 127.0.0.1 and localhost only, not to "${host}".`));
    }
    const origin = request.headers.origin;
    const isForeign = origin !== undefined ? origin !== `http://${host}` : request.headers["sec-fetch-site"] === "cross-site";
    if (isForeign && !isPlainVisit(request.method, request.headers["sec-fetch-mode"])) {
      return reply.code(403).send(refusal("foreign-origin", "Only pages of this server may ask it; this request came from another one."));
    }
  });
}

/** Following a link from elsewhere to the page is no question to the program. */
function isPlainVisit(method: string, mode: string | string[] | undefined): boolean {
  return method === "GET" && mode === "navigate";
}

/** The one shape of every error. */
export interface Refusal {
  readonly problem: { readonly kind: string; readonly message: string; readonly [detail: string]: unknown };
}

export function refusal(kind: string, message: string, details: Readonly<Record<string, unknown>> = {}): Refusal {
  return { problem: { kind, message, ...details } };
}
