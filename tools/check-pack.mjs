// Packs the package, installs the tarball into an empty folder and asks it two questions there.
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

function run(command, words, cwd) {
  return execFileSync(command, words, {
    cwd,
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
    env: { ...process.env, NO_COLOR: "1" },
  });
}

/**
 * @param {string} root folder of a built repository
 * @returns {{ tarballBytes: number, installSeconds: number, list: string, result: unknown }}
 */
export function checkPack(root) {
  const folder = mkdtempSync(join(tmpdir(), "wingseed-pack-"));
  try {
    run("npm", ["pack", "--ignore-scripts", "--silent", "--pack-destination", folder], root);
    const tarball = readdirSync(folder).find((name) => name.endsWith(".tgz"));
    if (!tarball) throw new Error("npm pack made no tarball.");
    const empty = join(folder, "empty");
    mkdirSync(empty);
    writeFileSync(join(empty, "package.json"), '{ "name": "empty", "private": true }\n');
    const began = performance.now();
    run("npm", ["install", "--prefer-offline", "--no-audit", "--no-fund", "--silent", join(folder, tarball)], empty);
    const installSeconds = (performance.now() - began) / 1000;
    if (!existsSync(join(empty, "node_modules/.bin/wingseed"))) throw new Error("The installed package has no command.");
    const list = run("npx", ["--no-install", "wingseed", "list"], empty);
    const question = ["run", "atmosphere", "--set", "inputs.altitude=1000 m", "--format", "json"];
    const result = JSON.parse(run("npx", ["--no-install", "wingseed", ...question], empty));
    return { tarballBytes: statSync(join(folder, tarball)).size, installSeconds, list, result };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { tarballBytes, installSeconds, list, result } = checkPack(resolve("."));
  console.log(list);
  console.log(`${result.analysis}: ${Object.keys(result.cases[0].outputs ?? {}).length} outputs`);
  console.log(`tarball ${(tarballBytes / 1e6).toFixed(2)} MB, installed in ${installSeconds.toFixed(1)} s`);
}
