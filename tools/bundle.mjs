// Bundles the command line, the worker and the registry of analyses; native modules and the worker pool stay outside.
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { build } from "esbuild";
import { licensesText } from "./licenses.mjs";
import { references } from "./references.mjs";

const common = {
  outdir: "dist",
  outExtension: { ".js": ".mjs" },
  bundle: true,
  write: false,
  platform: "node",
  target: "node20",
  format: "esm",
  sourcemap: true,
  conditions: ["source"],
  external: ["@myriaddreamin/*", "piscina"],
  // Libraries in CommonJS ask for "require", which a module does not have.
  banner: { js: 'import { createRequire as __createRequire } from "node:module"; const require = __createRequire(import.meta.url);' },
  logLevel: "warning",
};

const bundles = await Promise.all([
  // Each alone and whole: the text of the registry is part of every cache key.
  build({ ...common, entryPoints: { registry: "packages/engine/src/index.ts" } }),
  build({ ...common, entryPoints: { worker: "packages/runner/src/worker.ts" } }),
  // In parts, so that a short command does not load the server.
  build({ ...common, entryPoints: { cli: "apps/cli/src/main.ts" }, splitting: true, chunkNames: "part-[name]-[hash]" }),
]);

// Renamed into place, so that a program that starts meanwhile never meets half a file.
mkdirSync("dist", { recursive: true });
const files = bundles.flatMap(({ outputFiles }) => outputFiles);
for (const { path, contents } of files) {
  writeFileSync(`${path}.new`, contents);
  renameSync(`${path}.new`, path);
}
const fresh = new Set(files.map(({ path }) => basename(path)));
for (const name of readdirSync("dist")) if (name.startsWith("part-") && !fresh.has(name)) rmSync(join("dist", name), { force: true });

if (existsSync("validation/summary.json")) copyFileSync("validation/summary.json", "dist/validation.json");
writeFileSync("dist/references.json", `${JSON.stringify(references(readFileSync("docs/sources.bib", "utf8")))}\n`);
writeFileSync("dist/licenses.txt", licensesText("."));
