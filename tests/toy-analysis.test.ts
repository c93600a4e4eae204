// One more analysis, in a registry file of its own and nowhere else: everything must work with it as with those of the house.
import { type ChildProcess, execFile, spawn } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import type { AnalysisResult } from "@wingseed/engine";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { exactAnswer, launchBrowser, openQuestion, openScreen } from "./browser/screen.ts";
import { pdfText } from "./pdf-text.ts";

const registry = resolve("tests/fixtures/toy-registry.mjs");
const program = resolve("apps/cli/bin/wingseed.js");

let folder: string;
let project: string;
let runs: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "wingseed-toy-"));
  project = join(folder, "project");
  runs = join(folder, "runs.txt");
  cpSync("demo", project, { recursive: true, filter: (path) => !path.includes(".wingseed") });
});

beforeEach(() => {
  writeFileSync(runs, "");
  rmSync(join(project, ".wingseed"), { recursive: true, force: true });
});

afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

function environment(): NodeJS.ProcessEnv {
  return { ...process.env, TOY_RUNS: runs, NO_COLOR: "1", COLUMNS: "100" };
}

function wingseed(...words: string[]): Promise<Ended> {
  return new Promise((done) => {
    const child = execFile(
      process.execPath,
      [program, ...words, "--registry", registry],
      { env: environment(), maxBuffer: 2 ** 26 },
      (_error, out, err) => done({ status: child.exitCode, out, err }),
    );
  });
}

const timesRun = () => readFileSync(runs, "utf8").split("\n").length - 1;

describe("on the command line", () => {
  it("is listed with its question", async () => {
    const { out } = await wingseed("list");
    expect(out).toMatch(/^pendulum +How long does a hanging load swing\?$/m);
  });

  it("is asked by its name alone as by run, and a slip in the name is told", async () => {
    const words = ["pendulum", project, "--set", "inputs.length=2 m"];
    expect((await wingseed(...words)).out).toBe((await wingseed("run", ...words)).out);
    const { status, err } = await wingseed("pendulun");
    expect(status).toBe(2);
    expect(err).toMatch(/"pendulun" is neither a command nor an analysis\. Did you mean pendulum\?/);
  });

  it("prints question, answer, table and limits, and its warning beside them", async () => {
    const { status, out, err } = await wingseed("run", "pendulum", project, "--set", "inputs.length=250 cm", "--set", "swings=2");
    expect(status).toBe(0);
    const [question, answer] = out.split("\n");
    expect(question).toBe("How long does a hanging load swing?");
    expect(answer).toMatch(/^One swing takes 3\.17\ss\.$/);
    expect(out).toMatch(/swing +time, s\n +0 +0\.\d+\n +1 +3\.\d+\n +2 +6\.\d+/);
    expect(out).toMatch(/patience +1 % +at the last swing/);
    expect(err).toContain("Air drag is left out.");
  });

  it("gives the result exactly as JSON, as CSV with units and as a picture", async () => {
    const set = ["run", "pendulum", project, "--set", "inputs.length=2.5 m", "--set", "swings=2"];
    const result = JSON.parse((await wingseed(...set, "--format", "json")).out) as AnalysisResult;
    expect(result.cases).toEqual([
      {
        inputs: { length: 2.5, swings: 2, angle: 0.1, effort: 0 },
        outputs: { period: expect.closeTo(3.1744, 3), duration: expect.closeTo(6.349, 3), rows: expect.any(Array) },
      },
    ]);
    expect(result.provenance.defaults.map(({ path }) => path)).toEqual(["angle", "effort"]);
    expect((await wingseed(...set, "--format", "csv")).out.split("\r\n")).toHaveLength(5);
    expect((await wingseed(...set, "--format", "svg")).out).toMatch(/^<svg [\s\S]*<\/svg>\n$/);
    const map = await wingseed(...set, "--format", "geojson");
    expect([map.status, map.err]).toEqual([2, expect.stringContaining("draws no map")]);
  });

  it("tells by its exit status what happened", async () => {
    const status = async (...set: string[]) => (await wingseed("run", "pendulum", project, ...set.flatMap((one) => ["--set", one]))).status;
    expect(await status("length=3 m")).toBe(0);
    expect(await status("length=450 m")).toBe(1);
    expect(await status("length=3 kg")).toBe(2);
    expect(await status("lenght=3 m")).toBe(2);
    expect(await status("length=600 m")).toBe(3);
    expect(await status("length=950 m")).toBe(70);
  });

  it("sweeps in real workers and says which case has no answer", async () => {
    const { status, out } = await wingseed(
      "run",
      "pendulum",
      project,
      "--sweep",
      "inputs.length=1 m, 400 cm, 600 m",
      "--workers",
      "2",
      "--format",
      "json",
    );
    expect(status).toBe(0);
    const { cases } = JSON.parse(out) as AnalysisResult;
    expect(cases.map(({ inputs }) => (inputs as { length: number }).length)).toEqual([1, 4, 600]);
    expect(cases[2]?.problem?.kind).toBe("too-long");
    expect(timesRun()).toBe(3);
  });

  it("is not run again for the same question, unless the cache is off", async () => {
    const ask = ["run", "pendulum", project, "--set", "length=5 m", "--format", "json"];
    const [first, second] = [await wingseed(...ask), await wingseed(...ask)];
    expect(timesRun()).toBe(1);
    expect(second.out).toBe(first.out);
    const third = await wingseed(...ask, "--no-cache");
    expect(timesRun()).toBe(2);
    expect(third.out).toBe(first.out);
  });

  it("stops at Ctrl-C and keeps the finished cases", async () => {
    const child = spawn(
      process.execPath,
      [program, "run", "pendulum", project, "--registry", registry, "--workers", "1", "--format", "json", "--input", "-"],
      { env: environment() },
    );
    const ended = outputOf(child);
    child.stdin.end(JSON.stringify([{ length: 2 }, { length: 3, effort: 100_000 }, { length: 4, effort: 100_000 }]));
    await until(() => timesRun() === 2);
    child.kill("SIGINT");
    const { status, out } = await ended;
    expect(status).toBe(0);
    const { cases } = JSON.parse(out) as AnalysisResult;
    expect(cases.map(({ problem }) => problem?.kind)).toEqual([undefined, "cancelled", "cancelled"]);
    expect(timesRun()).toBe(2);
  });
});

describe("in the dossier", () => {
  it("has its chapter among the blocks and its answer in the text of the PDF", async () => {
    const file = join(folder, "dossier.pdf");
    // A project without documents of its own: the questions of the pages have no answer there, the toy has.
    const empty = join(folder, "empty");
    mkdirSync(empty, { recursive: true });
    writeFileSync(join(empty, "project.yaml"), 'format: 1\ntitle: Crane yard\naircraft: ["aircraft/none.yaml"]\n');
    const { status, out } = await wingseed("dossier", empty, "-o", file);
    expect([status, out]).toEqual([0, `${file}\n`]);
    const text = pdfText(readFileSync(file)).replace(/\s+/g, " ");
    expect(text).toContain("Crane yard");
    expect(text).toContain("How long does a hanging load swing?");
    expect(text).toMatch(/One swing takes 6\.35 s/);
    expect(text).toContain("Air drag is left out.");
  });
});

describe("over HTTP and in the browser", () => {
  let server: ChildProcess;
  let address: string;

  beforeAll(async () => {
    server = spawn(process.execPath, [program, "start", project, "--port", "0", "--registry", registry], { env: environment() });
    address = await new Promise<string>((done, fail) => {
      let said = "";
      server.stdout?.on("data", (text: Buffer) => {
        said += text;
        const found = /listens at (http:\/\/127\.0\.0\.1:\d+)\//.exec(said);
        if (found?.[1]) done(found[1]);
      });
      server.once("exit", (status) => fail(new Error(`The server ended with status ${status}: ${said}`)));
    });
  });

  afterAll(async () => {
    const ended = new Promise((done) => server.once("exit", done));
    server.kill("SIGTERM");
    expect(await ended).toBe(0);
  });

  async function begin(inputs: unknown): Promise<string> {
    const reply = await fetch(`${address}/api/runs`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ analysis: "pendulum", inputs }),
    });
    return ((await reply.json()) as { id: string }).id;
  }

  async function follow(id: string): Promise<{ name: string; data: { kind?: string; done?: number; total?: number } }[]> {
    const text = await (await fetch(`${address}/api/runs/${id}/events`)).text();
    return [...text.matchAll(/^event: (\w+)\ndata: (.*)$/gm)].map(([, name = "", data = ""]) => ({ name, data: JSON.parse(data) }));
  }

  it("tells its progress, a coarse answer, then the exact one", async () => {
    const events = await follow(await begin({ length: 3, effort: 40 }));
    expect(events.at(-1)?.name).toBe("result");
    expect(events.map(({ name }) => name)).toContain("partial");
    const steps = events.filter(({ name }) => name === "progress").map(({ data }) => data);
    expect(steps.every(({ total }) => total === 40)).toBe(true);
    expect(steps.length).toBeGreaterThan(1);
  });

  it("is stopped by a request", async () => {
    const id = await begin({ length: 3, effort: 100_000 });
    const events = follow(id);
    await until(() => timesRun() === 1);
    await fetch(`${address}/api/runs/${id}`, { method: "DELETE" });
    expect((await events).at(-1)).toMatchObject({ name: "problem", data: { kind: "cancelled" } });
  });

  it("has a form made from its schema, and answers what is typed there", async () => {
    const browser = await launchBrowser();
    try {
      const { page, complaints } = await openScreen(browser, address, { width: 1280, height: 900 }, "light");
      await openQuestion(page, address, "#/ask/pendulum");
      expect(await page.locator("h1").textContent()).toBe("How long does a hanging load swing?");
      expect(await page.locator(".answer").first().textContent()).toContain("6.35");
      const field = page.getByLabel(/rope length/i).first();
      await field.fill("400 cm");
      await field.press("Enter");
      await page.waitForFunction(() => document.querySelector(".answer")?.textContent?.includes("4.02"));
      await exactAnswer(page);
      expect(await page.locator('svg[data-figure="swings"]').count()).toBe(1);
      expect(complaints).toEqual([]);
    } finally {
      await browser.close();
    }
  });
});

function outputOf(child: ChildProcess): Promise<Ended> {
  let [out, err] = ["", ""];
  child.stdout?.on("data", (text: Buffer) => {
    out += text;
  });
  child.stderr?.on("data", (text: Buffer) => {
    err += text;
  });
  return new Promise((done) => child.once("close", (status) => done({ status, out, err })));
}

/** Waits for a condition that another process brings about. */
async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((done) => setTimeout(done, 20));
}
