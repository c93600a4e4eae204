// A thousand operating points of one propeller by its blades, asked of its analysis: time, and how many sweeps in C that is.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { referenceSweep } from "./rotor-sweep.bench.mjs";

export const name = "propeller, 1 000 points along the shaft";

const points = 1000;
const rounds = 7;
const wish = 0.2;
/** Reference sweeps that a thousand points may take. */
const mostSweeps = 60_000;

const inputs = {
  propeller: {
    diameter: 0.3,
    blades: 2,
    pitch: 0.15,
    chordFraction: 0.17,
    rootCutout: 0.15,
    section: { kind: "cambered", thickness: 0.09, camber: 0.04 },
  },
  altitude: 0,
  points: Array.from({ length: points }, (_, i) => ({ rotationRate: 300 + (i % 40) * 10, airspeed: Math.floor(i / 40) * 0.6 })),
};
const nobody = { progress() {}, cancelled: () => false, partial() {}, analysis() {} };

/** Lines to print. */
export async function run({ analyses }) {
  const propeller = analyses.find((analysis) => analysis.name === "propeller");
  const asked = propeller.inputs.parse(inputs);
  const folder = mkdtempSync(join(tmpdir(), "propeller-"));
  try {
    const reference = await referenceSweep(folder);
    const seconds = [];
    const multiples = [];
    // Turn about, so that both see the same disturbances; the first round warms up.
    for (let round = 0; round <= rounds; round++) {
      const begin = process.hrtime.bigint();
      const { outputs } = propeller.run({ documents: {}, rasters: {} }, asked, nobody);
      const took = Number(process.hrtime.bigint() - begin) / 1e9;
      if (outputs.rows.length !== points || outputs.rows.some((row) => row.thrust === null)) throw new Error("a point has no answer");
      const sweep = reference?.();
      if (round === 0) continue;
      seconds.push(took);
      if (sweep !== undefined) multiples.push((took * 1e6) / sweep);
    }
    const lines = [`1 000 points     ${median(seconds).toFixed(3)} s (wished for: ${wish} s)`];
    if (multiples.length === 0) return [...lines, "multiple         not measured: no gcc on this machine"];
    const multiple = median(multiples);
    if (multiple > mostSweeps)
      throw new Error(`1 000 points take ${multiple.toFixed(0)} reference sweeps; at most ${mostSweeps} are allowed`);
    return [...lines, `multiple         ${multiple.toFixed(0)} sweeps of C, gcc -O3 (at most ${mostSweeps})`];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}
