import { CannotAsk, problemFamily, type Runner, sweep } from "@wingseed/runner";
import type { FastifyInstance, FastifyReply } from "fastify";
import { refusal } from "./guard.ts";
import type { RunBook, RunEvent } from "./run-book.ts";

/** A stream that is silent longer than this may be cut by what lies between [ms]. */
const heartbeat = 15_000;

interface Asked {
  readonly analysis?: unknown;
  readonly cases?: unknown;
  readonly inputs?: unknown;
  readonly sweep?: unknown;
}

/** Runs with events as a stream, and the plain call that waits for the answer. */
export function runRoutes(server: FastifyInstance, runner: Runner, book: RunBook): void {
  server.post("/api/runs", async (request, reply) => {
    const { analysis, cases } = readAsked(request.body);
    runner.registry.named(analysis);
    return reply.code(201).send({ id: book.begin({ analysis, cases }) });
  });

  server.get<{ Params: { id: string } }>("/api/runs/:id/events", (request, reply) => {
    const stream = eventStream(reply);
    const leave = book.listen(request.params.id, stream.send);
    if (leave) stream.onClose(leave);
    else if (!reply.sent) reply.code(404).send(refusal("not-found", `There is no run "${request.params.id}".`));
  });

  server.delete<{ Params: { id: string } }>("/api/runs/:id", async (request, reply) => {
    if (book.stop(request.params.id)) return reply.code(204).send();
    return reply.code(404).send(refusal("not-found", `There is no run "${request.params.id}".`));
  });

  server.post<{ Params: { name: string } }>("/api/analyses/:name/run", async (request, reply) => {
    const analysis = runner.registry.named(request.params.name);
    const leaving = new AbortController();
    reply.raw.on("close", () => leaving.abort());
    const cases = Array.isArray(request.body) ? request.body : [request.body ?? {}];
    const result = await runner.run({ analysis: analysis.name, cases, signal: leaving.signal });
    const [only, ...others] = result.cases;
    const family = only?.problem && others.length === 0 ? problemFamily(only.problem) : "no-result";
    if (family === "no-result") return result;
    return reply.code(family === "usage" ? 422 : 500).send({ problem: only?.problem });
  });
}

function readAsked(body: unknown): { analysis: string; cases: readonly unknown[] } {
  const { analysis, cases, inputs, sweep: axes } = (typeof body === "object" && body !== null ? body : {}) as Asked;
  if (typeof analysis !== "string") throw new BadRequest(`"analysis" must name an analysis; read ${JSON.stringify(analysis)}.`);
  if (cases !== undefined && (!Array.isArray(cases) || cases.length === 0))
    throw new BadRequest('"cases" must be a list with at least one entry.');
  const given = (cases as readonly unknown[] | undefined) ?? [inputs ?? {}];
  if (axes === undefined) return { analysis, cases: given };
  const isTable =
    typeof axes === "object" && axes !== null && Object.values(axes).every((values) => Array.isArray(values) && values.length > 0);
  if (!isTable) throw new BadRequest('"sweep" must give a list of values for each path, as in {"inputs.payload": ["1 kg", "2 kg"]}.');
  try {
    return { analysis, cases: given.flatMap((one) => sweep(one, axes as Record<string, unknown[]>)) };
  } catch (error) {
    throw new BadRequest(error instanceof Error ? error.message : String(error));
  }
}

/** What was asked cannot be understood; answered with status 400. */
export class BadRequest extends Error {}

/** The status and shape in which a failure is told. */
export function failure(error: unknown): { status: number; body: ReturnType<typeof refusal> } {
  if (error instanceof CannotAsk) return { status: 404, body: refusal(error.kind, error.message, { suggestions: error.suggestions }) };
  if (error instanceof BadRequest) return { status: 400, body: refusal("bad-request", error.message) };
  const { statusCode, message } = error as { statusCode?: number; message?: string };
  if (statusCode !== undefined && statusCode < 500)
    return { status: statusCode, body: refusal("bad-request", message ?? "The request cannot be read.") };
  return { status: 500, body: refusal("internal-error", message ?? String(error)) };
}

/** Opens the stream with the first event; ends it after the last. */
function eventStream(reply: FastifyReply): { send(event: RunEvent): void; onClose(leave: () => void): void } {
  let beat: NodeJS.Timeout | undefined;
  function open(): void {
    if (reply.sent) return;
    reply.hijack();
    const headers = Object.entries(reply.getHeaders()).map(([name, value]): [string, string] => [name, String(value)]);
    reply.raw.writeHead(200, { ...Object.fromEntries(headers), "content-type": "text/event-stream", "cache-control": "no-store" });
    beat = setInterval(() => reply.raw.write(":\n\n"), heartbeat);
  }
  return {
    send({ name, data }) {
      open();
      reply.raw.write(`event: ${name}\ndata: ${JSON.stringify(data)}\n\n`);
      if (name === "result" || name === "problem") {
        clearInterval(beat);
        reply.raw.end();
      }
    },
    onClose(leave) {
      open();
      reply.raw.flushHeaders();
      reply.raw.on("close", () => {
        clearInterval(beat);
        leave();
      });
    },
  };
}
