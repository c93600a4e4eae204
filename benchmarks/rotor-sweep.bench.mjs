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
const sweeps = 20_000;
const rounds = 9;

/** Lines to print. */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), "rotor-sweep-"));
  try {
    const rotor = await bundledRotor(folder);
    const workspace = rotor.createRotorWorkspace(model);
    const program = compiled(folder);
    const data = join(folder, "rotor.bin");
    writeFileSync(data, Buffer.from(packed(workspace).buffer));
    const own = [];
    const reference = [];
    // Turn about, so that both see the same disturbances; the first round warms up.
    for (let round = 0; round <= rounds; round++) {
      const mine = timed(rotor, workspace);
      const theirs = program && referenceRun(program, data, workspace, rotor);
      if (round === 0) continue;
      own.push(mine);
      if (theirs !== undefined) reference.push(theirs);
    }
    const here = median(own);
    const lines = [`TypeScript       ${here.toFixed(1)} ns per element, ${((here * 384) / 1000).toFixed(2)} µs per sweep`];
    if (reference.length === 0) return [...lines, "C, gcc -O3       not measured: no gcc on this machine"];
    const there = median(reference);
    return [
      ...lines,
      `C, gcc -O3       ${there.toFixed(1)} ns per element`,
      `multiple         ${(here / there).toFixed(2)} (same layout and approximations, no fast-math; medians of ${rounds} interleaved rounds)`,
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
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

function compiled(folder) {
  const program = join(folder, "rotor-sweep");
  const source = fileURLToPath(new URL("rotor-sweep/rotor-sweep.c", import.meta.url));
  try {
    execFileSync("gcc", ["-O3", "-std=gnu11", "-o", program, source, "-lm"], { stdio: "pipe" });
    return program;
  } catch (error) {
    if (error.code === "ENOENT") return undefined;
    throw error;
  }
}

function referenceRun(program, data, workspace, rotor) {
  const [nanoseconds, ct, cq, ch] = execFileSync(program, [data, String(sweeps)], { encoding: "utf8" })
    .trim()
    .split(" ")
    .map(Number);
  rotor.sweepRotor(workspace, { ...state });
  for (const [value, own] of [
    [ct, workspace.out.ct],
    [cq, workspace.out.cq],
    [ch, workspace.out.ch],
  ]) {
    if (!(Math.abs(value - own) < 1e-14)) throw new Error(`the two sweeps disagree: ${value} in C, ${own} here`);
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
