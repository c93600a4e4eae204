import type { SectionDefinition } from "../../aerodynamics/airfoil-section/index.ts";
import {
  bladePropeller,
  foldedDragArea,
  helicalPitchAngle,
  measuredPropeller,
  type PropellerSource,
  type PropellerStation,
  propellerMap,
} from "../../aerodynamics/propeller/index.ts";
import type { Need, Outcome, Problem, ProjectView, Warning } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { type SectionInput, sectionDefinitionOf, sectionNeeds } from "../inputs/section-input.ts";
import { tableNeeds, tableRows } from "../inputs/table-input.ts";
import { type MeasuredPropellerInput, type PropellerInput, propellerMapRow, type WrittenPropeller } from "./blade-schema.ts";
import { propellerFromAircraft } from "./from-aircraft.ts";
import type { PropellerInputs } from "./schema.ts";

type Assumed = NonNullable<Outcome<unknown>["assumed"]>;

/** A propeller ready to be asked, with what was not given and what is to be said about it. */
export interface PropellerReading {
  readonly source: PropellerSource;
  /** Undefined where nothing is known of it [m²]. */
  readonly foldedDragArea: number | undefined;
  /** [rad/s]. */
  readonly rotationRateLimit: number | undefined;
  readonly sections: readonly SectionDefinition[];
  readonly assumed: Assumed;
  readonly warnings: readonly Warning[];
}

/** Documents that a propeller is made from: its aircraft file, its table, or the tables of its sections. */
export function propellerNeeds(propeller: PropellerInput): readonly Need[] {
  if ("aircraft" in propeller) return [{ kind: "document", path: propeller.aircraft }];
  if ("table" in propeller) return tableNeeds(propeller.table);
  return sectionNeeds(propeller.section, ...(propeller.stations ?? []).map((one) => one.section));
}

/** The propeller that the inputs mean, or why there is none. */
export function propellerReading(view: ProjectView, inputs: PropellerInputs): PropellerReading | Problem {
  const { propeller } = inputs;
  if ("aircraft" in propeller) {
    const source = propellerFromAircraft(view, propeller.aircraft, propeller.part);
    if (isProblem(source)) return source;
    const warnings = [
      note(
        "momentum-law",
        "This propeller is a momentum law with factors, not blades: Reynolds number, stall and oblique flow are not in it.",
      ),
    ];
    return { source, foldedDragArea: undefined, rotationRateLimit: undefined, sections: [], assumed: [], warnings };
  }
  return "table" in propeller ? measuredReading(view, propeller) : bladeReading(view, propeller, inputs);
}

function note(kind: string, message: string): Warning {
  return { grade: "note", kind, message };
}

function measuredReading(view: ProjectView, propeller: MeasuredPropellerInput): PropellerReading | Problem {
  const table = tableRows(view, propeller.table, propellerMapRow);
  if (table.problem) return table.problem;
  const failed = (message: string): Problem => ({ kind: "propeller-table", message });
  const byRate = table.rows.some((row) => row.rotationRate !== undefined);
  const byReynolds = table.rows.some((row) => row.reynoldsNumber !== undefined);
  if (byRate && byReynolds) return failed(`${table.name}: rows give a rotation rate or a Reynolds number, not both`);
  if (byReynolds && propeller.referenceChord === undefined)
    return failed(`${table.name}: a table over Reynolds number needs referenceChord, the chord at 0.75 of the radius`);
  const read = propellerMap(
    table.rows.map(({ advanceRatio, ct, cp, rotationRate, reynoldsNumber }) => ({
      advanceRatio,
      ct,
      cp,
      level: rotationRate ?? reynoldsNumber,
    })),
    table.place,
  );
  if (read.slip !== undefined) return failed(read.slip);
  const source = measuredPropeller({
    diameter: propeller.diameter,
    map: read.map,
    levels: byRate ? "rotationRate" : byReynolds ? "reynoldsNumber" : "none",
    referenceChord: propeller.referenceChord,
  });
  const warnings = read.remarks.map(
    (remark): Warning => ({ grade: "care", kind: "propeller-table", message: `Table ${table.name}: ${remark}.` }),
  );
  const { foldedDragArea: folded, rotationRateLimit } = propeller;
  return { source, foldedDragArea: folded, rotationRateLimit, sections: [], assumed: [], warnings };
}

/** Chord over radius of a usual small propeller, when none is given. From memory. */
const usualChords: readonly (readonly [radiusFraction: number, chordFraction: number])[] = [
  [0.15, 0.13],
  [0.3, 0.18],
  [0.45, 0.2],
  [0.6, 0.19],
  [0.75, 0.17],
  [0.9, 0.125],
  [1, 0.05],
];
const usualRootCutout = 0.15;
/** Section of a usual small propeller, when none is given. From memory. */
const usualSection: SectionInput = { kind: "cambered", thickness: 0.09, camber: 0.04 };

function bladeReading(view: ProjectView, propeller: WrittenPropeller, inputs: PropellerInputs): PropellerReading | Problem {
  const assumed: { path: string; value: unknown; because: string }[] = [];
  const because = "not given: a usual small propeller, from memory";
  const read = (input: SectionInput) => sectionDefinitionOf(input, view, propeller.sectionDragIncrement);
  if (propeller.section === undefined) assumed.push({ path: "inputs.propeller.section", value: usualSection, because });
  const main = read(propeller.section ?? usualSection);
  if (main.problem) return main.problem;
  const warnings = [...main.warnings];
  const stations: PropellerStation[] = [];
  const rootCutout = propeller.rootCutout ?? Math.min(Math.max(propeller.stations?.[0]?.radiusFraction ?? usualRootCutout, 0.02), 0.6);
  if (propeller.rootCutout === undefined && !propeller.stations)
    assumed.push({ path: "inputs.propeller.rootCutout", value: rootCutout, because });
  if (!hasChord(propeller)) assumed.push({ path: "inputs.propeller.chordFraction", value: usualChords, because });
  for (const one of propeller.stations ?? pitchStations(propeller, rootCutout)) {
    const pitchAngle = one.pitchAngle ?? helicalPitchAngle(propeller.pitch ?? 0, propeller.diameter, one.radiusFraction);
    const station = { radiusFraction: one.radiusFraction, chord: chordOf(propeller, one), pitchAngle };
    const section = one.section === undefined ? undefined : read(one.section);
    if (section?.problem) return section.problem;
    warnings.push(...(section?.warnings ?? []));
    stations.push(section ? { ...station, section: section.definition } : station);
  }
  const { stallDelay, swirl, rootLoss, radialElements, azimuths } = inputs;
  const source = bladePropeller({
    diameter: propeller.diameter,
    bladeCount: propeller.blades,
    rootCutout,
    stations,
    section: main.definition,
    pitchChange: propeller.pitchChange,
    stallDelay,
    swirl,
    rootLoss,
    radialElements,
    azimuths,
  });
  return {
    source,
    foldedDragArea: propeller.foldedDragArea ?? foldedDragArea(bladeArea(stations, propeller, rootCutout)),
    rotationRateLimit: propeller.rotationRateLimit,
    sections: [main.definition, ...stations.flatMap(({ section }) => (section ? [section] : []))],
    assumed,
    warnings,
  };
}

type StationInput = NonNullable<WrittenPropeller["stations"]>[number];

function hasChord(propeller: WrittenPropeller): boolean {
  const first = propeller.stations?.[0];
  return [propeller.chord, propeller.chordFraction, first?.chord, first?.chordFraction].some((one) => one !== undefined);
}

/** Places for a propeller that is given by its pitch. */
function pitchStations(propeller: WrittenPropeller, rootCutout: number): readonly StationInput[] {
  const places = propeller.chord ?? propeller.chordFraction;
  const fractions =
    places === undefined ? usualChords.map(([x]) => x) : Array.from({ length: 18 }, (_, i) => rootCutout + ((1 - rootCutout) * i) / 17);
  return fractions.map((radiusFraction) => ({ radiusFraction }));
}

function chordOf(propeller: WrittenPropeller, one: StationInput): number {
  const radius = propeller.diameter / 2;
  const chord = one.chord ?? propeller.chord;
  const fraction = one.chordFraction ?? propeller.chordFraction;
  if (chord !== undefined) return chord;
  return radius * (fraction ?? usualChordFraction(one.radiusFraction));
}

function usualChordFraction(radiusFraction: number): number {
  const above = usualChords.findIndex(([x]) => x >= radiusFraction);
  const upper = usualChords[above < 0 ? usualChords.length - 1 : above] ?? [1, 0.05];
  const lower = above <= 0 ? upper : (usualChords[above - 1] ?? upper);
  const width = upper[0] - lower[0];
  return lower[1] + (width > 0 ? ((upper[1] - lower[1]) * (radiusFraction - lower[0])) / width : 0);
}

/** One side of all blades [m²]. */
function bladeArea(stations: readonly PropellerStation[], { diameter, blades }: WrittenPropeller, rootCutout: number): number {
  const inner = { radiusFraction: rootCutout, chord: stations[0]?.chord ?? 0 };
  const outer = { radiusFraction: 1, chord: stations[stations.length - 1]?.chord ?? 0 };
  const places = [inner, ...stations.filter(({ radiusFraction }) => radiusFraction > rootCutout), outer];
  const perBlade = places.slice(1).reduce((sum, one, i) => {
    const before = places[i] ?? one;
    return sum + ((one.radiusFraction - before.radiusFraction) * (one.chord + before.chord)) / 2;
  }, 0);
  return blades * perBlade * (diameter / 2);
}
