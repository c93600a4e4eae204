// The envelope of the demo's first aircraft: 46 speeds, 6 altitudes and 3 packs in both rotor modes, with climb, ceilings and rotor speeds.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { referenceSweep } from "./rotor-sweep.bench.mjs";

export const name = "envelope, 46 speeds × 6 altitudes × 3 packs in both rotor modes";

const rounds = 3;

/** Lines to print. */
export async function run({ analyses }) {
  const folder = mkdtempSync(join(tmpdir(), "envelope-"));
  try {
    const project = await demoDocuments(folder);
    const reference = await referenceSweep(folder);
    const envelope = analyses.find((analysis) => analysis.name === "envelope");
    const inputs = envelope.inputs.parse({ aircraft: "aircraft/baseline.yaml" });
    const whole = [];
    const coarse = [];
    let solves;
    for (let round = 0; round <= rounds; round++) {
      const once = asked(envelope, project, inputs);
      solves = once.solves;
      if (round === 0) continue;
      // Beside the reference at that moment: other work on the machine slows both.
      const sweep = reference?.();
      for (const [part, times] of [
        ["whole", whole],
        ["coarse", coarse],
      ])
        times.push({ time: once[part], sweeps: sweep === undefined ? 0 : (once[part] * 1000) / sweep });
    }
    const shown = (times) => {
      const sweeps = median(times.map((one) => one.sweeps));
      const multiple = reference ? `${(sweeps / 1000).toFixed(0)} thousand reference sweeps in C` : "no gcc for the reference sweep";
      return `${median(times.map((one) => one.time)).toFixed(0)} ms, ${multiple}`;
    };
    return [
      `exact            ${shown(whole)} (wish 10 s on two cores; the analysis uses one)`,
      `coarse picture   ${shown(coarse)}, part of the above (wish 1 s)`,
      `trims            ${solves.converged} converged, ${solves.limited} stopped by a limit, ${solves.failed} failed (wish 0)`,
      `medians of ${rounds} rounds after one to warm up, one thread`,
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function asked(envelope, project, inputs) {
  const started = performance.now();
  let first = started;
  const outcome = envelope.run(project, inputs, {
    progress: () => {},
    cancelled: () => false,
    partial: () => {
      first = performance.now();
    },
  });
  if (outcome.problem) throw new Error(outcome.problem.message);
  return { whole: performance.now() - started, coarse: first - started, solves: outcome.outputs.solves };
}

async function demoDocuments(folder) {
  const outfile = join(folder, "documents.mjs");
  await build({
    entryPoints: [fileURLToPath(new URL("../packages/documents/src/index.ts", import.meta.url))],
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    conditions: ["source"],
    banner: { js: 'import { createRequire as __cr } from "node:module"; const require = __cr(import.meta.url);' },
    logLevel: "silent",
  });
  const { openProject } = await import(pathToFileURL(outfile).href);
  const project = openProject(fileURLToPath(new URL("../demo", import.meta.url)));
  const documents = {};
  for (const path of ["project.yaml", "aircraft/baseline.yaml"]) {
    const read = await project.readDocument(path);
    if (read.problems) throw new Error(read.problems[0].message);
    documents[path] = read.value;
  }
  return { documents, rasters: {} };
}

function median(values) {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
}
