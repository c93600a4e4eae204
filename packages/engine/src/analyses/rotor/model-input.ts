import type { SectionDefinition } from "../../aerodynamics/airfoil-section/index.ts";
import type { BladeStation, RotorModel } from "../../aerodynamics/rotor/index.ts";
import type { Need, Outcome, Problem, ProjectView, Warning } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { type SectionInput, sectionDefinitionOf, sectionNeeds } from "../inputs/section-input.ts";
import { rotorArticulation } from "./articulation.ts";
import type { RotorInput, WrittenRotor } from "./blade-schema.ts";
import { rotorFromAircraft } from "./from-aircraft.ts";
import type { RotorInputs } from "./schema.ts";

export type Assumed = NonNullable<Outcome<unknown>["assumed"]>;

/** A rotor ready to be computed, with what was not given and what is to be said about it. */
export interface RotorReading {
  readonly model: RotorModel;
  /** Flapping at which a stop is reached; undefined when none is known [rad]. */
  readonly flapRange: number | undefined;
  readonly assumed: Assumed;
  readonly warnings: readonly Warning[];
}

/** Documents that a rotor is made from: its aircraft file, or the tables of its sections. */
export function rotorNeeds(rotor: RotorInput): readonly Need[] {
  if ("aircraft" in rotor) return [{ kind: "document", path: rotor.aircraft }];
  return sectionNeeds(rotor.section, ...(rotor.stations ?? []).map((station) => station.section));
}

/** The rotor that the inputs mean, or why there is none. Density of the air [kg/m³] goes into a Lock number that follows from inertia. */
export function rotorReading(view: ProjectView, inputs: RotorInputs, density: number): RotorReading | Problem {
  const { rotor, azimuths, radialElements } = inputs;
  const mesh = { azimuths, radialElements };
  if ("aircraft" in rotor) {
    const found = rotorFromAircraft(view, { ...rotor, density }, mesh);
    if (isProblem(found)) return found;
    return { model: { ...found.model, ...givenSettings(inputs) }, flapRange: found.flapRange, assumed: [], warnings: [] };
  }
  const sections = bladeSections(view, rotor);
  if (isProblem(sections)) return sections;
  const usual = usualSettings(inputs);
  const unheld: RotorModel = {
    radius: rotor.radius,
    bladeCount: rotor.blades,
    rootCutout: rotor.rootCutout,
    stations: sections.stations,
    precone: rotor.precone,
    articulation: { kind: "teetering" },
    section: sections.section,
    ...usual,
    ...givenSettings(inputs),
    ...mesh,
  };
  const held = rotorArticulation(rotor, unheld, density);
  const assumedOf = { ...usual, inflow: usual.inflowBalance === "annular" ? "annular" : usual.inflow };
  const absent = settingNames.filter((name) => inputs[name] === undefined);
  return {
    model: { ...unheld, articulation: held.articulation },
    flapRange: rotor.flapRange,
    assumed: [
      ...absent.map((name) => ({ path: `inputs.${name}`, value: assumedOf[name], because: "not given: the usual law" })),
      ...held.assumed,
    ],
    warnings: sections.warnings,
  };
}

/** What helped over all published rotors (docs/decisions/0017-rotor-model-choices.md). */
const ringSettings = {
  tipLoss: { kind: "prandtl" },
  inducedPowerFactor: 1.2,
  inflow: "drees",
  inflowBalance: "annular",
  radialFlow: "friction",
} as const satisfies Partial<RotorModel>;

/** Settings that the inputs do not speak of. The factor on thrust was found with annular inflow and means nothing without. */
function usualSettings({ inflow }: RotorInputs) {
  if (inflow === undefined || inflow === "annular") return ringSettings;
  return { ...ringSettings, inducedPowerFactor: 1, inflowBalance: "mean" } as const;
}

const settingNames = ["tipLoss", "inducedPowerFactor", "inflow", "radialFlow"] as const;

/** The settings that the inputs speak of; the others stay what they are. */
function givenSettings(inputs: RotorInputs): Partial<RotorModel> {
  const { tipLoss, inducedPowerFactor, inflow, inflowGradient, radialFlow, rootLoss, swirl, stallDelay } = inputs;
  const law = radialFlow === true ? "resultant" : radialFlow === false ? "off" : radialFlow;
  const annular = inflow === "annular" || (inflow === undefined && (inflowGradient ?? rootLoss ?? swirl) !== undefined);
  return {
    ...(tipLoss && { tipLoss }),
    ...(inducedPowerFactor !== undefined && { inducedPowerFactor }),
    ...(annular && { inflow: inflowGradient ?? "drees", inflowBalance: "annular" as const }),
    ...(inflow && inflow !== "annular" && { inflow, inflowBalance: "mean" as const }),
    ...(rootLoss && { rootLoss }),
    ...(swirl && { swirl }),
    ...(stallDelay && { stallDelay }),
    ...(law && { radialFlow: law }),
  };
}

interface BladeSections {
  readonly section: SectionDefinition;
  readonly stations: readonly BladeStation[];
  readonly warnings: readonly Warning[];
}

function bladeSections(view: ProjectView, rotor: WrittenRotor): BladeSections | Problem {
  const read = (input: SectionInput) => sectionDefinitionOf(input, view, rotor.sectionDragIncrement);
  const main = read(rotor.section);
  if (main.problem) return main.problem;
  const warnings = [...main.warnings];
  const stations: BladeStation[] = [];
  for (const { section, ...station } of rotor.stations ?? shortcutStations(rotor)) {
    if (section === undefined) {
      stations.push(station);
      continue;
    }
    const own = read(section);
    if (own.problem) return own.problem;
    warnings.push(...own.warnings);
    stations.push({ ...station, section: own.definition });
  }
  return { section: main.definition, stations, warnings };
}

/** A blade of one chord or a straight taper from root cut-out to tip, twisted straight. */
function shortcutStations(rotor: WrittenRotor): NonNullable<WrittenRotor["stations"]> {
  const { chord, tipChord, solidity, twist = 0, rootCutout, radius, blades } = rotor;
  const root = chord ?? ((solidity ?? 0) * Math.PI * radius) / blades;
  if (twist === 0 && tipChord === undefined) return [{ radiusFraction: 0, chord: root, twist: 0 }];
  return [
    { radiusFraction: rootCutout, chord: root, twist: twist * rootCutout },
    { radiusFraction: 1, chord: tipChord ?? root, twist },
  ];
}
