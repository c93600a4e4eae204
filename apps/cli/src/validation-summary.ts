import { readFile } from "node:fs/promises";
import type { ValidationRow } from "@wingseed/reports/dossier";
import type { Place } from "./place.ts";

/** What the published checks gave when this version was made; null where that is not shipped. */
export async function validationSummary(place: Place): Promise<unknown | null> {
  const text = await readFile(place.validationFile, "utf8").catch(() => null);
  return text === null ? null : (JSON.parse(text) as unknown);
}

export async function publishedChecks(place: Place): Promise<readonly ValidationRow[]> {
  const summary = await validationSummary(place);
  const rows = Array.isArray(summary) ? summary : (summary as { rows?: unknown } | null)?.rows;
  return Array.isArray(rows) ? (rows as ValidationRow[]) : [];
}
