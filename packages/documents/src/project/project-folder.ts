import { createHash } from "node:crypto";
import { readdir, readFile, realpath, stat } from "node:fs/promises";
import { join, relative, sep } from "node:path";
import { type DocumentProblem, fileProblem } from "../document-problem.ts";

/** What tells whether a file is still the one that was read. */
export interface FileMark {
  readonly size: number;
  readonly time: bigint;
  readonly changed: bigint;
  readonly inode: bigint;
}

export interface ReadFile {
  readonly kind: "file";
  readonly bytes: Uint8Array;
  readonly hash: string;
}

export type Located =
  | { readonly kind: "located"; readonly place: string; readonly mark: FileMark }
  | { readonly kind: "problem"; readonly problem: DocumentProblem };

/** Finds a file by its path inside the project; a path that leads outside, by whatever way, is refused. */
export async function locate(folder: string, path: string, largest: number): Promise<Located> {
  const slip = pathSlip(path);
  if (slip !== undefined) return problem(path, "outside-project", "a path inside the project folder", slip);
  try {
    const root = await realpath(folder);
    const place = await realpath(join(root, path));
    const inside = relative(root, place);
    if (inside === ".." || inside.startsWith(`..${sep}`) || inside === "") {
      return problem(path, "outside-project", "a file inside the project folder", `${path} leads out of the project folder by a link`);
    }
    const found = await stat(place, { bigint: true });
    if (!found.isFile()) return problem(path, "unreadable", "a file", `${path} is no plain file`);
    const size = Number(found.size);
    if (size > largest) return tooLarge(path, size, largest);
    return { kind: "located", place, mark: { size, time: found.mtimeNs, changed: found.ctimeNs, inode: found.ino } };
  } catch (error) {
    return unreadable(path, error);
  }
}

/** Finds a file in the first of several folders that has it. */
export async function locateIn(folders: readonly string[], path: string, largest: number): Promise<Located> {
  for (const folder of folders) {
    const found = await locate(folder, path, largest);
    if (found.kind === "located" || found.problem.kind !== "missing-file") return found;
  }
  const places = folders.length > 1 ? `; it was looked for in ${folders.join(", ")}` : "";
  return problem(path, "missing-file", "a file that exists", `there is no file ${path}${places}`);
}

/** Reads a located file with the hash of its bytes (SHA-256). */
export async function readLocated(
  path: string,
  place: string,
): Promise<ReadFile | { readonly kind: "problem"; readonly problem: DocumentProblem }> {
  try {
    const bytes = await readFile(place);
    return { kind: "file", bytes, hash: createHash("sha256").update(bytes).digest("hex") };
  } catch (error) {
    return unreadable(path, error);
  }
}

/** Paths of all files of the project's own folders, two levels deep, sorted. */
export async function projectFiles(folder: string): Promise<readonly string[]> {
  const names = async (part: string) => {
    try {
      return await readdir(join(folder, part), { withFileTypes: true });
    } catch {
      return [];
    }
  };
  const found: string[] = [];
  for (const entry of await names(".")) {
    if (entry.name.startsWith(".")) continue;
    if (!entry.isDirectory()) found.push(entry.name);
    else
      for (const inner of await names(entry.name))
        if (!inner.isDirectory() && !inner.name.startsWith(".")) found.push(`${entry.name}/${inner.name}`);
  }
  return found.sort();
}

function pathSlip(path: string): string | undefined {
  if (path === "") return "a path is empty";
  if (path.includes("\0")) return "a path holds a character that no path has";
  if (path.includes("\\")) return `${path}: paths are written with forward slashes`;
  if (path.startsWith("/") || /^[A-Za-z]:/u.test(path)) return `${path} is an absolute path; a path inside the project folder is expected`;
  if (path.split("/").some((part) => part === ".." || part === "." || part === ""))
    return `${path} leads out of the project folder or around in it; write the plain path`;
  return undefined;
}

function problem(
  path: string,
  kind: DocumentProblem["kind"],
  allowed: string,
  message: string,
): Extract<Located, { readonly kind: "problem" }> {
  return { kind: "problem", problem: fileProblem(path, { kind, read: path, allowed, message }) };
}

function tooLarge(path: string, size: number, largest: number): Extract<Located, { readonly kind: "problem" }> {
  const message = `the file has ${size} bytes; at most ${largest} are read`;
  return {
    kind: "problem",
    problem: fileProblem(path, { kind: "too-large", read: `${size} bytes`, allowed: `${largest} bytes`, message }),
  };
}

function unreadable(path: string, error: unknown): Extract<Located, { readonly kind: "problem" }> {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (code === "ENOENT" || code === "ENOTDIR") return problem(path, "missing-file", "a file that exists", `there is no file ${path}`);
  const reasons: Readonly<Record<string, string>> = {
    EACCES: "permission denied",
    ELOOP: "its links run in a circle",
    EISDIR: "it is a folder",
  };
  return problem(path, "unreadable", "a readable file", `cannot read ${path}: ${reasons[code] ?? (code || String(error))}`);
}
