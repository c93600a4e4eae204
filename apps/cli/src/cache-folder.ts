import { createHash } from "node:crypto";
import { access, constants, mkdir, writeFile } from "node:fs/promises";
import { homedir, tmpdir } from "node:os";
import { join, sep } from "node:path";

/**
 * Where results of a project are kept: in the project itself; for one that is installed with the program or cannot be
 * written to, and for questions without a project, in the user's cache.
 */
export async function cacheFolder(project: string | null): Promise<string> {
  if (project === null) return join(userCache(), "without-project");
  const isInstalled = project.split(sep).includes("node_modules");
  const isWritable = await access(project, constants.W_OK).then(
    () => true,
    () => false,
  );
  if (isInstalled || !isWritable) return join(userCache(), createHash("sha256").update(project).digest("hex").slice(0, 16));
  await keepOutOfVersionControl(join(project, ".wingseed"));
  return join(project, ".wingseed", "cache");
}

async function keepOutOfVersionControl(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true }).catch(() => undefined);
  await writeFile(join(folder, ".gitignore"), "*\n", { flag: "wx" }).catch(() => undefined);
}

function userCache(): string {
  const home = homedir();
  const base =
    process.env.XDG_CACHE_HOME ??
    (process.platform === "darwin"
      ? join(home, "Library", "Caches")
      : (process.env.LOCALAPPDATA ?? (home ? join(home, ".cache") : tmpdir())));
  return join(base, "wingseed");
}
