// Twenty seconds of flight at 200 Hz: the demo's first aircraft in quiet air and in a gust, from its trim, without the trim.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { referenceSweep } from "./rotor-sweep.bench.mjs";

export const name = "transient, 20 s at 200 Hz";

const rounds = 15;
const airspeed = 16;

/** Lines to print. */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), "transient-"));
  try {
    const parts = await bundledParts(folder);
    const reference = await referenceSweep(folder);
    const trimmer = await demoTrimmer(parts);
    const trimmed = trimmer.trim({ mode: "clutch-closed", airspeed, climbRate: 0, sideslip: 0 });
    if (trimmed.kind !== "trimmed") throw new Error(`no trim to begin from: ${trimmed.kind}`);
    const lines = ["quiet air", "gust of 2 m/s"].map((word) => {
      const times = [];
      let last;
      for (let round = 0; round <= rounds; round++) {
        const flown = parts.controlledFlight(trimmer.airframe, trimmed);
        if (word !== "quiet air")
          flown.flight.dynamics.wind = parts.discreteGust({ peak: [0, 0, -2], gradientDistance: 15, speed: airspeed, start: 1 });
        const before = trimmer.airframe.rotors[0].sweeps;
        const cpu = process.cpuUsage();
        const started = performance.now();
        last = flown.simulation.run({ duration: 20, step: parts.controlStep, substeps: flown.substeps, recordEvery: 4 });
        const time = performance.now() - started;
        last.sweeps = trimmer.airframe.rotors[0].sweeps - before;
        if (round === 0) continue;
        const { user } = process.cpuUsage(cpu);
        const sweep = reference?.();
        times.push({ time, user: user / 1000, multiple: sweep === undefined ? 0 : (time * 1000) / sweep });
      }
      const of = (key) => median(times.map((one) => one[key]));
      const shortest = Math.min(...times.map(({ time }) => time));
      const multiple = reference ? `${of("multiple").toFixed(0)} reference sweeps in C` : "no gcc for the reference sweep";
      return `${word.padEnd(15)}  ${of("time").toFixed(0)} ms (wish 60), at least ${shortest.toFixed(0)} ms; ${multiple}; ${last.evaluations} evaluations, ${last.sweeps} sweeps; energy missing ${Math.abs(last.energyGap).toExponential(0)}${last.stopped ? `; stopped: ${last.stopped}` : ""}`;
    });
    return [...lines, `medians of ${rounds} rounds after one to warm up, one thread`];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function bundledParts(folder) {
  const outfile = join(folder, "parts.mjs");
  const source = (path) => fileURLToPath(new URL(`../packages/${path}`, import.meta.url));
  const lines = [
    ["engine/src/motion/index.ts", "controlledFlight, controlStep, discreteGust"],
    ["engine/src/equilibrium/index.ts", "FullTrimmer"],
    ["engine/src/aircraft/index.ts", "aircraftDefinition, recordLoading"],
    ["engine/src/environment/atmosphere/index.ts", "atmosphereAt"],
    ["documents/src/index.ts", "openProject"],
  ].map(([path, names]) => `export { ${names} } from ${JSON.stringify(source(path))};`);
  await build({
    stdin: { contents: lines.join("\n"), resolveDir: fileURLToPath(new URL("../", import.meta.url)), loader: "ts" },
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

async function demoTrimmer({ openProject, aircraftDefinition, FullTrimmer, recordLoading, atmosphereAt }) {
  const project = openProject(fileURLToPath(new URL("../demo", import.meta.url)));
  const read = await project.readDocument("aircraft/baseline.yaml");
  if (read.problems) throw new Error(read.problems[0].message);
  const aircraft = aircraftDefinition.parse(read.value.data);
  return new FullTrimmer({
    aircraft,
    loading: recordLoading(Math.max(...aircraft.battery.packs), aircraft.payloads[0]),
    air: atmosphereAt({ altitude: 0, temperatureOffset: 0, relativeHumidity: 0 }),
    controls: "optimum",
    losses: "component",
    lightsOn: false,
  });
}

function median(values) {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
}
