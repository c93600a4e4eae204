import { readFile } from "node:fs/promises";
import type { ValidationRow } from "@wingseed/reports/dossier";
import type { Place } from "./place.ts";

/** What the published checks gave when this version was made; null where that is not shipped. */
export async function validationSummary(place: Place): Promise<unknown | null> {
  return shipped(place.validationFile);
}

/** What the dossier says about the outside world: how the checks came out, and the references by key. */
export async function publishedSources(
  place: Place,
): Promise<{ readonly validation: readonly ValidationRow[]; readonly references: Readonly<Record<string, string>> }> {
  const [validation, references] = await Promise.all([shipped(place.validationFile), shipped(place.referencesFile)]);
  return { validation: (validation ?? []) as readonly ValidationRow[], references: (references ?? {}) as Readonly<Record<string, string>> };
}

async function shipped(file: string): Promise<unknown | null> {
  const text = await readFile(file, "utf8").catch(() => null);
  return text === null ? null : (JSON.parse(text) as unknown);
}
