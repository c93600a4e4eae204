import type { SectionInputs } from "../section/schema.ts";

const builtInThickness = { "naca-0012": 0.12, "naca-0015": 0.15 } as const;

/** Largest thickness and height of the mean line over chord. */
export interface SectionShape {
  readonly thickness: number;
  readonly camber: number;
}

/**
 * Shape of a section where it is known: what tells its likeness to a published one. Undefined for a table and for five numbers,
 * about which no published check says anything.
 */
export function sectionShape(section: SectionInputs["section"]): SectionShape | undefined {
  if (typeof section === "string") return { thickness: builtInThickness[section], camber: 0 };
  if ("kind" in section && section.kind === "cambered") return { thickness: section.thickness, camber: section.camber };
  return undefined;
}
