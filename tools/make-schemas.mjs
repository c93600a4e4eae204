// Writes the JSON Schemas of all documents: node tools/make-schemas.mjs
// They stand in packages/documents/schemas, and once more in demo/.schemas, because a project folder stands on its own.
import { mkdirSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const at = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const bundle = at("node_modules/.cache/wingseed-schemas.mjs");
mkdirSync(at("node_modules/.cache"), { recursive: true });
await build({
  entryPoints: [at("packages/documents/src/json-schema/index.ts")],
  outfile: bundle,
  bundle: true,
  platform: "node",
  format: "esm",
  conditions: ["source"],
  banner: { js: 'import { createRequire as __cr } from "node:module"; const require = __cr(import.meta.url);' },
});
const { writeSchemas } = await import(pathToFileURL(bundle).href);
for (const folder of ["packages/documents/schemas", "demo/.schemas"]) console.log((await writeSchemas(at(folder))).join("\n"));
