// Three hours of a pack at one second, by its analysis: time, and how many sweeps in C that is. Two relaxation pairs, thirteen
// blocks, a power that changes at every step.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { referenceSweep } from "./rotor-sweep.bench.mjs";

export const name = "battery, 3 hours at 1 s with two relaxation pairs";

const seconds = 10_800;
const rounds = 9;
/** [s] */
const wish = 0.03;
/** Reference sweeps that the profile may take with blocks alike. */
const mostSweeps = 8000;

const inputs = {
  cell: "reference-nca",
  series: 14,
  blocks: 13,
  wiringResistance: 0.004,
  isolatorResistance: 0.002,
  load: { points: Array.from({ length: seconds + 1 }, (_, time) => ({ time, power: 500 + 100 * Math.sin(time / 10) })) },
  limits: { continuousCurrent: 10, shortTimeCurrent: 15, shortTime: 10, lowestStateOfCharge: 0.1 },
  timeStep: 1,
};
const differing = Array.from({ length: 12 }, (_, i) => ({ block: i + 2, age: { resistanceFactor: 1 + 0.02 * (i + 1) } }));
const nobody = { progress() {}, cancelled: () => false, partial() {}, analysis() {} };

/** Lines to print. */
export async function run({ analyses }) {
  const battery = analyses.find((analysis) => analysis.name === "battery");
  const alike = battery.inputs.parse(inputs);
  const apart = battery.inputs.parse({ ...inputs, differingBlocks: differing });
  const folder = mkdtempSync(join(tmpdir(), "battery-"));
  try {
    const reference = await referenceSweep(folder);
    const times = { alike: [], apart: [] };
    const multiples = [];
    // Turn about, so that both see the same disturbances; the first round warms up.
    for (let round = 0; round <= rounds; round++) {
      const one = timed(battery, alike);
      const other = timed(battery, apart);
      const sweep = reference?.();
      if (round === 0) continue;
      times.alike.push(one);
      times.apart.push(other);
      if (sweep !== undefined) multiples.push((one * 1e6) / sweep);
    }
    const lines = [
      `13 blocks alike    ${(1000 * median(times.alike)).toFixed(1)} ms with rows (wished for: ${1000 * wish} ms)`,
      `13 blocks apart    ${(1000 * median(times.apart)).toFixed(1)} ms, every block with its own resistance`,
    ];
    if (multiples.length === 0) return [...lines, "multiple           not measured: no gcc on this machine"];
    const multiple = median(multiples);
    if (multiple > mostSweeps)
      throw new Error(`the profile takes ${multiple.toFixed(0)} reference sweeps; at most ${mostSweeps} are allowed`);
    return [...lines, `multiple           ${multiple.toFixed(0)} sweeps of C, gcc -O3 (at most ${mostSweeps})`];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** [s] */
function timed(battery, asked) {
  const begin = process.hrtime.bigint();
  const { outputs } = battery.run({ documents: {}, rasters: {} }, asked, nobody);
  const took = Number(process.hrtime.bigint() - begin) / 1e9;
  if (outputs.endedBy !== "end of the load" || outputs.rows.length !== seconds + 1) throw new Error(`the run ended by ${outputs.endedBy}`);
  return took;
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}
