import { rename, rm, writeFile } from "node:fs/promises";
import { Refused } from "./exit-status.ts";

/** Writes a whole file or none: under another name first, then renamed. */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const unfinished = `${path}.${process.pid}.unfinished`;
  try {
    await writeFile(unfinished, content);
    await rename(unfinished, path);
  } catch (error) {
    await rm(unfinished, { force: true }).catch(() => undefined);
    throw new Refused(`${path} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
}
