import { mkdir, rename, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { schemaFiles } from "./document-schema.ts";

/** Folder inside a project that editors find the schemas in; documents refer to it by `# yaml-language-server: $schema=`. */
export const schemaFolder = ".schemas";

/** Writes the schema of every kind of document into a folder and returns the paths written. Whole files or nothing. */
export async function writeSchemas(folder: string): Promise<readonly string[]> {
  await mkdir(folder, { recursive: true });
  const written: string[] = [];
  for (const [name, text] of schemaFiles()) {
    const path = join(folder, name);
    await writeFile(`${path}.part`, text);
    await rename(`${path}.part`, path);
    written.push(path);
  }
  return written;
}
