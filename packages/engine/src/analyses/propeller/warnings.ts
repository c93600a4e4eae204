import { builtInSectionProvenance, type SectionDefinition, sectionLaw } from "../../aerodynamics/airfoil-section/index.ts";
import type { DomainDistance } from "../../published/index.ts";
import type { Warning } from "../contract.ts";
import type { PropellerReading } from "./input.ts";
import type { PropellerRow } from "./output-schema.ts";

/** Highest tip Mach number at which the compressibility factor alone may be trusted. */
const trustedTipMach = 0.7;
/** Widths outside the compared range from which it is worth a warning of its own; the distance is told in any case. */
const farOutside = 1;
const quarterTurn = Math.PI / 2;

/** What to know before using the numbers; of several rows each thing once, with how many rows it is about. */
export function propellerWarnings(rows: readonly PropellerRow[], domain: DomainDistance, reading: PropellerReading): readonly Warning[] {
  const range = reynoldsRange(reading.sections);
  const told = new Map<string, { readonly warning: Warning; count: number }>();
  for (const row of rows) {
    for (const warning of rowWarnings(row, reading, range)) {
      const before = told.get(warning.message);
      if (before) before.count += 1;
      else told.set(warning.message, { warning, count: 1 });
    }
  }
  const ofRows = [...told.values()].map(({ warning, count }) =>
    rows.length === 1 || count === rows.length
      ? warning
      : { ...warning, message: `In ${count} of ${rows.length} points: ${warning.message}` },
  );
  return [...reading.warnings, ...ofRows, ...domainWarnings(domain), ...sectionNotes(reading.sections)];
}

type ReynoldsRange = readonly [lowest: number, highest: number] | undefined;

function rowWarnings(row: PropellerRow, { source }: PropellerReading, range: ReynoldsRange): readonly Warning[] {
  const warnings: Warning[] = [];
  const add = (grade: Warning["grade"], kind: string, message: string): void => {
    warnings.push({ grade, kind, message });
  };
  if (row.reason !== null) add("care", "no-answer", row.reason);
  for (const phrase of row.extrapolated) add("care", "extrapolated", `Extrapolated: ${phrase}.`);
  if (row.tipMach > trustedTipMach)
    add("care", "tip-mach", `The tips move faster than Mach ${trustedTipMach}; drag rise is not computed there.`);
  const blades = source.kind === "blades" && row.state !== "none";
  if (blades && row.state === "reversed")
    add("care", "reversed", "Turned backwards the sections meet the air with their sharp edge: no measurement of that has been compared.");
  if (blades && (row.state === "stopped" || row.state === "freeWheeling"))
    add("note", "not-compared", "No measurement of a stopped or free-wheeling propeller has been compared.");
  if (blades && row.state !== "folded" && Math.abs(row.inflowAngle) > quarterTurn + 1e-9 && (row.airspeed ?? 0) > 0)
    add("care", "stream-from-behind", "With the stream from behind the propeller may work in its own wake: power is uncertain by 25 %.");
  if (row.state === "folded")
    add(
      "note",
      "folded",
      "Drag of the folded blades is skin friction from memory unless a drag area is given; hub and spinner are not in it.",
    );
  const { reynoldsNumber } = row;
  if (blades && range && reynoldsNumber !== null && reynoldsNumber > 0 && (reynoldsNumber < range[0] || reynoldsNumber > range[1]))
    add(
      "care",
      "reynolds-number",
      `The Reynolds number lies outside the section's ${range[0]} to ${range[1]}; the nearest values are used.`,
    );
  return warnings;
}

function reynoldsRange(sections: readonly SectionDefinition[]): ReynoldsRange {
  const ranges = sections.map((section) => sectionLaw(section).reynolds).filter((list) => list.length > 1);
  if (ranges.length === 0) return undefined;
  return [Math.max(...ranges.map((list) => list[0] ?? 0)), Math.min(...ranges.map((list) => list[list.length - 1] ?? 0))];
}

function domainWarnings({ distance, nearest, outside }: DomainDistance): readonly Warning[] {
  if (distance === null || distance <= farOutside) return [];
  const ranges = outside.map(
    ({ name, value, low, high }) => `${name} ${value.toPrecision(3)}, compared ${low.toPrecision(3)} to ${high.toPrecision(3)}`,
  );
  const message = `Far outside what was held against published measurements (nearest ${nearest}): ${ranges.join("; ")}.`;
  return [{ grade: "care", kind: "outside-compared", message }];
}

function sectionNotes(sections: readonly SectionDefinition[]): readonly Warning[] {
  const notes = new Map<string, string>();
  for (const section of sections) {
    if (section.kind === "cambered")
      notes.set(
        "cambered",
        "What a section by thickness and camber does below a Reynolds number of 100 000 is from memory, chosen with two published propellers in view.",
      );
    if (section.kind !== "built-in") continue;
    const { provenance, note } = builtInSectionProvenance(section.name);
    if (provenance !== "read") notes.set(section.name, `Section ${section.name} is ${provenance}. ${note}`);
  }
  return [...notes.values()].map((message) => ({ grade: "note", kind: "section-data", message }));
}
