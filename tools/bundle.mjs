// Bundles the command line, the worker and the registry of analyses; native modules stay outside.
import { build } from "esbuild";

await build({
  entryPoints: {
    cli: "apps/cli/src/main.ts",
    worker: "packages/runner/src/worker.ts",
    registry: "packages/engine/src/index.ts",
  },
  outdir: "dist",
  outExtension: { ".js": ".mjs" },
  bundle: true,
  platform: "node",
  target: "node20",
  format: "esm",
  sourcemap: true,
  conditions: ["source"],
  external: ["@myriaddreamin/*", "piscina"],
  banner: { js: 'import { createRequire as __cr } from "node:module"; const require = __cr(import.meta.url);' },
});
