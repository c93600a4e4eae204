import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { sha256 } from "./canonical.ts";
import { RecentTexts } from "./recent-texts.ts";

/** Results by what they depended on. Texts come back exactly as they went in, or not at all. */
export interface ResultCache {
  read(key: string): Promise<string | null>;
  write(key: string, text: string): Promise<void>;
  /** Where results are kept, or why they are kept only until the program ends. */
  readonly place: CachePlace;
}

export type CachePlace = { readonly kind: "folder"; readonly folder: string } | { readonly kind: "memory"; readonly because: string };

export interface CacheOptions {
  /** @defaultValue 512 MiB */
  readonly largestSize?: number;
}

/** Opens the cache in a folder, or in memory only when the folder is null or cannot be written to. */
export async function openCache(folder: string | null, options: CacheOptions = {}): Promise<ResultCache> {
  if (folder === null) return memoryCache("it was switched off");
  try {
    await mkdir(folder, { recursive: true });
    const trial = join(folder, `.trial-${process.pid}`);
    await writeFile(trial, "");
    await rm(trial);
  } catch (error) {
    return memoryCache(`${folder} cannot be written to (${(error as NodeJS.ErrnoException).code ?? "unknown reason"})`);
  }
  return folderCache(folder, options.largestSize ?? 512 * 1024 * 1024);
}

function memoryCache(because: string): ResultCache {
  const recent = new RecentTexts();
  return {
    place: { kind: "memory", because },
    read: async (key) => recent.read(key),
    write: async (key, text) => recent.write(key, text),
  };
}

function folderCache(folder: string, largestSize: number): ResultCache {
  const recent = new RecentTexts();
  const file = (key: string) => join(folder, key.slice(0, 2), `${key}.json`);
  let size: number | null = null;
  let serial = 0;
  return {
    place: { kind: "folder", folder },
    async read(key) {
      const kept = recent.read(key);
      if (kept !== null) return kept;
      const text = sealedText(await readFile(file(key), "utf8").catch(() => null));
      if (text === null) return null;
      recent.write(key, text);
      const now = new Date();
      await utimes(file(key), now, now).catch(() => undefined);
      return text;
    },
    async write(key, text) {
      recent.write(key, text);
      const unfinished = join(folder, key.slice(0, 2), `.${key}.${process.pid}.${serial++}`);
      try {
        await mkdir(join(folder, key.slice(0, 2)), { recursive: true });
        await writeFile(unfinished, `${sha256(text)}\n${text}`);
        await rename(unfinished, file(key));
      } catch {
        // A full or vanished disk loses the kept copy, never the result.
        await rm(unfinished, { force: true }).catch(() => undefined);
        return;
      }
      size = size === null ? await folderSize(folder) : size + text.length;
      if (size > largestSize) size = await evictOldest(folder, largestSize * 0.8);
    },
  };
}

/** The text of an entry whose own hash is right; anything else counts as absent. */
function sealedText(entry: string | null): string | null {
  if (entry === null) return null;
  const end = entry.indexOf("\n");
  const text = entry.slice(end + 1);
  return end === 64 && sha256(text) === entry.slice(0, end) ? text : null;
}

interface Entry {
  readonly path: string;
  readonly size: number;
  readonly used: number;
}

async function entriesOf(folder: string): Promise<readonly Entry[]> {
  const names = await readdir(folder, { recursive: true });
  const entries = await Promise.all(
    names.map(async (name): Promise<Entry | null> => {
      const found = await stat(join(folder, name)).catch(() => null);
      return found?.isFile() ? { path: join(folder, name), size: found.size, used: found.mtimeMs } : null;
    }),
  );
  return entries.filter((entry) => entry !== null);
}

async function folderSize(folder: string): Promise<number> {
  return (await entriesOf(folder)).reduce((sum, { size }) => sum + size, 0);
}

/** Removes what was not used for longest until the rest fits; returns the size of the rest. */
async function evictOldest(folder: string, target: number): Promise<number> {
  const entries = [...(await entriesOf(folder))].sort((a, b) => a.used - b.used);
  let size = entries.reduce((sum, entry) => sum + entry.size, 0);
  for (const entry of entries) {
    if (size <= target) break;
    await rm(entry.path, { force: true });
    size -= entry.size;
  }
  return size;
}
