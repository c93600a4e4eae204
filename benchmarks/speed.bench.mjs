// One speed sweep of the demo's first aircraft, 46 speeds in both rotor modes with glide and vertical autorotation.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

export const name = "speed, 46 speeds in both rotor modes";

const rounds = 7;

/** Lines to print. */
export async function run({ analyses }) {
  const project = await demoDocuments();
  const speed = analyses.find((analysis) => analysis.name === "speed");
  const inputs = speed.inputs.parse({});
  const whole = [];
  const coarse = [];
  for (let round = 0; round <= rounds; round++) {
    const started = performance.now();
    let first = started;
    const outcome = speed.run(project, inputs, {
      progress: () => {},
      cancelled: () => false,
      partial: () => {
        first = performance.now();
      },
    });
    if (outcome.problem) throw new Error(outcome.problem.message);
    if (round === 0) continue;
    whole.push(performance.now() - started);
    coarse.push(first - started);
  }
  return [
    `exact            ${median(whole).toFixed(0)} ms (wish 600 ms)`,
    `coarse picture   ${median(coarse).toFixed(0)} ms, part of the above`,
    `medians of ${rounds} rounds after one to warm up, one thread`,
  ];
}

async function demoDocuments() {
  const folder = mkdtempSync(join(tmpdir(), "speed-"));
  try {
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
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function median(values) {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
}
