// Builds when something was changed since the last build; an installed package carries its build and no sources.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const products = ["dist/cli.mjs", "dist/worker.mjs", "dist/registry.mjs", "dist/web/index.html"];
const sources = ["packages", "apps", "tools/bundle.mjs", "package.json", "package-lock.json", "tsconfig.json", "tsconfig.base.json"];
const skipped = new Set(["node_modules", "dist", ".wingseed"]);

function newest(path) {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) return 0;
  if (!found.isDirectory()) return /\.(test\.tsx?|tsbuildinfo|md)$/.test(path) ? 0 : found.mtimeMs;
  return readdirSync(path)
    .filter((name) => !skipped.has(name))
    .reduce((latest, name) => Math.max(latest, newest(join(path, name))), 0);
}

/** True when a product is missing in the folder or older than a source. */
export function isStale(root) {
  if (!existsSync(join(root, "packages"))) return false;
  const built = products.map((path) => statSync(join(root, path), { throwIfNoEntry: false })?.mtimeMs ?? 0);
  const changed = sources.reduce((latest, path) => Math.max(latest, newest(join(root, path))), 0);
  return Math.min(...built) < changed;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href && isStale(".")) {
  console.error("Sources have changed since the last build: building.");
  const built = spawnSync("npm", ["run", "--silent", "build"], { stdio: ["ignore", 2, 2], shell: process.platform === "win32" });
  process.exit(built.status ?? 1);
}
