// The six-component trim of the demo's first aircraft: a single trim with nothing known and beside a neighbour, and a line of speeds.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { referenceSweep } from "./rotor-sweep.bench.mjs";

export const name = "full trim, six components";

const rounds = 5;
const speeds = Array.from({ length: 46 }, (_, i) => (i * 35) / 45);
const modes = ["clutch-closed", "clutch-open"];
const neighbour = 35 / 45;
/** Wishes for a quiet machine. */
const wishes = { cold: "12 ms", warm: "4 ms", line: "1.2 s", envelope: "10 s on two cores" };
const altitudes = [0, 500, 1000, 1500, 2000, 2500];

/** Lines to print. */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), "full-trim-"));
  try {
    const engine = await bundled(folder);
    const aircraft = await demoAircraft(engine);
    const reference = await referenceSweep(folder);
    const times = { sweep: [], cold: [], warm: [], line: [] };
    const counter = { converged: 0, limited: 0, failed: 0 };
    // Turn about, so that all see the same disturbances; the first round warms up.
    for (let round = 0; round <= rounds; round++) {
      const sweep = reference?.() ?? Number.NaN;
      const single = singleTrims(engine, aircraft);
      const line = timedLines(engine, aircraft, counter);
      if (round === 0) continue;
      times.sweep.push(sweep);
      times.cold.push(median(single.cold));
      times.warm.push(median(single.warm));
      times.line.push(line);
    }
    const begun = performance.now();
    const envelope = { converged: 0, limited: 0, failed: 0 };
    for (const altitude of altitudes) for (const pack of aircraft.battery.packs) addLines(engine, aircraft, { altitude, pack }, envelope);
    return lines(times, counter, performance.now() - begun, envelope);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function lines(times, counter, envelope, envelopeCounter) {
  const sweep = median(times.sweep);
  const shown = (name, wish) => {
    const value = median(times[name]);
    return `${value < 200 ? `${value.toFixed(1)} ms` : `${(value / 1000).toFixed(2)} s`}, ${multiple(value, sweep)} (wish ${wish})`;
  };
  return [
    `reference sweep  ${Number.isNaN(sweep) ? "not measured: no gcc on this machine" : `${sweep.toFixed(2)} µs in C`}`,
    `single, cold     ${shown("cold", wishes.cold)}: every way of flying, stall margin searched; what is known of the rotor's stall kept`,
    `single, warm     ${shown("warm", wishes.warm)}: from ${neighbour.toFixed(2)} m/s less`,
    `line of speeds   ${shown("line", wishes.line)}: ${speeds.length} speeds in ${modes.length} modes, nothing known before, one thread`,
    `envelope         ${(envelope / 1000).toFixed(1)} s, ${multiple(envelope, sweep)} (wish ${wishes.envelope}): ${altitudes.length} altitudes, every pack, one thread, once`,
    `lines            ${counted(counter)}`,
    `envelope         ${counted(envelopeCounter)}`,
    `medians of ${rounds} interleaved rounds after one to warm up`,
  ];
}

const multiple = (milliseconds, sweep) => (Number.isNaN(sweep) ? "no multiple" : `${((milliseconds * 1000) / sweep).toFixed(0)} sweeps`);
const counted = ({ converged, limited, failed }) =>
  `${converged} trims converged, ${limited} limited, ${failed} failed (gate: none failed)`;

function conditions(engine, aircraft, { altitude = 0, pack = 13 } = {}) {
  return {
    aircraft,
    loading: engine.recordLoading(pack, aircraft.payloads[0]),
    air: engine.atmosphereAt({ altitude, temperatureOffset: 0, relativeHumidity: 0 }),
    controls: "optimum",
    losses: "component",
    lightsOn: false,
  };
}

/** Milliseconds of trims over speeds and modes, from nothing and from a neighbour. */
function singleTrims(engine, aircraft) {
  const trimmer = new engine.FullTrimmer(conditions(engine, aircraft));
  const found = { cold: [], warm: [] };
  for (const mode of modes) {
    for (let airspeed = mode === "clutch-open" ? 10 : 0; airspeed <= 34; airspeed += 4) {
      const point = { mode, airspeed, climbRate: 0, sideslip: 0 };
      const near = trimmer.trim({ ...point, airspeed: Math.abs(airspeed - neighbour) });
      trimmer.trim(point);
      found.cold.push(timed(() => trimmer.trim(point)));
      if (near.kind === "trimmed") found.warm.push(timed(() => trimmer.trimFrom(point, [near.start])));
    }
  }
  return found;
}

function timedLines(engine, aircraft, counter) {
  return timed(() => addLines(engine, aircraft, {}, counter));
}

function addLines(engine, aircraft, given, counter) {
  const trimmer = new engine.FullTrimmer(conditions(engine, aircraft, given));
  for (const mode of modes) engine.fullSpeedLine(trimmer, mode, speeds, { progress: () => {}, cancelled: () => {} });
  for (const name of Object.keys(counter)) counter[name] += trimmer.counter[name];
}

function timed(work) {
  const started = performance.now();
  work();
  return performance.now() - started;
}

async function bundled(folder) {
  const outfile = join(folder, "engine.mjs");
  const from = (path) => JSON.stringify(fileURLToPath(new URL(`../packages/${path}`, import.meta.url)));
  const engine = "engine/src";
  await build({
    stdin: {
      contents: [
        `export { aircraftDefinition, recordLoading } from ${from(`${engine}/aircraft/index.ts`)};`,
        `export { atmosphereAt } from ${from(`${engine}/environment/atmosphere/index.ts`)};`,
        `export { FullTrimmer } from ${from(`${engine}/equilibrium/index.ts`)};`,
        `export { fullSpeedLine } from ${from(`${engine}/performance/index.ts`)};`,
        `export { openProject } from ${from("documents/src/index.ts")};`,
      ].join("\n"),
      resolveDir: fileURLToPath(new URL("../", import.meta.url)),
      loader: "ts",
    },
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    conditions: ["source"],
    banner: { js: 'import { createRequire as __cr } from "node:module"; const require = __cr(import.meta.url);' },
    logLevel: "silent",
  });
  return import(pathToFileURL(outfile).href);
}

async function demoAircraft(engine) {
  const read = await engine.openProject(fileURLToPath(new URL("../demo", import.meta.url))).readDocument("aircraft/baseline.yaml");
  if (read.problems) throw new Error(read.problems[0].message);
  return engine.aircraftDefinition.parse(read.value.data);
}

function median(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}
