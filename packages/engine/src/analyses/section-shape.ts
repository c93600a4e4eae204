import type { SectionInputs } from "./section-schema.ts";

const builtInThickness = { "naca-0012": 0.12, "naca-0015": 0.15 } as const;

/** Thickness and camber of a section over chord, where they are known: what tells its likeness to a published one. */
export function sectionShape(section: SectionInputs["section"]): { readonly thickness?: number; readonly camber?: number } {
  if (typeof section === "string") return { thickness: builtInThickness[section], camber: 0 };
  if ("kind" in section && section.kind === "cambered") return { thickness: section.thickness, camber: section.camber };
  return {};
}
