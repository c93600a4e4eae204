// One sweep over the blade elements of a rotor: nanoseconds per element here and in C, and the multiple.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

export const name = "rotor sweep, 24 azimuths × 16 radii";

const model = {
  radius: 1.2,
  bladeCount: 2,
  rootCutout: 0.15,
  stations: [
    { radiusFraction: 0, chord: 0.09, twist: 0.04 },
    { radiusFraction: 1, chord: 0.09, twist: -0.01 },
  ],
  precone: 0.035,
  articulation: { kind: "teetering" },
  section: { kind: "generic", liftSlope: 5.7, cd0: 0.0125, cd1: -0.005, cd2: 0.4, stallAngle: 0.22 },
  tipLoss: { kind: "lift-cutoff", liftRadiusFraction: 0.97 },
  inducedPowerFactor: 1.1,
  inflow: "drees",
  radialFlow: "friction",
  azimuths: 24,
  radialElements: 16,
};
const annular = { ...model, inflowBalance: "annular", tipLoss: { kind: "prandtl" }, inducedPowerFactor: 1 };
const state = {
  mu: 0.21,
  lambdaC: -0.012,
  lambdaI: 0.021,
  theta0: 0.085,
  theta1c: 0.021,
  theta1s: -0.043,
  coning: 0.035,
  tipSpeed: 85.5,
  speedOfSound: 340.3,
  kinematicViscosity: 1.461e-5,
};
const sweeps = 6_000;
const rounds = 21;
/** Sweeps in which an autorotating state is to be solved beside a solved one. */
const warmSweepGate = 15;
/** The general path: a section by Reynolds number, Prandtl's tip loss, one mean induced velocity; and the same ring by ring. */
const general = { ...model, section: { kind: "built-in", name: "naca-0015", dragIncrement: 0 }, tipLoss: { kind: "prandtl" } };
const flags = { plain: ["-O3"], vector: ["-O3", "-march=native", "-ffast-math"] };

/** Lines to print. */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), "rotor-sweep-"));
  try {
    const rotor = await bundledRotor(folder);
    const workspaces = { fast: model, general, rings: { ...general, inflowBalance: "annular" } };
    for (const [name, of] of Object.entries(workspaces)) workspaces[name] = rotor.createRotorWorkspace(of);
    const programs = { plain: compiled(folder, "plain"), vector: compiled(folder, "vector") };
    const data = join(folder, "rotor.bin");
    writeFileSync(data, Buffer.from(packed(workspaces.fast).buffer));
    const times = { fast: [], plain: [], vector: [], general: [], rings: [] };
    // Turn about, so that all see the same disturbances; the first round warms up.
    for (let round = 0; round <= rounds; round++) {
      const once = {};
      for (const name of Object.keys(workspaces)) once[name] = timed(rotor, workspaces[name]);
      for (const name of Object.keys(programs)) {
        if (programs[name]) once[name] = referenceRun(programs[name], data, workspaces.fast, rotor, name === "plain");
      }
      if (round > 0) for (const name of Object.keys(once)) times[name].push(once[name]);
    }
    return [...lines(times), ...autorotationLines(rotor)];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A measurement of the sweep in C, gcc -O3: each call gives the microseconds of one sweep now. Undefined without gcc. */
export async function referenceSweep(folder) {
  const rotor = await bundledRotor(folder);
  const workspace = rotor.createRotorWorkspace(model);
  const program = compiled(folder, "plain");
  if (!program) return undefined;
  const data = join(folder, "reference.bin");
  writeFileSync(data, Buffer.from(packed(workspace).buffer));
  return () => (referenceRun(program, data, workspace, rotor, true) * model.azimuths * model.radialElements) / 1000;
}

function lines(times) {
  const shown = (name) => `${median(times[name]).toFixed(1)} ns per element`;
  const multiple = (one, other) => median(times[one].map((time, i) => time / times[other][i])).toFixed(2);
  const measured = times.plain.length > 0;
  return [
    `TypeScript       ${shown("fast")}, ${((median(times.fast) * 384) / 1000).toFixed(2)} µs per sweep`,
    measured ? `C, gcc -O3       ${shown("plain")}, no fast-math` : "C, gcc -O3       not measured: no gcc on this machine",
    measured
      ? `multiple         ${multiple("fast", "plain")} (gate 1.3; same layout and approximations)`
      : "multiple         not measured: no gcc on this machine",
    times.vector.length > 0
      ? `C, vectors       ${shown("vector")} with ${flags.vector.join(" ")}, multiple ${multiple("fast", "vector")} (not gated)`
      : "C, vectors       not measured: no gcc, or none that takes the flags",
    `general path     ${shown("general")} (Reynolds number, Prandtl's tip loss), ${multiple("general", "fast")} of the fast one`,
    `ring by ring     ${shown("rings")} with velocities given, ${multiple("rings", "fast")} of the fast one`,
    `medians of ${rounds} interleaved rounds of ${sweeps} sweeps; multiples are medians of those of each round`,
  ];
}

/** Sweeps that autorotating states take, each beside the last one at 1 m/s more. */
function autorotationLines(rotor) {
  const air = { density: 1.225, speedOfSound: 340.3, dynamicViscosity: 1.789e-5 };
  return [
    ["mean inflow", model],
    ["annular inflow", annular],
    ["annular inflow with swirl and root loss", { ...annular, swirl: true, rootLoss: true }],
  ].map(([name, of]) => {
    const workspace = rotor.createRotorWorkspace(of);
    const counts = [];
    let trail;
    for (let airspeed = 35; airspeed >= 8; airspeed--) {
      const state = rotor.autorotation(workspace, { airspeed, tipSpeed: 75, collective: 0.035, air }, trail);
      if (state.kind !== "solved") throw new Error(`${name}, ${airspeed} m/s: ${state.reason}`);
      if (trail) counts.push(state.sweeps);
      trail = state.trail;
    }
    const most = Math.max(...counts);
    const gate = `(gate ${warmSweepGate}: ${most <= warmSweepGate ? "met" : "NOT MET"})`;
    return `autorotation     ${median(counts).toFixed(0)} sweeps beside a solved state, at most ${most.toFixed(0)} ${gate}, ${name}, 35 to 8 m/s`;
  });
}

async function bundledRotor(folder) {
  const outfile = join(folder, "rotor.mjs");
  await build({
    entryPoints: [fileURLToPath(new URL("../packages/engine/src/aerodynamics/rotor/index.ts", import.meta.url))],
    outfile,
    bundle: true,
    platform: "node",
    target: "node20",
    format: "esm",
    logLevel: "error",
  });
  return import(pathToFileURL(outfile).href);
}

function timed(rotor, workspace) {
  const at = { ...state };
  const begin = process.hrtime.bigint();
  for (let i = 0; i < sweeps; i++) {
    at.mu = state.mu + i * 1e-9;
    rotor.sweepRotor(workspace, at);
  }
  return Number(process.hrtime.bigint() - begin) / sweeps / (model.azimuths * model.radialElements);
}

/** The C twin with these flags; undefined without a compiler that takes them. */
function compiled(folder, name) {
  const program = join(folder, name);
  const source = fileURLToPath(new URL("rotor-sweep/rotor-sweep.c", import.meta.url));
  try {
    execFileSync("gcc", [...flags[name], "-std=gnu11", "-o", program, source, "-lm"], { stdio: "pipe" });
    return program;
  } catch (error) {
    if (error.code === "ENOENT" || name === "vector") return undefined;
    throw error;
  }
}

function referenceRun(program, data, workspace, rotor, exact) {
  const [nanoseconds, ...values] = execFileSync(program, [data, String(sweeps)], { encoding: "utf8" })
    .trim()
    .split(" ")
    .map(Number);
  rotor.sweepRotor(workspace, { ...state });
  const { ct, cq, ch } = workspace.out;
  for (const [i, own] of [ct, cq, ch].entries()) {
    if (!(Math.abs(values[i] - own) < (exact ? 1e-14 : 1e-10))) throw new Error(`the two sweeps disagree: ${values[i]} in C, ${own} here`);
  }
  return nanoseconds;
}

/** Sizes, state and arrays in the order in which the C program reads them. */
function packed({ mesh, law, inflowKind, radialKind }) {
  const { mu, lambdaC, lambdaI, theta0, theta1c, theta1s, coning, tipSpeed, speedOfSound } = state;
  return Float64Array.from([
    mesh.radiusFraction.length,
    mesh.sine.length,
    inflowKind,
    radialKind,
    mu,
    lambdaC,
    lambdaI,
    theta0,
    theta1c,
    theta1s,
    coning,
    tipSpeed,
    speedOfSound,
    ...mesh.radiusFraction,
    ...mesh.twist,
    ...mesh.weight,
    ...mesh.liftWeight,
    ...mesh.sine,
    ...mesh.cosine,
    ...law.table,
  ]);
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}
