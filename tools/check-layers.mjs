// Checks the layers of tools/layers.mjs over a tree (default: this repository) and fails when it has not seen every source file.
import { readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { cruise } from "dependency-cruiser";
import { forbidden, subjects } from "./layers.mjs";

const sourceFile = /\.(ts|tsx)$/;

/** Every source file under packages/ and apps/, relative to the root. */
function sourceFiles(root) {
  return ["packages", "apps"].flatMap((part) =>
    readdirSync(join(root, part), { recursive: true, encoding: "utf8" })
      .map((name) => join(part, name))
      .filter((path) => sourceFile.test(path) && path.includes("/src/") && !/\/(node_modules|dist)\//.test(path)),
  );
}

/** A new subject of the engine gets a place in tools/layers.mjs. */
function subjectsWithoutRank(files) {
  const folders = new Set(files.flatMap((file) => /^packages\/engine\/src\/([^/]+)\//.exec(file)?.[1] ?? []));
  return [...folders]
    .filter((folder) => !subjects.flat().includes(folder))
    .map((folder) => `every-subject-has-a-rank: packages/engine/src/${folder}`);
}

/**
 * @param {string} root folder with packages/ and apps/
 * @returns {Promise<{ violations: string[], seen: number, expected: number }>}
 */
export async function checkLayers(root) {
  const files = sourceFiles(root);
  const { output } = await cruise(files, {
    baseDir: root,
    ruleSet: { forbidden },
    validate: true,
    tsPreCompilationDeps: true,
    doNotFollow: { path: "(^|/)node_modules/" },
    exclude: { path: "(^|/)dist/" },
    combinedDependencies: true,
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["source", "import", "node", "default"],
      extensions: [".ts", ".tsx", ".js", ".mjs", ".cjs", ".json", ".d.ts"],
    },
  });
  const seen = new Set(output.modules.map((module) => module.source));
  const missed = files.filter((file) => !seen.has(file));
  return {
    seen: files.length - missed.length,
    expected: files.length,
    violations: [...subjectsWithoutRank(files), ...output.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)],
  };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { violations, seen, expected } = await checkLayers(resolve("."));
  for (const violation of violations) console.error(violation);
  if (expected === 0 || seen < expected) {
    console.error(`The layer check saw ${seen} of ${expected} source files, so it proves nothing.`);
    process.exit(1);
  }
  console.log(`layers: ${seen} source files, ${violations.length} violations`);
  process.exit(violations.length > 0 ? 1 : 0);
}
