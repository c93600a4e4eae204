// From the command to the first computed page, from built state and with nothing kept from before: what npm start makes one wait.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const name = "start, from the command to the first computed page's answer";

const rounds = 3;
const cli = fileURLToPath(new URL("../dist/cli.mjs", import.meta.url));
const demo = fileURLToPath(new URL("../demo", import.meta.url));

/** Lines to print. */
export async function run() {
  const times = { listening: [], exact: [] };
  let page = "";
  for (let round = 0; round < rounds; round++) {
    const once = await startedOnce();
    page = once.page;
    for (const part of Object.keys(times)) times[part].push(once[part]);
  }
  const shown = (part) => `${(median(times[part]) / 1000).toFixed(2)} s`;
  return [
    `listening        ${shown("listening")}`,
    `${page}, answered ${shown("exact")} after the command (wish 5 s)`,
    `medians of ${rounds} rounds, each on a fresh copy of the demo project; drawing in the browser comes on top`,
  ];
}

async function startedOnce() {
  const folder = mkdtempSync(join(tmpdir(), "start-"));
  cpSync(demo, folder, { recursive: true, filter: (path) => !path.includes(".wingseed") });
  const started = performance.now();
  const server = spawn(process.execPath, [cli, "start", folder, "--port", "0"], { stdio: ["ignore", "pipe", "ignore"] });
  try {
    const address = await firstAddress(server.stdout);
    const listening = performance.now() - started;
    const pages = await (await fetch(`${address}/api/pages`)).json();
    const first = (pages.pages ?? pages).find((entry) => entry.status === "answered");
    const analysis = first.slots[0].analysis;
    const answer = await fetch(`${address}/api/analyses/${analysis}/run`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: "{}",
    });
    if (!answer.ok) throw new Error(`${analysis}: ${answer.status} ${await answer.text()}`);
    await answer.json();
    return { listening, exact: performance.now() - started, page: `“${first.question}”` };
  } finally {
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}

function firstAddress(stream) {
  return new Promise((resolve, reject) => {
    let text = "";
    stream.on("data", (chunk) => {
      text += chunk;
      const found = /http:\/\/[\w.:[\]]+/u.exec(text);
      if (found) resolve(found[0].replace(/\/$/u, ""));
    });
    stream.on("end", () => reject(new Error(`no address in: ${text}`)));
  });
}

function median(values) {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
}
