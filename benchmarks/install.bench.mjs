// `npm ci` of the whole house in an empty folder, package scripts left out: what a fresh machine waits for the registry.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const name = "install, npm ci in an empty folder";

/** Lines to print. */
export async function run() {
  const root = fileURLToPath(new URL("..", import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), "install-"));
  try {
    const manifests = ["packages", "apps"].flatMap((group) =>
      readdirSync(join(root, group)).map((part) => join(group, part, "package.json")),
    );
    for (const file of ["package.json", "package-lock.json", ".npmrc", ...manifests]) {
      mkdirSync(dirname(join(folder, file)), { recursive: true });
      cpSync(join(root, file), join(folder, file));
    }
    const started = performance.now();
    const installed = spawnSync("npm", ["ci", "--ignore-scripts", "--no-audit", "--no-fund"], { cwd: folder, encoding: "utf8" });
    if (installed.status !== 0) return [`not measured: npm ci failed (${installed.stderr.trim().split("\n").at(-1)})`];
    return [
      `npm ci           ${((performance.now() - started) / 1000).toFixed(1)} s (wish 60 s), without the build; npm's own cache as it is`,
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
