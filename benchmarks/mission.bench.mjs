// A mission of 60 km at 1 s steps once its table of exact flights is in place. The table is filled by a smooth law here: how it
// is filled does not change how it is read.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

export const name = "mission, 60 km out and back over rolling ground, 1 s steps, tables in place";

const rounds = 15;
const wind = { speed: 6, fromDirection: 1, profile: { kind: "uniform" } };
const limits = { acceleration: 0.5, climbRate: 2.5, descentRate: 1.5 };

/** Lines to print. */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), "mission-"));
  try {
    const engine = await bundled(folder);
    const times = { route: [], path: [], flight: [] };
    let rows = 0;
    for (let round = 0; round <= rounds; round++) {
      const once = flownOnce(engine);
      rows = once.rows;
      if (round === 0) continue;
      for (const part of Object.keys(times)) times[part].push(once[part]);
    }
    const shown = (part) => `${median(times[part]).toFixed(1)} ms`;
    return [
      `flown            ${shown("flight")} for ${rows} rows (wish 20 ms)`,
      `beforehand       ${shown("route")} to read the ground under the route, ${shown("path")} to lay the path over it`,
      `medians of ${rounds} rounds after one to warm up`,
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function flownOnce(engine) {
  const { route } = engine.readRoute(line, "line.geojson", "line");
  const { plan } = engine.missionPlan(mission, route, { kind: "nothing" });
  const started = performance.now();
  const sampled = engine.sampledRoute(route, rollingGround);
  const read = performance.now();
  const legs = engine.sampledLegs(plan, sampled.samples, [22, 22]);
  const path = engine.flightPath({ route, plan, legs, wind, limits });
  const laid = performance.now();
  const prepared = engine.preparedFlight({
    path,
    wind,
    limits,
    modes: "cheaper",
    step: 1,
    altitudeMaximum: 2500,
    source,
    progress: () => {},
  });
  const ready = performance.now();
  const { steps, table } = prepared;
  const flight = engine.flyMission({ path, steps, table, modes: "cheaper", pack, stateOfCharge: 1, groundPower: () => 25 });
  const flown = performance.now();
  if (flight.stop) throw new Error(flight.stop.message);
  return { route: read - started, path: laid - read, flight: flown - ready, rows: flight.rows.length };
}

const line = {
  type: "Feature",
  properties: { name: "line" },
  geometry: {
    type: "LineString",
    coordinates: [
      [-124.2, -47.6],
      [-124.2, -47.3302],
      [-124.2, -47.6],
    ],
  },
};
const mission = { cruise: { airspeed: 22, height: 100, heightDatum: "above-ground" } };
const rollingGround = {
  sampleSpacing: 30,
  elevationAt: ({ latitude }) => ({ kind: "elevation", value: 60 + 60 * Math.sin(latitude * 20_000) }),
};
const names = Array.from({ length: 15 }, (_, index) => ({ name: `limit ${index}`, family: "power" }));
const law = ({ forward, climb, mode }) => ({
  kind: "flies",
  electricPower: 1500 - 70 * forward + 2.4 * forward ** 2 + 190 * climb + (mode === "clutch-open" ? 30 : 0),
  rotorShaftPower: 900,
  stallMargin: 1.3,
  shares: names.map(() => 0.9),
});
const source = { limits: names, power: law, powerFrom: law };
const pack = {
  capacity: 130 * 3600,
  blocks: 13,
  cutoffVoltage: 42,
  openCircuitVoltage: (stateOfCharge) => 41 + 17 * stateOfCharge,
  resistance: () => 0.05,
};

async function bundled(folder) {
  const outfile = join(folder, "mission.mjs");
  await build({
    entryPoints: [fileURLToPath(new URL("../packages/engine/src/mission/index.ts", import.meta.url))],
    outfile,
    bundle: true,
    platform: "node",
    target: "node20",
    format: "esm",
    logLevel: "error",
  });
  return import(pathToFileURL(outfile).href);
}

function median(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}
