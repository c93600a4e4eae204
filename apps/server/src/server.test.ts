import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request as httpRequest } from "node:http";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { createRunner, type Runner } from "@wingseed/runner";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createServer, listen } from "./server.ts";

let folder: string;
let runner: Runner;
let server: FastifyInstance;
let address: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "wingseed-server-"));
  mkdirSync(join(folder, "web/assets"), { recursive: true });
  writeFileSync(join(folder, "web/index.html"), "<!doctype html><title>page</title>");
  writeFileSync(join(folder, "web/assets/app-1a2b.js"), "1");
  writeFileSync(join(folder, "secret.json"), "{}");
  runner = await createRunner({
    registryUrl: pathToFileURL(resolve("tests/fixtures/toy-registry.mjs")).href,
    workerUrl: pathToFileURL(resolve("dist/worker.mjs")).href,
    workers: 1,
    cacheDirectory: null,
    project: null,
    version: "0.0.0-test",
  });
  server = createServer({
    runner,
    version: "0.0.0-test",
    pages: [],
    project: async () => ({ title: "Test", demo: false, aircraft: [], missions: [], problems: [], cautions: [] }),
    dossier: async () => new TextEncoder().encode("%PDF-1.7"),
    validation: async () => null,
    webFolder: join(folder, "web"),
  });
  address = await listen(server, 0);
});

afterAll(async () => {
  await server.close();
  await runner.close();
  rmSync(folder, { recursive: true });
});

const host = { host: "127.0.0.1:80" };
const call = (body: unknown, path = "/api/analyses/pendulum/run") =>
  server.inject({ method: "POST", url: path, headers: host, payload: body as object });

describe("the guard", () => {
  it("refuses every other name of this machine", async () => {
    for (const name of ["evil.example", "evil.example:4180", "127.0.0.1.evil.example", "localhost.evil.example", "[::2]"]) {
      const reply = await server.inject({ url: "/api/project", headers: { host: name } });
      expect(reply.statusCode, name).toBe(421);
      expect(reply.json()).toMatchObject({ problem: { kind: "wrong-host" } });
    }
    for (const name of ["127.0.0.1", "localhost:4180", "[::1]:4180"]) {
      expect((await server.inject({ url: "/api/project", headers: { host: name } })).statusCode, name).toBe(200);
    }
  });

  it("refuses pages of other origins, also of another port of this machine, and questions without an origin from other sites", async () => {
    for (const origin of ["https://evil.example", "http://127.0.0.1:9999", "null"]) {
      const reply = await server.inject({
        method: "POST",
        url: "/api/runs",
        headers: { ...host, origin },
        payload: { analysis: "pendulum" },
      });
      expect(reply.statusCode, origin).toBe(403);
    }
    const silent = await server.inject({
      url: "/api/project",
      headers: { ...host, "sec-fetch-site": "cross-site", "sec-fetch-mode": "no-cors" },
    });
    expect(silent.statusCode).toBe(403);
    const own = await server.inject({ url: "/api/project", headers: { ...host, origin: "http://127.0.0.1:80" } });
    expect(own.statusCode).toBe(200);
    const link = await server.inject({ url: "/", headers: { ...host, "sec-fetch-site": "cross-site", "sec-fetch-mode": "navigate" } });
    expect(link.statusCode).toBe(200);
  });

  it("lets a page run no script and no style but its own", async () => {
    const reply = await server.inject({ url: "/", headers: host });
    const policy = String(reply.headers["content-security-policy"]);
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toContain("unsafe");
    expect(reply.headers).toMatchObject({ "x-content-type-options": "nosniff", "cross-origin-opener-policy": "same-origin" });
  });

  it("takes no question that a form of another page could send", async () => {
    const reply = await server.inject({
      method: "POST",
      url: "/api/runs",
      headers: { ...host, "content-type": "text/plain" },
      payload: '{"analysis":"pendulum"}',
    });
    expect(reply.statusCode).toBe(415);
    expect(reply.json()).toHaveProperty("problem.message");
  });
});

describe("files of the web app", () => {
  it("are served with their type, lasting when their name carries a hash", async () => {
    const page = await server.inject({ url: "/", headers: host });
    expect(page.headers["content-type"]).toBe("text/html; charset=utf-8");
    const script = await server.inject({ url: "/assets/app-1a2b.js", headers: host });
    expect(script.headers["cache-control"]).toContain("immutable");
  });

  it("end at the folder", async () => {
    // A client that does not tidy the path before it asks.
    for (const path of ["/../secret.json", "/..%2fsecret.json", "/assets/..%2f..%2fsecret.json", "/%2e%2e/secret.json", "/a%00.html"]) {
      expect(await rawStatus(path), path).toBe(404);
    }
  });
});

function rawStatus(path: string): Promise<number | undefined> {
  const { hostname, port } = new URL(address);
  return new Promise((done, fail) => {
    httpRequest({ hostname, port, path }, (reply) => {
      reply.resume();
      done(reply.statusCode);
    })
      .on("error", fail)
      .end();
  });
}

describe("the plain call", () => {
  it("gives the one result shape", async () => {
    const reply = await call({ length: 3 });
    expect(reply.statusCode).toBe(200);
    expect(reply.json()).toMatchObject({ analysis: "pendulum", cases: [{ outputs: { period: expect.any(Number) } }] });
  });

  it("tells wrong inputs, unknown names and our own mistakes in one shape", async () => {
    const wrong = await call({ length: -3 });
    expect([wrong.statusCode, wrong.json().problem.kind]).toEqual([422, "invalid-inputs"]);
    const unknown = await call({}, "/api/analyses/pendulun/run");
    expect([unknown.statusCode, unknown.json().problem]).toEqual([404, expect.objectContaining({ suggestions: ["pendulum"] })]);
    const broken = await call({ length: 950 });
    expect([broken.statusCode, broken.json().problem.kind]).toEqual([500, "not-finite"]);
    const garbled = await server.inject({
      method: "POST",
      url: "/api/runs",
      headers: { ...host, "content-type": "application/json" },
      payload: "{",
    });
    expect([garbled.statusCode, garbled.json().problem.kind]).toEqual([400, "bad-request"]);
  });

  it("takes a no of physics as an answer", async () => {
    const reply = await call({ length: 600 });
    expect([reply.statusCode, reply.json().cases[0].problem.kind]).toEqual([200, "too-long"]);
  });
});

describe("a run with events", () => {
  it("tells progress, the coarse answer and the exact one, and ends", async () => {
    const events = await follow(await begin({ analysis: "pendulum", inputs: { length: 3, effort: 30 } }));
    const names = events.map(({ name }) => name);
    expect(names.at(-1)).toBe("result");
    expect(names.indexOf("partial")).toBeLessThan(names.length - 1);
    expect(names).toContain("progress");
    expect(events.at(-1)?.data).toMatchObject({ result: { analysis: "pendulum" }, view: { cases: [{ answer: { brief: "it swings" } }] } });
    expect(events.find(({ name }) => name === "partial")?.data).toMatchObject({ statedError: "within 7 %", view: { cases: [{}] } });
  });

  it("hands the end to whoever listens late", async () => {
    const id = await begin({ analysis: "pendulum", inputs: { length: 3 } });
    await follow(id);
    expect((await follow(id)).map(({ name }) => name)).toEqual(["result"]);
  });

  it("sweeps", async () => {
    const events = await follow(await begin({ analysis: "pendulum", inputs: { swings: 1 }, sweep: { "inputs.length": [1, 4] } }));
    expect(events.at(-1)?.data).toMatchObject({ result: { cases: [{ inputs: { length: 1 } }, { inputs: { length: 4 } }] } });
  });

  it("stops when asked to", async () => {
    const id = await begin({ analysis: "pendulum", inputs: { length: 3, effort: 100_000 } });
    const events = follow(id);
    expect((await fetch(`${address}api/runs/${id}`, { method: "DELETE" })).status).toBe(204);
    expect((await events).at(-1)).toMatchObject({ name: "problem", data: { kind: "cancelled" } });
  });

  it("stops when its only listener leaves", async () => {
    const id = await begin({ analysis: "pendulum", inputs: { length: 3, effort: 100_000 } });
    const leaving = new AbortController();
    const reply = await fetch(`${address}api/runs/${id}/events`, { signal: leaving.signal });
    await reply.body?.getReader().read();
    leaving.abort();
    // The next question gets the only worker, so the run before has stopped.
    expect((await call({ length: 7.25 })).statusCode).toBe(200);
    expect((await follow(id)).at(-1)).toMatchObject({ name: "problem", data: { kind: "cancelled" } });
  });

  it("is not there under a name that was not given", async () => {
    expect((await fetch(`${address}api/runs/nothing/events`)).status).toBe(404);
    expect((await fetch(`${address}api/runs/nothing`, { method: "DELETE" })).status).toBe(404);
  });
});

async function begin(body: unknown): Promise<string> {
  const reply = await fetch(`${address}api/runs`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  });
  expect(reply.status).toBe(201);
  return ((await reply.json()) as { id: string }).id;
}

async function follow(id: string): Promise<{ name: string; data: unknown }[]> {
  const text = await (await fetch(`${address}api/runs/${id}/events`)).text();
  return [...text.matchAll(/^event: (\w+)\ndata: (.*)$/gm)].map(([, name = "", data = ""]) => ({ name, data: JSON.parse(data) }));
}

describe("the catalogue", () => {
  it("describes every analysis by its schemas, for faces and as OpenAPI", async () => {
    const list = (await server.inject({ url: "/api/analyses", headers: host })).json() as {
      name: string;
      inputs: { properties: object };
    }[];
    const toy = list.find(({ name }) => name === "pendulum");
    expect(toy).toMatchObject({ quick: true, inputs: { properties: { length: { quantity: "length", description: expect.any(String) } } } });
    const api = (await server.inject({ url: "/api/openapi.json", headers: host })).json();
    expect(Object.keys(api.paths)).toContain("/api/analyses/pendulum/run");
  });

  it("gives the dossier as a file and says when the validation summary is missing", async () => {
    const pdf = await server.inject({ url: "/api/dossier.pdf", headers: host });
    expect([pdf.headers["content-type"], pdf.body]).toEqual(["application/pdf", "%PDF-1.7"]);
    const validation = await server.inject({ url: "/api/validation", headers: host });
    expect([validation.statusCode, validation.json().problem.kind]).toEqual([404, "not-found"]);
  });
});
