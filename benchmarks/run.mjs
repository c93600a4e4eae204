// Runs every benchmarks/*.bench.mjs in turn against the built registry of analyses and prints what it found. Each exports `name`
// and `run({ analyses, registry })`, which returns the lines to print. Give a part of a file name to run only those.
import { existsSync, readdirSync } from "node:fs";
import { cpus } from "node:os";
import { fileURLToPath } from "node:url";

const registry = new URL("../dist/registry.mjs", import.meta.url);
if (!existsSync(registry)) {
  console.error("dist/registry.mjs is missing: run npm run build, or node tools/bundle.mjs, first");
  process.exit(2);
}
const { analyses } = await import(registry.href);
const wanted = process.argv[2] ?? "";
const folder = new URL("./", import.meta.url);
const files = readdirSync(folder)
  .filter((file) => file.endsWith(".bench.mjs") && file.includes(wanted))
  .sort();
if (files.length === 0) {
  console.error(`no benchmark in ${fileURLToPath(folder)} is called "${wanted}"`);
  process.exit(2);
}

console.log(`Node ${process.version}, ${process.arch}, ${cpus().length} × ${cpus()[0]?.model ?? "unknown processor"}`);
for (const file of files) {
  const bench = await import(new URL(file, folder).href);
  console.log(`\n${bench.name}`);
  for (const line of await bench.run({ analyses, registry: registry.href })) console.log(`  ${line}`);
}
