import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, resolve } from "node:path";
import { brotliDecompressSync } from "node:zlib";

/**
 * Unpacks the browser that comes with the test dependencies, once per version, and tells the tests where it is
 * (`CHROMIUM_PATH`, `LD_LIBRARY_PATH`). A browser of one's own is used when `CHROMIUM_PATH` is already set.
 */
export default async function setup(): Promise<void> {
  if (process.env.CHROMIUM_PATH || process.platform !== "linux" || process.arch !== "x64") return;
  const packageFolder = resolve(dirname(createRequire(import.meta.url).resolve("@sparticuz/chromium")), "../..");
  const { version } = JSON.parse(readFileSync(join(packageFolder, "package.json"), "utf8")) as { version: string };
  const folder = resolve(`node_modules/.cache/chromium-${version}`);
  if (!existsSync(join(folder, "chromium"))) await unpack(folder);
  process.env.CHROMIUM_PATH = join(folder, "chromium");
  if (lacksLibraries(process.env.CHROMIUM_PATH)) {
    const libraries = unpackLibraries(join(packageFolder, "bin", "al2023.tar.br"), folder);
    process.env.LD_LIBRARY_PATH = [libraries, process.env.LD_LIBRARY_PATH].filter(Boolean).join(":");
  }
}

/** The package unpacks into TMPDIR and reuses whatever lies there, so it gets a fresh folder that is renamed when complete. */
async function unpack(folder: string): Promise<void> {
  const unfinished = `${folder}.${process.pid}`;
  mkdirSync(unfinished, { recursive: true });
  const before = process.env.TMPDIR;
  process.env.TMPDIR = unfinished;
  try {
    const { default: chromium } = await import("@sparticuz/chromium");
    await chromium.executablePath();
  } finally {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
  }
  try {
    renameSync(unfinished, folder);
  } catch (error) {
    // Another run was faster: its folder is as good as ours.
    rmSync(unfinished, { recursive: true, force: true });
    if (!existsSync(join(folder, "chromium"))) throw error;
  }
}

function lacksLibraries(executable: string): boolean {
  const listed = spawnSync("ldd", [executable], { encoding: "utf8" });
  return listed.status === 0 && listed.stdout.includes("not found");
}

function unpackLibraries(archive: string, folder: string): string {
  const target = join(folder, "al2023");
  if (!existsSync(join(target, "lib"))) {
    mkdirSync(target, { recursive: true });
    const tar = join(target, "al2023.tar");
    writeFileSync(tar, brotliDecompressSync(readFileSync(archive)));
    execFileSync("tar", ["-xf", tar, "-C", target]);
    rmSync(tar);
  }
  return join(target, "lib");
}
