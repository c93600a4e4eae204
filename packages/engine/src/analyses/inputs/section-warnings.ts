import { builtInSectionProvenance, type SectionDefinition, sectionLaw } from "../../aerodynamics/airfoil-section/index.ts";
import type { Warning } from "../contract.ts";

/** Where a section is read: lowest and highest of each. */
export interface SectionRange {
  readonly reynoldsNumber: readonly [low: number, high: number];
  readonly machNumber: readonly [low: number, high: number];
}

/** Above this Mach number the drag of most sections grows, which no law here contains. Common practice. */
const dragRiseMach = 0.7;

/** What to know about a section where it is read: outside its table or law, recalled, without drag rise. Each once. */
export function sectionWarnings(definition: SectionDefinition, range: SectionRange): readonly Warning[] {
  return [...reynoldsWarnings(definition, range), ...machWarnings(definition, range), ...provenanceNotes(definition)];
}

function reynoldsWarnings(definition: SectionDefinition, { reynoldsNumber: [low, high] }: SectionRange): readonly Warning[] {
  const { reynolds } = sectionLaw(definition);
  const [first, last] = [reynolds[0] ?? 0, reynolds[reynolds.length - 1] ?? 0];
  if (last === 0 || (low >= first && high <= last)) return [];
  const read = Math.round(low) === Math.round(high) ? String(Math.round(low)) : `${Math.round(low)} to ${Math.round(high)}`;
  const known = first === last ? `only ${first}` : `${first} to ${last}`;
  const message = `Reynolds number ${read}: the section is known for ${known}; beyond that its nearest values are used.`;
  return [{ grade: "care", kind: "reynolds-number", message }];
}

function machWarnings(definition: SectionDefinition, { machNumber: [low, high] }: SectionRange): readonly Warning[] {
  if (definition.kind === "table") {
    const machs = definition.polars.map((polar) => polar.machNumber);
    const [first, last] = [Math.min(...machs), Math.max(...machs)];
    if (last > 0 && (low < first - 0.005 || high > last + 0.005)) {
      const known = first === last ? `Mach ${first}` : `Mach ${first} to ${last}`;
      const message = `The table of the section is for ${known}; at Mach ${high.toFixed(2)} only lift is scaled, drag stays that of the table.`;
      return [{ grade: "care", kind: "mach-number", message }];
    }
    if (last > 0) return [];
  }
  if (high <= dragRiseMach) return [];
  const message = `Mach ${high.toFixed(2)}: lift is scaled for compressibility; the rise of drag above Mach ${dragRiseMach} is not computed.`;
  return [{ grade: "care", kind: "mach-number", message }];
}

function provenanceNotes(definition: SectionDefinition): readonly Warning[] {
  if (definition.kind === "built-in") {
    const { provenance, note } = builtInSectionProvenance(definition.name);
    return provenance === "read"
      ? []
      : [{ grade: "note", kind: "section-data", message: `Section ${definition.name} is ${provenance}. ${note}` }];
  }
  if (definition.kind !== "cambered") return [];
  const message =
    "The section follows from thickness and camber: drag and largest lift by Reynolds number from one symmetric section, the effects of camber, thickness and laminar separation from memory, the last chosen with two published propellers in view.";
  return [{ grade: "note", kind: "section-data", message }];
}
