import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { ReadDocument } from "@wingseed/engine";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { ProjectSource } from "./project-source.ts";
import { createRunner, type Runner, type RunnerOptions } from "./runner.ts";
import { sweep } from "./sweep.ts";

let folder: string;
let runs: string;
const open: Runner[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "wingseed-runner-"));
  runs = join(folder, "runs.txt");
  writeFileSync(runs, "");
  process.env.TOY_RUNS = runs;
});

afterEach(async () => {
  await Promise.all(open.splice(0).map((runner) => runner.close()));
  rmSync(folder, { recursive: true });
});

async function runnerWith(options: Partial<RunnerOptions> = {}): Promise<Runner> {
  const runner = await createRunner({
    registryUrl: pathToFileURL(resolve("tests/fixtures/toy-registry.mjs")).href,
    workerUrl: pathToFileURL(resolve("dist/worker.mjs")).href,
    workers: 2,
    cacheDirectory: join(folder, "cache"),
    project: null,
    version: "0.0.0-test",
    ...options,
  });
  open.push(runner);
  return runner;
}

const timesRun = () => readFileSync(runs, "utf8").split("\n").length - 1;

function entries(): string[] {
  return readdirSync(join(folder, "cache"), { recursive: true, encoding: "utf8" })
    .map((name) => join(folder, "cache", name))
    .filter((path) => statSync(path).isFile());
}

describe("a run", () => {
  it("answers in real workers, with the defaults it used, in the one result shape", async () => {
    const runner = await runnerWith();
    const result = await runner.run({ analysis: "pendulum", cases: [{ length: 2.5, swings: 3 }] });
    const [only] = result.cases;
    expect(only?.outputs).toMatchObject({ rows: [{ swing: 0, time: 0 }, {}, {}, {}] });
    expect(result.warnings).toEqual([{ kind: "no-air", message: "Air drag is left out.", grade: "note" }]);
    expect(result.provenance.defaults.map(({ path }) => path)).toEqual(["angle", "effort"]);
    expect(result.provenance).toMatchObject({ program: { name: "wingseed", version: "0.0.0-test" }, seed: null, documents: [] });
    expect(runner.view(result).cases[0]?.answer.brief).toBe("it swings");
  });

  it("gives several cases in the order of the inputs and the same bits for any number of workers", async () => {
    const cases = sweep({ swings: 2 }, { "inputs.length": [9, 1, 600, 4, 2.25] });
    const one = await (await runnerWith({ workers: 1, cacheDirectory: null })).run({ analysis: "pendulum", cases });
    const four = await (await runnerWith({ workers: 4, cacheDirectory: null })).run({ analysis: "pendulum", cases });
    expect(one.cases.map(({ inputs }) => (inputs as { length: number }).length)).toEqual([9, 1, 600, 4, 2.25]);
    expect(one.cases[2]?.problem).toEqual({ kind: "too-long", message: "A rope of this length does not swing: it drags." });
    expect(JSON.stringify(four)).toBe(JSON.stringify(one));
  });

  it("reads texts with units, and names every wrong input with what was read and what is allowed", async () => {
    const runner = await runnerWith();
    const cases = [{ length: "250 cm" }, { length: "-1 m", swings: 2.5 }, { lenght: 3 }];
    const result = await runner.run({ analysis: "pendulum", cases });
    expect(result.cases[0]?.inputs).toMatchObject({ length: 2.5 });
    expect(result.cases[1]?.problem).toMatchObject({ kind: "invalid-inputs" });
    expect(result.cases[1]?.problem?.message).toMatch(/length: .*-1 m.*more than 0 m.*\n.*swings: .*whole number.*2\.5/);
    expect(result.cases[2]?.problem?.message).toContain('did you mean "length"?');
  });

  it("offers the nearest name for an analysis that does not exist", async () => {
    const runner = await runnerWith();
    await expect(runner.run({ analysis: "pendulun", cases: [{}] })).rejects.toMatchObject({ suggestions: ["pendulum"] });
  });

  it("refuses a result with a number that is not finite, and tells a crash as data", async () => {
    const runner = await runnerWith();
    const result = await runner.run({ analysis: "pendulum", cases: [{ length: 950 }, { length: 850 }] });
    expect(result.cases[0]?.problem).toMatchObject({ kind: "not-finite", message: expect.stringContaining("/outputs/period") });
    expect(result.cases[1]?.problem).toMatchObject({ kind: "internal-error", message: "the rope slipped off the drum" });
    expect(entries()).toEqual([]);
  });

  it("delivers a coarse answer first, tells how far it is, and stops when nobody waits", async () => {
    const runner = await runnerWith();
    const stop = new AbortController();
    const partials: string[] = [];
    const steps: number[] = [];
    const result = await runner.run({
      analysis: "pendulum",
      cases: [{ length: 3, effort: 20_000 }],
      signal: stop.signal,
      onPartial: ({ statedError }) => partials.push(statedError),
      onProgress: ({ done, total, doing }) => {
        expect({ total, doing }).toEqual({ total: 20_000, doing: "swings" });
        steps.push(done);
        if (steps.length === 3) stop.abort();
      },
    });
    expect(partials).toEqual(["within 7 %"]);
    expect(steps.length).toBeGreaterThanOrEqual(3);
    expect(result.cases[0]?.problem?.kind).toBe("cancelled");
    expect(entries()).toEqual([]);
    const after = await runner.run({ analysis: "pendulum", cases: [{ length: 3 }] });
    expect(after.cases[0]?.outputs).toBeDefined();
  });

  it("keeps the finished cases of a run that is stopped", async () => {
    const runner = await runnerWith({ workers: 1 });
    const stop = new AbortController();
    const result = await runner.run({
      analysis: "pendulum",
      cases: [{ length: 3 }, { length: 4, effort: 20_000 }, { length: 5, effort: 20_000 }],
      signal: stop.signal,
      onProgress: ({ doing }) => doing.includes("swings") && stop.abort(),
    });
    expect(result.cases.map(({ problem }) => problem?.kind)).toEqual([undefined, "cancelled", "cancelled"]);
  });

  it("lets equal questions share one run, which goes on until the last asker has gone", async () => {
    const runner = await runnerWith();
    const impatient = new AbortController();
    const cases = [{ length: 6, effort: 60 }];
    const first = runner.run({ analysis: "pendulum", cases, signal: impatient.signal, onProgress: () => impatient.abort() });
    const second = runner.run({ analysis: "pendulum", cases });
    expect((await first).cases[0]?.problem?.kind).toBe("cancelled");
    expect((await second).cases[0]?.outputs).toBeDefined();
    expect(timesRun()).toBe(1);
  });
});

describe("the cache", () => {
  const cases = [{ length: 2 }];

  it("answers the same question again without a run, also in the next program, whatever the order of the inputs", async () => {
    const first = await (await runnerWith()).run({ analysis: "pendulum", cases: [{ length: 2, swings: 5 }] });
    const doing: string[] = [];
    const again = await (await runnerWith()).run({
      analysis: "pendulum",
      cases: [{ swings: 5, length: 2 }],
      onProgress: (progress) => doing.push(progress.doing),
    });
    expect(timesRun()).toBe(1);
    expect(doing).toEqual(["kept result"]);
    expect(again.cases[0]?.outputs).toEqual(first.cases[0]?.outputs);
  });

  it("takes a damaged entry as absent", async () => {
    await (await runnerWith()).run({ analysis: "pendulum", cases });
    const [entry] = entries();
    writeFileSync(entry as string, readFileSync(entry as string, "utf8").replace("period", "perior"));
    const again = await (await runnerWith()).run({ analysis: "pendulum", cases });
    expect(timesRun()).toBe(2);
    expect(again.cases[0]?.outputs).toHaveProperty("period");
  });

  it("asks anew for another version of the program", async () => {
    await (await runnerWith()).run({ analysis: "pendulum", cases });
    await (await runnerWith({ version: "0.0.1-test" })).run({ analysis: "pendulum", cases });
    expect(timesRun()).toBe(2);
  });

  it("works in memory and says so where nothing can be written", async () => {
    const file = join(folder, "a-file");
    writeFileSync(file, "");
    const runner = await runnerWith({ cacheDirectory: join(file, "cache") });
    expect(runner.cachePlace).toMatchObject({ kind: "memory", because: expect.stringContaining("cannot be written to") });
    await runner.run({ analysis: "pendulum", cases });
    await runner.run({ analysis: "pendulum", cases });
    expect(timesRun()).toBe(1);
  });

  it("drops what was not used for longest when it grows too large", async () => {
    const { openCache } = await import("./result-cache.ts");
    const text = "x".repeat(1000);
    const key = (letter: string) => letter.repeat(64);
    const cache = await openCache(join(folder, "small"), { largestSize: 3500 });
    for (const letter of ["a", "b", "c"]) await cache.write(key(letter), text);
    utimesSync(join(folder, "small", "aa", `${key("a")}.json`), 2, 2);
    utimesSync(join(folder, "small", "bb", `${key("b")}.json`), 1, 1);
    utimesSync(join(folder, "small", "cc", `${key("c")}.json`), 3, 3);
    await cache.write(key("d"), text);
    const fresh = await openCache(join(folder, "small"));
    const kept = await Promise.all(["a", "b", "c", "d"].map((letter) => fresh.read(key(letter))));
    expect(kept.map((item) => item !== null)).toEqual([false, false, true, true]);
  });
});

describe("needs", () => {
  const needing = () => runnerWith({ registryUrl: pathToFileURL(resolve("tests/fixtures/needing-registry.mjs")).href });
  const document = (path: string, data: unknown): ReadDocument => ({
    path,
    kind: "geojson",
    data,
    written: {},
    hash: JSON.stringify(data),
  });

  function projectOf(files: Record<string, unknown>): ProjectSource {
    const gone = (file: string) => {
      const problem = {
        kind: "missing-file",
        file,
        line: 3,
        column: 5,
        pointer: "",
        read: file,
        allowed: "",
        message: "there is no such file",
      } as const;
      return { problems: [{ ...problem, severity: "error" as const }] };
    };
    return {
      folder,
      readRaster: async (path) => gone(path),
      readDocument: async (path) => (path in files ? { value: document(path, files[path]), warnings: [] } : gone(path)),
    };
  }
  const withProject = (project: ProjectSource | null) =>
    runnerWith({ registryUrl: pathToFileURL(resolve("tests/fixtures/needing-registry.mjs")).href, project });

  it("are asked again until nothing new turns up, and nothing else is handed over", async () => {
    const runner = await withProject(projectOf({ "first.json": { next: "second.json" }, "second.json": { weight: 4 }, "other.json": {} }));
    const result = await runner.run({ analysis: "follower", cases: [{ start: "first.json" }] });
    expect(result.cases[0]?.outputs).toEqual({ seen: ["first.json", "second.json"], doubled: 8 });
    expect(result.provenance.documents.map(({ path }) => path)).toEqual(["first.json", "second.json"]);
  });

  it("make a kept result stale when one of them changes, also behind another analysis", async () => {
    const before = await withProject(projectOf({ "first.json": { next: "second.json" }, "second.json": { weight: 4 } }));
    await before.run({ analysis: "follower", cases: [{ start: "first.json" }] });
    const after = await withProject(projectOf({ "first.json": { next: "second.json" }, "second.json": { weight: 5 } }));
    const result = await after.run({ analysis: "follower", cases: [{ start: "first.json" }] });
    expect(result.cases[0]?.outputs).toMatchObject({ doubled: 10 });
  });

  it("that are missing are told with their place", async () => {
    const runner = await withProject(projectOf({ "first.json": { next: "gone.json" } }));
    const result = await runner.run({ analysis: "follower", cases: [{ start: "first.json" }] });
    expect(result.cases[0]?.problem).toMatchObject({ kind: "document", message: "gone.json:3:5: there is no such file" });
  });

  it("cannot be met without a project", async () => {
    const result = await (await needing()).run({ analysis: "follower", cases: [{ start: "first.json" }] });
    expect(result.cases[0]?.problem?.kind).toBe("no-project");
  });

  it("that were not declared are refused, and circles are found", async () => {
    const runner = await withProject(projectOf({}));
    const result = await runner.run({ analysis: "sneaky", cases: [{}] });
    expect(result.cases[0]?.problem).toMatchObject({ kind: "internal-error", message: expect.stringContaining("did not declare") });
    const circle = await runner.run({ analysis: "circular", cases: [{}] });
    expect(circle.cases[0]?.problem).toMatchObject({ kind: "internal-error", message: expect.stringContaining("in a circle") });
  });
});
